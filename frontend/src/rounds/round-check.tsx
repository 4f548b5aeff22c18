import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { useMay } from '../people/signed-in';
import type { Site } from '../shared/api-types';
import type { RoundItem } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { Problem } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { dateIn } from '../shared/weeks';
import { CheckForm } from './check-form';
import { closeDone, closeSkipped, reopen } from './rounds-api';
import { roundsMessages } from './rounds-messages';
import { doneOf, optionalFields, type RoundDraft } from './rounds-state';
import { SkipForm } from './skip-form';

/** One thing to do: what, on which batch and why, with its answer in large buttons. */
export function RoundCheck({ item, site, on }: { item: RoundItem; site: Site; on: string }) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const queries = useQueryClient();
  const [opened, setOpened] = useState<'done' | 'skip'>();
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  // Sending again after silence must not record twice, so key and moment stay with the wish; another answer is another.
  const sent = useRef<{ wish: string; key: string; at: string } | undefined>(undefined);
  const task = t[item.task];
  const named = [task, item.batch].filter(Boolean).join(', ');

  const sending = (wish: unknown) => {
    const text = JSON.stringify(wish);
    if (sent.current?.wish !== text) sent.current = { wish: text, key: newKey(), at: new Date().toISOString() };
    return sent.current;
  };
  const close = async (send: () => Promise<unknown>, said: string) => {
    setBusy(true);
    setFailure(undefined);
    try {
      await send();
      notice({ text: said, undo: takeBack, topic: 'rounds' });
      await queries.invalidateQueries({ queryKey: ['rounds', site.code] });
    } catch (refused) {
      if (refused instanceof Problem) sent.current = undefined;
      setFailure(refused);
      setBusy(false);
    }
  };
  const takeBack = async () => {
    await reopen(item.id, t.undoReason, newKey());
    notice({ text: t.undone(named), topic: 'rounds' });
    await queries.invalidateQueries({ queryKey: ['rounds', site.code] });
  };
  const done = (draft: RoundDraft) => {
    const { key, at } = sending(draft);
    const made = doneOf(item, draft, at);
    if ('faults' in made) return made.faults;
    void close(() => closeDone(item.id, made.done, key), t.recorded(named));
    return undefined;
  };
  const skip = (reason: string) => {
    const { key, at } = sending({ reason });
    void close(() => closeSkipped(item.id, reason, at, key), t.skipped(named));
  };
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
            {task}{' '}
            {item.state === 'carried-over' && (
              <small className="rc-at-risk">▲ {t.carriedOver(format.dayMonth(item.dueOn))}</small>
            )}
          </p>
          {blocked && item.blockedUntil !== null && (
            <p className="rc-broken">✕ {t.blocked(format.dateTime(item.blockedUntil, site.timeZone))}</p>
          )}
          <p className="round-why" lang="en">
            {item.why}
          </p>
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
      {opened === 'done' && (
        <CheckForm
          item={item}
          site={site.code}
          busy={busy}
          failure={failure}
          record={done}
          back={() => setOpened(undefined)}
        />
      )}
      {opened === 'skip' && <SkipForm busy={busy} skip={skip} back={() => setOpened(undefined)} />}
    </li>
  );
}
