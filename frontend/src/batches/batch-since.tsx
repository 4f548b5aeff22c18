import { useCustomers } from '../floor/customers';
import { entryMessages } from '../floor/entry-messages';
import { entryWords, type SaidWith } from '../floor/entry-words';
import type { BatchView, Instant } from '../shared/api-types';
import { useBatch, useBatchEntries } from '../shared/batch-queries';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { useHouses } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { entriesSince, figuresSince, type FigureSince } from './batch-since-state';
import { storyMessages } from './story-messages';

interface BatchSinceProps {
  readonly then: BatchView;
  readonly asOf: Instant;
  readonly timeZone: string | undefined;
}

/** What became of a batch between the moment looked back to and now, in one list: its figures, then what was recorded. */
export function BatchSince({ then, asOf, timeZone }: BatchSinceProps) {
  const t = useMessages(storyMessages);
  const words = useMessages(entryMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const now = useBatch(then.id);
  const entries = useBatchEntries(then.id);
  const customerOf = useCustomers(entries.data ?? []);
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  const said: SaidWith = { t: words, format, customerOf, houseName };
  if (now.isPending || entries.isPending) return <Loading />;
  if (!now.data || !entries.data) {
    return (
      <Failed
        failure={now.error ?? entries.error}
        retry={() => {
          void now.refetch();
          void entries.refetch();
        }}
      />
    );
  }
  const shown = (each: FigureSince, value: FigureSince['after']) => {
    if (value === null) return each.figure === 'ready' ? shared.notInSight : '–';
    if (typeof value === 'number') return format.integer(value);
    if (each.figure === 'stage') return shared[`stage${value as BatchView['stage']}`];
    return each.figure === 'house' ? houseName(value) : format.dayOf(value, timeZone);
  };
  const figures = figuresSince(then, now.data, timeZone);
  const happened = entriesSince(entries.data, asOf);
  return (
    <section className="rc-sheet batch-since" aria-label={t.changedSince}>
      <h2>{t.changedSince}</h2>
      {figures.length + happened.length === 0 && <p className="rc-quiet">{t.changedNothing}</p>}
      <ul>
        {figures.map((each) => (
          <li key={each.figure}>
            {t[each.figure]}: {shown(each, each.before)} → <strong>{shown(each, each.after)}</strong>
          </li>
        ))}
        {happened.map((entry) => (
          <li key={entry.id} className={entry.reversedBy ? 'reversed' : undefined}>
            <time dateTime={entry.happenedAt}>{format.dateTime(entry.happenedAt, timeZone)}</time>{' '}
            <b>{words[`kind${entry.kind}`]}</b> {entryWords(entry, said)}
          </li>
        ))}
      </ul>
    </section>
  );
}
