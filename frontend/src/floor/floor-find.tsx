import { useDeferredValue, useEffect, useRef, useState } from 'react';
import { useBatchList } from '../shared/batch-queries';
import { useClosedWords } from '../shared/closed-houses';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { useHouses } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { lastUsedBatches } from './floor-memory';
import { floorMessages } from './floor-messages';
import { batchesFor } from './floor-state';

const MOST_SHOWN = 25;

/** Finds one live batch of a site by what is scanned or typed. Enter takes the first, which a hand scanner sends too. */
export function FloorFind({ site, open }: { site: string; open: (batch: string) => void }) {
  const t = useMessages(floorMessages);
  const stages = useMessages(sharedMessages);
  const format = useFormats();
  const list = useBatchList({ site, state: 'live' });
  const houses = useHouses().data ?? [];
  const closedWords = useClosedWords();
  const [typed, setTyped] = useState('');
  const wanted = useDeferredValue(typed);
  const [lastUsed] = useState(lastUsedBatches);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    // A hand scanner needs the field focused; a finger would only get the telephone's keyboard over the list.
    if (matchMedia('(pointer: fine)').matches) input.current?.focus();
  }, []);

  const found = batchesFor(wanted, list.data?.batches ?? [], houses, lastUsed);
  return (
    <>
      <form
        className="find"
        onSubmit={(event) => {
          event.preventDefault();
          const [first] = batchesFor(typed, list.data?.batches ?? [], houses, lastUsed);
          if (first && typed.trim() !== '') open(first.id);
        }}
      >
        <label>
          <span>{t.find}</span>
          <input
            ref={input}
            value={typed}
            type="text"
            enterKeyHint="go"
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            aria-describedby="find-help"
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
        {typed !== '' && (
          <button
            type="button"
            className="floor-button"
            onClick={() => {
              setTyped('');
              input.current?.focus();
            }}
          >
            {t.clear}
          </button>
        )}
      </form>
      <p id="find-help" className="rc-quiet find-help">
        {t.findHelp}
      </p>
      {list.isPending && <Loading />}
      {list.isError && !list.data && <Failed failure={list.error} retry={() => void list.refetch()} />}
      {list.data && found.length === 0 && (
        <p role="status">{wanted.trim() === '' ? t.noneLive : t.noneFound(wanted.trim())}</p>
      )}
      <ul className="found">
        {found.slice(0, MOST_SHOWN).map((batch) => (
          <li key={batch.id}>
            <button type="button" onClick={() => open(batch.id)}>
              <span className="found-name">{batch.varietyName}</span>
              <span className="found-alive">{format.integer(batch.plants.alive)}</span>
              <span className="found-detail">
                <b>{batch.id}</b>, {houses.find((house) => house.code === batch.house)?.name ?? batch.house}
              </span>
              <span className="found-stage">{stages[`stage${batch.stage}`]}</span>
              {closedWords(batch.house) !== undefined && (
                <span className="found-closed rc-broken">✕ {closedWords(batch.house, 'short')}</span>
              )}
            </button>
          </li>
        ))}
      </ul>
      {found.length > MOST_SHOWN && <p className="rc-quiet">{t.more(format.integer(found.length - MOST_SHOWN))}</p>}
    </>
  );
}
