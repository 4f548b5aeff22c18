import { useSearchParams } from 'react-router';
import type { BatchView, EntryView } from '../shared/api-types';
import { useBatchEntries } from '../shared/batch-queries';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { useHouses } from '../shared/setup-lists';
import { Part } from '../shared/part';
import { signed } from '../floor/form-parts';
import { useCustomers } from '../floor/customers';
import { entryMessages } from '../floor/entry-messages';
import { entryWords, type SaidWith } from '../floor/entry-words';
import { canBeUndone } from '../floor/floor-state';
import type { Undoing } from '../floor/undo-panel';
import { causeWord } from './losses-table';
import { newestFirst, ofCause } from './story-state';
import { storyMessages } from './story-messages';

interface BatchStoryProps {
  readonly batch: BatchView;
  readonly timeZone: string | undefined;
  readonly asOf: string | undefined;
  /** Undefined while looking back. */
  readonly undo: ((undoing: Undoing) => void) | undefined;
  /** Entries whose undo is on its way. */
  readonly undoing: ReadonlySet<string>;
}

/** Everything that was recorded about a batch, newest first, down to the postings. */
export function StoryPart({ batch, timeZone, asOf, undo, undoing }: BatchStoryProps) {
  const t = useMessages(storyMessages);
  const words = useMessages(entryMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const entries = useBatchEntries(batch.id, asOf);
  const customerOf = useCustomers(entries.data ?? []);
  const [params, setParams] = useSearchParams();
  const cause = params.get('cause') ?? undefined;
  const said: SaidWith = {
    t: words,
    format,
    customerOf,
    houseName: (code) => houses.find((house) => house.code === code)?.name ?? code,
  };
  const all = entries.data ?? [];
  const shown = newestFirst(cause === undefined ? all : ofCause(all, cause));
  return (
    <Part id="story" className="story-part" title={t.story} first>
      {cause !== undefined && (
        <p className="rc-row rc-no-print">
          <span>{t.storyOf(causeWord(cause, words))}</span>
          <button
            type="button"
            className="rc-link"
            onClick={() =>
              setParams((before) => {
                const after = new URLSearchParams(before);
                after.delete('cause');
                return after;
              })
            }
          >
            {t.showAll}
          </button>
        </p>
      )}
      {entries.isPending && <Loading />}
      {entries.isError && !entries.data && <Failed failure={entries.error} retry={() => void entries.refetch()} />}
      {entries.data && shown.length === 0 && <p className="rc-quiet">{t.noStory}</p>}
      <ol className="story">
        {shown.map((entry) => (
          <StoryEntry
            key={entry.id}
            entry={entry}
            all={all}
            said={said}
            timeZone={timeZone}
            undo={
              undo && canBeUndone(entry, all) && !undoing.has(entry.id)
                ? () =>
                    undo({
                      batch: batch.id,
                      batchName: batch.varietyName,
                      id: entry.id,
                      words: `${words[`kind${entry.kind}`]}: ${entryWords(entry, said)}`,
                    })
                : undefined
            }
          />
        ))}
      </ol>
    </Part>
  );
}

interface StoryEntryProps {
  readonly entry: EntryView;
  readonly all: readonly EntryView[];
  readonly said: SaidWith;
  readonly timeZone: string | undefined;
  readonly undo: (() => void) | undefined;
}

/** Said only when the recording came clearly later than what it tells. */
const LATE_MS = 10 * 60_000;

function StoryEntry({ entry, all, said, timeZone, undo }: StoryEntryProps) {
  const t = useMessages(storyMessages);
  const { format } = said;
  const late = Date.parse(entry.recordedAt) - Date.parse(entry.happenedAt) > LATE_MS;
  const linkTo = (id: string) => {
    const other = all.find((each) => each.id === id);
    return (
      <a className="rc-link" href={`#entry-${id}`}>
        {other ? `${said.t[`kind${other.kind}`]}, ${format.dateTime(other.happenedAt, timeZone)}` : t.anEntry}
      </a>
    );
  };
  return (
    <li id={`entry-${entry.id}`} tabIndex={-1} className={entry.reversedBy ? 'reversed' : undefined}>
      <time dateTime={entry.happenedAt}>{format.dateTime(entry.happenedAt, timeZone)}</time>
      <div>
        <div className="rc-row rc-spread">
          <span>
            <b>{said.t[`kind${entry.kind}`]}</b> <span className="story-words">{entryWords(entry, said)}</span>
          </span>
          <span className="rc-row">
            {entry.aliveAfter !== null && (
              <span className="rc-quiet">{t.aliveAfter(format.integer(entry.aliveAfter))}</span>
            )}
            {undo && (
              <Button theme="tertiary" className="rc-no-print" onClick={undo}>
                {said.t.undo}
              </Button>
            )}
          </span>
        </div>
        {entry.note && <p className="story-note">{entry.note}</p>}
        {entry.reversedBy && (
          <p className="rc-quiet">
            {t.undoneBy} {linkTo(entry.reversedBy)}
          </p>
        )}
        {entry.reverses && (
          <p className="rc-quiet">
            {t.undoes} {linkTo(entry.reverses)}
          </p>
        )}
        {late && (
          <p className="rc-quiet rc-small">
            {t.recorded(format.dateTime(entry.recordedAt, timeZone), entry.recordedBy ?? '')}
          </p>
        )}
        <details>
          <summary>{t.postings}</summary>
          <Postings entry={entry} said={said} timeZone={timeZone} />
        </details>
      </div>
    </li>
  );
}

function Postings({ entry, said, timeZone }: Pick<StoryEntryProps, 'entry' | 'said' | 'timeZone'>) {
  const t = useMessages(storyMessages);
  const { format } = said;
  if (entry.postings.length === 0) return <p className="rc-quiet">{t.noPostings}</p>;
  return (
    <table className="rc-table">
      <HeadRow heads={[t.account, figure(t.plants), t.effective]} />
      <tbody>
        {entry.postings.map(({ account, house, cause, plants, effectiveAt }, i) => (
          <tr key={i}>
            <td>
              {account === 'alive'
                ? t.accountalive(said.houseName(house ?? ''))
                : account === 'lost'
                  ? t.accountlost(causeWord(cause ?? 'other', said.t))
                  : t[`account${account}`]}
            </td>
            <td className="rc-number">{signed(plants, format.integer)}</td>
            <td>{format.dateTime(effectiveAt, timeZone)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
