import { useOutbox } from '../outbox/outbox';
import { waitingFor } from '../outbox/outbox-state';
import { useSignedIn } from '../people/signed-in';
import type { BatchView, EntryView } from '../shared/api-types';
import { useBatchEntries } from '../shared/batch-queries';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useHouses } from '../shared/setup-lists';
import { useCustomers } from './customers';
import { entryMessages } from './entry-messages';
import { entryWords } from './entry-words';
import { floorMessages } from './floor-messages';
import { canBeUndone } from './floor-state';
import type { Undoing } from './undo-panel';

const MOST_SHOWN = 5;

/** The newest entries of a batch, those still on the device first, each with its undo. */
export function LastEntries({
  batch,
  timeZone,
  undo,
}: {
  batch: BatchView;
  timeZone: string | undefined;
  undo: (undoing: Undoing) => void;
}) {
  const t = useMessages(floorMessages);
  const words = useMessages(entryMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const entries = useBatchEntries(batch.id);
  const customerOf = useCustomers(entries.data ?? []);
  const view = useOutbox();
  const who = useSignedIn()?.name;
  const waiting = waitingFor(view, batch.id).filter((item) => item.refusal === null);
  const undoesWaiting = new Set(
    waiting.flatMap(({ message: { entry }, undoes }) => (entry.kind === 'reversal' ? [entry.entry, undoes ?? ''] : [])),
  );
  const said = {
    t: words,
    format,
    customerOf,
    houseName: (code: string) => houses.find((house) => house.code === code)?.name ?? code,
  };
  const newest = [...(entries.data ?? [])].sort((a, b) => b.position - a.position).slice(0, MOST_SHOWN);
  const undoOf = (entry: EntryView): Undoing => ({
    batch: batch.id,
    batchName: batch.varietyName,
    id: entry.id,
    words: `${words[`kind${entry.kind}`]}: ${entryWords(entry, said)}`,
  });
  return (
    <section aria-label={t.lastEntries}>
      <h2>{t.lastEntries}</h2>
      <ul className="last-entries">
        {[...waiting].reverse().map(({ key, by, message: { entry } }) => (
          <li key={key} className="waiting">
            <EntryLine
              kind={words[`kind${entry.kind}`]}
              words={entryWords(entry, said)}
              when={format.dateTime(entry.happenedAt, timeZone)}
            />
            <span className="rc-at-risk">
              ▲ {undoesWaiting.has(key) ? t.undoWaits : t.waiting}
              {by && by.name !== who && <>, {by.displayName}</>}
            </span>
            {by?.name === who && entry.kind !== 'reversal' && !undoesWaiting.has(key) && (
              <button
                type="button"
                className="floor-button"
                onClick={() =>
                  undo({
                    batch: batch.id,
                    batchName: batch.varietyName,
                    key,
                    words: `${words[`kind${entry.kind}`]}: ${entryWords(entry, said)}`,
                  })
                }
              >
                {words.undo}
              </button>
            )}
          </li>
        ))}
        {newest.map((entry) => (
          <li key={entry.id} className={entry.reversedBy ? 'reversed' : undefined}>
            <EntryLine
              kind={words[`kind${entry.kind}`]}
              words={entryWords(entry, said)}
              when={format.dateTime(entry.happenedAt, timeZone)}
            />
            {entry.reversedBy && <span className="rc-quiet">{words.undone}</span>}
            {undoesWaiting.has(entry.id) && <span className="rc-at-risk">▲ {t.undoWaits}</span>}
            {canBeUndone(entry, entries.data ?? []) && !undoesWaiting.has(entry.id) && (
              <button
                type="button"
                className="floor-button"
                aria-label={`${words.undo}: ${words[`kind${entry.kind}`]} ${entryWords(entry, said)}`}
                onClick={() => undo(undoOf(entry))}
              >
                {words.undo}
              </button>
            )}
          </li>
        ))}
      </ul>
      {entries.isSuccess && newest.length === 0 && waiting.length === 0 && <p className="rc-quiet">{t.noEntries}</p>}
    </section>
  );
}

function EntryLine({ kind, words, when }: { kind: string; words: string; when: string }) {
  return (
    <span className="entry-line">
      <span>
        <b>{kind}</b> <span className="entry-words">{words}</span>
      </span>
      <small>{when}</small>
    </span>
  );
}
