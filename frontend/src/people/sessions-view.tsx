import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { HeadRow, spoken } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { Failed, Loading, ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { accountMessages } from './account-messages';
import { deviceSaid } from './device-words';
import { keys } from '../shared/query-keys';
import type { OpenSession } from './people-types';
import { signOut } from './session-actions';
import { endOneSession, useOpenSessions } from './session-api';
import './account.css';

/** Every device on which the reader is signed in, each with its end. */
export function SessionsView() {
  const t = useMessages(accountMessages);
  useScreenTitle(t.sessionsTitle);
  const format = useFormats();
  const queries = useQueryClient();
  const sessions = useOpenSessions();
  const [failure, setFailure] = useState<unknown>();
  if (sessions.isPending) return <Loading />;
  if (!sessions.data) return <Failed failure={sessions.error} retry={() => void sessions.refetch()} />;
  const end = async ({ id, device, current }: OpenSession) => {
    setFailure(undefined);
    try {
      if (current) {
        await signOut();
        return;
      }
      await endOneSession(id);
      notice({ text: t.ended(deviceSaid(device)) });
      await queries.invalidateQueries({ queryKey: keys.sessions() });
    } catch (refused) {
      setFailure(refused);
    }
  };
  return (
    <div className="rc-screen">
      <ProblemNote failure={failure} />
      <div className="rc-sheet people-sheet">
        <table className="rc-table people-table">
          <HeadRow heads={[t.device, t.begun, t.lastSeen, spoken(t.end)]} />
          <tbody>
            {sessions.data.map((each) => (
              <tr key={each.id}>
                <th scope="row">
                  {deviceSaid(each.device)} {each.current && <span className="people-tag">{t.thisDevice}</span>}
                </th>
                <td data-label={t.begun}>{format.dateTime(each.begunAt)}</td>
                <td data-label={t.lastSeen}>{format.dateTime(each.lastSeenAt)}</td>
                <td className="people-act">
                  <Button
                    theme="tertiary"
                    aria-label={each.current ? t.signOut : t.endOn(deviceSaid(each.device))}
                    onClick={() => void end(each)}
                  >
                    {each.current ? t.signOut : t.end}
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
