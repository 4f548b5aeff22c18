import { Link } from 'react-router';
import { useMessages } from '../shared/messages';
import { useScreenTitle } from '../shared/screen-title';
import { accountMessages } from './account-messages';
import { useGrantWords } from './grant-words';
import { startFor } from './rights-state';
import { useGrants } from './signed-in';

/** A screen that the reader's roles do not open: which roles those are, and who can change it. */
export function ClosedView() {
  const t = useMessages(accountMessages);
  const grants = useGrants();
  const words = useGrantWords();
  const none = grants.length === 0;
  const title = none ? t.nothingTitle : t.closedTitle;
  useScreenTitle(title);
  return (
    <div className="rc-state">
      <p>{none ? t.nothingHelp : t.closedHelp(words(grants))}</p>
      {!none && (
        <Link className="rc-link" to={startFor(grants)}>
          {t.toStart}
        </Link>
      )}
    </div>
  );
}
