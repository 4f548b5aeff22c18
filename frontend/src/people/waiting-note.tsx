import { useOutbox } from '../outbox/outbox';
import { waitingOfOthers } from '../outbox/outbox-state';
import { useMessages } from '../shared/messages';
import { signInMessages } from './sign-in-messages';

/** Whose entries are still on this device, told to whoever is about to sign in. */
export function WaitingNote({ handedOver }: { handedOver: boolean }) {
  const t = useMessages(signInMessages);
  const view = useOutbox();
  const waiting = waitingOfOthers(view, undefined);
  if (waiting.length > 0) {
    return (
      <div className="rc-warning entry-waiting" role="status">
        {handedOver && <p>{t.handedOver}</p>}
        {waiting.map(({ by, items }) => (
          <p key={by?.name ?? ''}>
            ▲ <strong>{by ? t.waitsFor(items.length, by.displayName) : t.waitsForNobody(items.length)}</strong>
          </p>
        ))}
        <p>{t.waitsHow}</p>
      </div>
    );
  }
  if (!handedOver) return null;
  return (
    <div className="entry-waiting" role="status">
      <p>{t.handedOver}</p>
      {/* Not before the store has been read. */}
      {view.read && <p className="rc-quiet">✓ {t.nothingWaits}</p>}
    </div>
  );
}
