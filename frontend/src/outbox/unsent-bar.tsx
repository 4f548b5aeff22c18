import { Link } from 'react-router';
import { useSignedIn } from '../people/signed-in';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { outbox, useOutbox, useRenewAfterSending } from './outbox';
import { outboxMessages } from './outbox-messages';
import { refusedOnes, unsentOf, waitingOfOthers, type Message } from './outbox-state';
import './outbox.css';

/**
 * What has not reached the server yet, on every screen. It never claims more than has been read from the store; where
 * nothing is pressed that would wait here (`quiet`), it says nothing as long as nothing waits.
 */
export function UnsentBar({ quiet }: { quiet: boolean }) {
  const t = useMessages(outboxMessages);
  const view = useOutbox();
  const nowMs = useNow();
  useRenewAfterSending();
  const who = useSignedIn()?.name;
  const unsent = unsentOf(view, who).length;
  const others = waitingOfOthers(view, who).length > 0;
  const refused = refusedOnes(view);
  const text = () => {
    if (view.broken !== undefined) return t.storeBroken;
    if (!view.read) return t.reading;
    if (unsent === 0) return refused.length > 0 ? t.refused(refused.length) : others ? t.mineSent : t.allSent;
    const when = view.sending
      ? t.sending
      : view.nextTryMs === undefined
        ? ''
        : t.nextTry(Math.max(1, Math.round((view.nextTryMs - nowMs) / 1000)));
    return [t.unsent(unsent), when, refused.length > 0 ? t.refused(refused.length) : ''].filter(Boolean).join(', ');
  };
  if (quiet && unsent === 0 && refused.length === 0) return null;
  const needsHelp = unsent === 0 && refused.length > 0;
  const mark = view.broken !== undefined || needsHelp ? '✕' : unsent > 0 ? '▲' : view.read ? '✓' : '…';
  return (
    <div className={`unsent rc-no-print ${unsent > 0 || needsHelp || view.broken !== undefined ? 'some' : ''}`}>
      <span role="status">
        <span aria-hidden="true">{mark}</span> {text()}
      </span>
      {quiet && refused[0] && (
        <Link className="unsent-button" to={whereToMend(refused[0].message)}>
          {t.show}
        </Link>
      )}
      {unsent > 0 && !view.sending && (
        <button type="button" className="unsent-button" onClick={() => void outbox.send()}>
          {t.sendNow}
        </button>
      )}
    </div>
  );
}

function whereToMend(message: Message): string {
  return message.to === 'batch'
    ? `/floor?batch=${encodeURIComponent(message.batch)}`
    : `/rounds?site=${encodeURIComponent(message.site)}`;
}
