import { Link, useLocation } from 'react-router';
import { useAbout } from '../shared/about';
import type { MenuProps } from '../shared/menu-button';
import { MenuPanel } from '../shared/menu-panel';
import { useMessages } from '../shared/messages';
import { accountMessages } from './account-messages';
import { useGrantWords } from './grant-words';
import { LeaveActions } from './leave-actions';
import { useSignedIn } from './signed-in';

/** What opens from the button with one's name. */
export function AccountMenu({ opened, setOpened }: MenuProps) {
  const t = useMessages(accountMessages);
  const session = useSignedIn();
  const { pathname, search } = useLocation();
  const grantWords = useGrantWords();
  const demo = useAbout().data?.demo === true;
  if (!session) return null;
  return (
    <MenuPanel of="account" name={t.account} opened={opened} setOpened={setOpened}>
      <div className="account-menu">
        <p className="account-who">
          <strong>{session.displayName}</strong>
          <span className="rc-quiet">{grantWords(session.grants)}</span>
        </p>
        {!demo && (
          <Link className="account-item" to="/account/password" onClick={() => setOpened(false)}>
            {t.password}
          </Link>
        )}
        <Link className="account-item" to="/account/sessions" onClick={() => setOpened(false)}>
          {t.sessions}
        </Link>
        <hr />
        <LeaveActions className="account-item" next={pathname + search} />
      </div>
    </MenuPanel>
  );
}
