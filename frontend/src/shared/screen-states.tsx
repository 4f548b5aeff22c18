import { useEffect, useState, type ReactNode } from 'react';
import { Button } from './button';
import { useMessages } from './messages';
import { sharedMessages } from './shared-messages';
import { useProblemWords } from './use-problem-words';

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
  const said = useProblemWords();
  return (
    <div className="rc-state" role="alert">
      <h2>
        <span className="rc-broken" aria-hidden="true">
          ✕{' '}
        </span>
        {t.failed}
      </h2>
      <p>{said.of(failure)}</p>
      {retry && <Button onClick={retry}>{t.tryAgain}</Button>}
    </div>
  );
}

interface ProblemNoteProps {
  readonly failure: unknown;
  /** Of the site that it is about; without one, the reader's own. */
  readonly timeZone?: string | undefined;
  readonly children?: ReactNode;
}

/** A refusal beside the form that caused it. Field faults belong beside their fields (`faultOf`). */
export function ProblemNote({ failure, timeZone, children }: ProblemNoteProps) {
  const said = useProblemWords(timeZone);
  if (!failure) return null;
  return (
    <div className="rc-problem" role="alert">
      <p>✕ {said.of(failure)}</p>
      {children}
    </div>
  );
}
