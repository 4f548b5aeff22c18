import { Popover } from '@vaadin/react-components/Popover.js';
import { useState } from 'react';
import { Link, useLocation } from 'react-router';
import { useAbout } from '../shared/about';
import { useMessages } from '../shared/messages';
import { accountMessages } from './account-messages';
import { initialsOf } from './account-state';
import { useGrantWords } from './grant-words';
import { LeaveActions } from './leave-actions';
import { useSignedIn } from './signed-in';
import './account.css';

/** Who is signed in, always in sight, and what one does about it. */
export function AccountButton() {
  const t = useMessages(accountMessages);
  const session = useSignedIn();
  const { pathname, search } = useLocation();
  const grantWords = useGrantWords();
  const demo = useAbout().data?.demo === true;
  const [opened, setOpened] = useState(false);
  if (!session) return null;
  return (
    <>
      <button
        id="account"
        type="button"
        className="icon-button account-button rc-no-print"
        aria-label={t.signedInAs(session.displayName)}
        title={t.signedInAs(session.displayName)}
      >
        <span className="account-initials" aria-hidden="true">
          {initialsOf(session.displayName)}
        </span>
        <span className="account-name" aria-hidden="true">
          {session.displayName}
        </span>
      </button>
      <Popover
        for="account"
        trigger={['click']}
        position="bottom-end"
        modal
        accessibleName={t.account}
        opened={opened}
        onOpenedChanged={({ detail }) => setOpened(detail.value)}
      >
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
      </Popover>
    </>
  );
}
