import { later } from '../shared/later';
import { MenuButton } from '../shared/menu-button';
import { useMessages } from '../shared/messages';
import { accountMessages } from './account-messages';
import { initialsOf } from './account-state';
import { useSignedIn } from './signed-in';
import './account.css';

const AccountMenu = later(async () => (await import('./account-menu')).AccountMenu);

/** Who is signed in, always in sight, and what one does about it. */
export function AccountButton() {
  const t = useMessages(accountMessages);
  const session = useSignedIn();
  if (!session) return null;
  return (
    <MenuButton id="account" says={t.signedInAs(session.displayName)} className="account-button" menu={AccountMenu}>
      <span className="account-initials" aria-hidden="true">
        {initialsOf(session.displayName)}
      </span>
      <span className="account-name" aria-hidden="true">
        {session.displayName}
      </span>
    </MenuButton>
  );
}
