import { useState } from 'react';
import { unsentOf } from '../outbox/outbox-state';
import { useOutbox } from '../outbox/outbox';
import { useAbout } from '../shared/about';
import { useMessages } from '../shared/messages';
import { Unreachable } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { accountMessages } from './account-messages';
import { handOver, signOut, signOutEverywhere } from './session-actions';
import { useSignedIn } from './signed-in';

interface LeaveActionsProps {
  readonly className: string;
  /** Where the next person begins. */
  readonly next: string;
  /** On a phone that goes from hand to hand, handing over comes first and large. */
  readonly shared?: boolean;
}

/** Hand over, sign out, sign out everywhere; and what becomes of entries that are not yet sent. */
export function LeaveActions({ className, next, shared }: LeaveActionsProps) {
  const t = useMessages(accountMessages);
  const session = useSignedIn();
  const demo = useAbout().data?.demo === true;
  const unsent = unsentOf(useOutbox(), session?.name).length;
  const [busy, setBusy] = useState(false);
  const [sure, setSure] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const leave = async (how: () => Promise<void>) => {
    setBusy(true);
    setFailure(undefined);
    try {
      // The page is loaded anew at the end, so this stays busy.
      await how();
    } catch (refused) {
      setFailure(refused);
      setBusy(false);
    }
  };
  if (busy) {
    return (
      <p className="account-busy" role="status">
        {t.leaving}
      </p>
    );
  }
  const pass = (
    <>
      <button
        type="button"
        className={shared ? `${className} primary` : className}
        onClick={() => void leave(() => handOver(next))}
      >
        {t.handOver}
      </button>
      <p className="account-help">{t.handOverHelp}</p>
    </>
  );
  return (
    <>
      {unsent > 0 && (
        <div className="rc-warning account-unsent">
          <p>
            ▲ <strong>{t.notSent(unsent)}</strong>
          </p>
          <p>{t.notSentHow}</p>
        </div>
      )}
      {failure instanceof Unreachable ? (
        <div className="rc-problem" role="alert">
          <p>✕ {t.needsNetwork}</p>
        </div>
      ) : (
        <ProblemNote failure={failure} />
      )}
      {shared && pass}
      <button type="button" className={className} onClick={() => void leave(signOut)}>
        {demo ? t.otherDoor : t.signOut}
      </button>
      {!demo &&
        (sure ? (
          <>
            <p className="account-help">{t.everywhereHelp}</p>
            <button type="button" className={`${className} danger`} onClick={() => void leave(signOutEverywhere)}>
              {t.everywhereSure}
            </button>
          </>
        ) : (
          <button type="button" className={className} onClick={() => setSure(true)}>
            {t.everywhere}
          </button>
        ))}
      {!shared && pass}
    </>
  );
}
