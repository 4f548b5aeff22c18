import type { ReactNode } from 'react';
import { useMessages } from '../shared/messages';
import { firstDayMessages } from './first-day-messages';

interface StepProps {
  readonly id: string;
  readonly title: string;
  readonly done: boolean;
  readonly children: ReactNode;
}

/** One step of the first day, marked once there is something of it. */
export function Step({ id, title, done, children }: StepProps) {
  const t = useMessages(firstDayMessages);
  return (
    <section className="rc-sheet first-step" aria-labelledby={id}>
      <h2 id={id}>
        {title}
        {done && (
          <span className="first-done">
            {' '}
            ✓<span className="rc-hidden"> {t.done}</span>
          </span>
        )}
      </h2>
      {children}
    </section>
  );
}
