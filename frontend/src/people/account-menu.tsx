import { Popover } from '@vaadin/react-components/Popover.js';
import { Link, useLocation } from 'react-router';
import { useAbout } from '../shared/about';
import { useMessages } from '../shared/messages';
import { accountMessages } from './account-messages';
import { useGrantWords } from './grant-words';
import { LeaveActions } from './leave-actions';
import type { Session } from './people-types';

interface AccountMenuProps {
  readonly session: Session;
  readonly opened: boolean;
  readonly setOpened: (opened: boolean) => void;
}

/** What opens from the button with one's name. */
export function AccountMenu({ session, opened, setOpened }: AccountMenuProps) {
  const t = useMessages(accountMessages);
  const { pathname, search } = useLocation();
  const grantWords = useGrantWords();
  const demo = useAbout().data?.demo === true;
  return (
    <Popover
      for="account"
      trigger={[]}
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
  );
}
