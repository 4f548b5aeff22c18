import { useState } from 'react';
import type { Instant } from '../shared/api-types';
import { momentTyped } from '../shared/as-of-state';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { wallClock } from '../shared/zoned-time';
import { floorMessages } from './floor-messages';
import { Choice } from './form-parts';

export type Happened = Instant | 'unclear' | undefined;

interface HappenedChoiceProps {
  readonly timeZone: string | undefined;
  /** Undefined is now; 'unclear' is told while it is being typed. */
  readonly onHappened: (happened: Happened) => void;
}

/** When it happened: now, or at a day and a time of the site. */
export function HappenedChoice({ timeZone, onHappened }: HappenedChoiceProps) {
  const t = useMessages(floorMessages);
  const nowMs = useNow();
  const [typed, setTyped] = useState<{ readonly day: string; readonly time: string }>();
  const put = (next: typeof typed) => {
    setTyped(next);
    onHappened(happenedOf(next, timeZone, Date.now()));
  };
  const fault = typed && happenedOf(typed, timeZone, nowMs) === 'unclear';
  return (
    <section className="happened" aria-label={t.when}>
      <div className="two" role="group" aria-label={t.when}>
        <Choice chosen={typed === undefined} choose={() => put(undefined)}>
          {t.now}
        </Choice>
        <Choice
          chosen={typed !== undefined}
          choose={() => {
            if (typed) return;
            const [day = '', time = ''] = wallClock(timeZone, Date.now()).split('T');
            put({ day, time });
          }}
        >
          {t.earlier}
        </Choice>
      </div>
      {typed && (
        <>
          <div className="two">
            <label className="note">
              <span>{t.day}</span>
              <input type="date" value={typed.day} onChange={(event) => put({ ...typed, day: event.target.value })} />
            </label>
            <label className="note">
              <span>{t.clock}</span>
              <input type="time" value={typed.time} onChange={(event) => put({ ...typed, time: event.target.value })} />
            </label>
          </div>
          <p className={fault ? 'rc-broken' : 'rc-quiet'} role="status">
            {fault ? `✕ ${t.badTime}` : t.siteClock}
          </p>
        </>
      )}
    </section>
  );
}

/** What was typed as an instant of the site. */
export function happenedOf(
  typed: { readonly day: string; readonly time: string } | undefined,
  timeZone: string | undefined,
  nowMs: number,
): Happened {
  if (typed === undefined) return undefined;
  const moment = momentTyped(timeZone, typed.day, typed.time, nowMs);
  return 'asOf' in moment ? moment.asOf : 'unclear';
}
