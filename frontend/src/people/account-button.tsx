import { useState } from 'react';
import { later } from '../shared/later';
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
  const [opened, setOpened] = useState<boolean>();
  if (!session) return null;
  return (
    <>
      <button
        id="account"
        type="button"
        className="icon-button account-button rc-no-print"
        aria-label={t.signedInAs(session.displayName)}
        title={t.signedInAs(session.displayName)}
        aria-haspopup="dialog"
        aria-expanded={opened === true}
        onClick={() => setOpened(true)}
      >
        <span className="account-initials" aria-hidden="true">
          {initialsOf(session.displayName)}
        </span>
        <span className="account-name" aria-hidden="true">
          {session.displayName}
        </span>
      </button>
      {opened !== undefined && <AccountMenu session={session} opened={opened} setOpened={setOpened} />}
    </>
  );
}
