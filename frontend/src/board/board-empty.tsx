import { Link } from 'react-router';
import { useMessages } from '../shared/messages';
import { Empty } from '../shared/screen-states';
import { boardMessages } from './board-messages';

/** The board of a business that has nothing growing, and what to do first. */
export function NothingGrows() {
  const t = useMessages(boardMessages);
  return (
    <Empty title={t.emptyTitle}>
      <p>{t.emptyHelp}</p>
      <p>
        <Link className="rc-link" to="/setup/first-day">
          {t.emptySetup}
        </Link>
        {' · '}
        <Link className="rc-link" to="/batches">
          {t.emptyStick}
        </Link>
      </p>
    </Empty>
  );
}
