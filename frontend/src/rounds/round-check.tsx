import { memo, useState } from 'react';
import { useMay } from '../people/signed-in';
import type { Site } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { ProblemNote } from '../shared/screen-states';
import { useSpeaker } from '../shared/use-problem-words';
import { dateIn } from '../shared/weeks';
import { treatmentsMessages } from '../treatments/treatments-messages';
import { useAnswerCheck } from './answer-check';
import { CheckForm } from './check-form';
import { CountCheck } from './count-check';
import { roundsMessages } from './rounds-messages';
import { doneOf, isByLabel, optionalFields, type RoundDraft, type ShownItem } from './rounds-state';
import { SkipForm } from './skip-form';
import { whySaid } from './why-words';

interface RoundCheckProps {
  readonly item: ShownItem;
  readonly site: Site;
  readonly on: string;
  /** By code; the same map as long as no house changes. */
  readonly houseNames: ReadonlyMap<string, string>;
}

/**
 * One thing to do: what, on which batch and why, with its answer in large buttons. Drawn again only when it changes: a
 * round has a hundred and more, and each press changes one.
 */
export const RoundCheck = memo(function RoundCheck({ item, site, on, houseNames }: RoundCheckProps) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const speaker = useSpeaker(site.timeZone);
  const { temperature } = usePreferences();
  const caution = useMessages(treatmentsMessages).caution;
  const { name: named, close } = useAnswerCheck(site.code, item);
  const [opened, setOpened] = useState<'done' | 'skip'>();
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const task = t[item.task];

  const answer = async (pressed: Parameters<typeof close>[0]) => {
    setBusy(true);
    setFailure(undefined);
    try {
      await close(pressed);
    } catch (unkept) {
      // Only the device's own store fails here: what the server says comes later.
      setFailure(unkept);
    } finally {
      setBusy(false);
    }
  };
  const done = (draft: RoundDraft) => {
    const made = doneOf(item, draft, new Date().toISOString(), temperature);
    if ('faults' in made) return made.faults;
    void answer({ verb: 'done', body: made.done });
    return undefined;
  };
  const skip = (reason: string) =>
    void answer({ verb: 'skipped', body: { reason, happenedAt: new Date().toISOString() } });
  const asksSomething = item.asks.length + optionalFields(item.task).length > 0;
  const blocked = item.state === 'blocked';
  const mayRecord = useMay('record', site.code);
  const future = on > dateIn(site.timeZone, Date.now());
  return (
    <li className={`round-item ${item.state}`}>
      <div className="round-what">
        <span className="round-box" aria-hidden="true" />
        <div>
          <p className="round-task">
            {task} {item.unsent !== undefined && <small className="rc-at-risk">▲ {t.unsent}</small>}{' '}
            {item.state === 'carried-over' && (
              <small className="rc-at-risk">▲ {t.carriedOver(format.dayMonth(item.dueOn))}</small>
            )}
          </p>
          {blocked && item.blockedUntil !== null && (
            <p className="rc-broken">
              ✕ {t.blocked(format.dateTime(item.blockedUntil, site.timeZone), item.blockedBy ?? '')}
            </p>
          )}
          {item.why && <p className="round-why">{whySaid(item.why, { ...speaker, houseNames })}</p>}
          {isByLabel(item.task) && <p className="round-why">▲ {caution}</p>}
        </div>
      </div>
      {failure !== undefined && <ProblemNote failure={failure} />}
      {opened === undefined && !future && mayRecord && (
        <div className="round-answers rc-no-print">
          <button
            type="button"
            className="floor-button primary"
            aria-label={`${t.done}, ${named}`}
            disabled={busy || blocked}
            onClick={() => (asksSomething ? setOpened('done') : done({}))}
          >
            {t.done}
          </button>
          <button
            type="button"
            className="floor-button"
            aria-label={`${t.skip}, ${named}`}
            disabled={busy}
            onClick={() => setOpened('skip')}
          >
            {t.skip}
          </button>
        </div>
      )}
      {opened === 'done' && item.task === 'count' && item.batch !== null && (
        <CountCheck
          batch={item.batch}
          busy={busy}
          record={(found) => void answer({ verb: 'done', body: { ...found, happenedAt: new Date().toISOString() } })}
          back={() => setOpened(undefined)}
        />
      )}
      {opened === 'done' && item.task !== 'count' && (
        <CheckForm item={item} site={site.code} busy={busy} record={done} back={() => setOpened(undefined)} />
      )}
      {opened === 'skip' && <SkipForm busy={busy} skip={skip} back={() => setOpened(undefined)} />}
    </li>
  );
});
