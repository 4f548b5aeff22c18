import { useEffect, useState, type ReactNode } from 'react';
import { Button } from '@vaadin/react-components/Button.js';
import { useMessages } from './messages';
import { Problem, Unreachable } from './problem';
import { sharedMessages } from './shared-messages';

/** The states a screen is in when it has nothing to show: loading, empty, failed. */

/** Says nothing for the first moment, so that a quick answer does not flicker; then that it is at work. */
export function Loading() {
  const t = useMessages(sharedMessages);
  const [waited, setWaited] = useState(0);
  useEffect(() => {
    const timers = [setTimeout(() => setWaited(1), 250), setTimeout(() => setWaited(2), 5_000)];
    return () => timers.forEach(clearTimeout);
  }, []);
  return (
    <div className="rc-state" role="status">
      {waited > 0 && <p>{t.loading}</p>}
      {waited > 1 && <p>{t.takesLonger}</p>}
    </div>
  );
}

/** Nothing there yet, and what to do next. */
export function Empty({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className="rc-state">
      <h2>{title}</h2>
      {children}
    </div>
  );
}

export function Failed({ failure, retry }: { failure: unknown; retry?: () => void }) {
  const t = useMessages(sharedMessages);
  return (
    <div className="rc-state" role="alert">
      <h2>
        <span className="rc-broken" aria-hidden="true">
          ✕{' '}
        </span>
        {t.failed}
      </h2>
      <p>{useReason(failure)}</p>
      {retry && <Button onClick={retry}>{t.tryAgain}</Button>}
    </div>
  );
}

/** A refusal beside the form that caused it. Field faults belong beside their fields (`faultOf`). */
export function ProblemNote({ failure, children }: { failure: unknown; children?: ReactNode }) {
  const reason = useReason(failure);
  if (!failure) return null;
  return (
    <div className="rc-problem" role="alert">
      <p>✕ {reason}</p>
      {children}
    </div>
  );
}

/** The reason in a sentence for the reader. */
export function useReason(failure: unknown): string {
  const t = useMessages(sharedMessages);
  if (failure instanceof Unreachable) return t.unreachable;
  if (failure instanceof Problem && failure.status === 401) return t.signedOut;
  if (failure instanceof Problem && failure.status === 403) return t.noRight;
  if (failure instanceof Problem && failure.isNotComputed) return t.notComputedHelp;
  if (failure instanceof Problem) return failure.detail || failure.title;
  return failure instanceof Error ? failure.message : String(failure ?? '');
}
