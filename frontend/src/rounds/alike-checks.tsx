import { useState } from 'react';
import { useMay } from '../people/signed-in';
import type { Site } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { ProblemNote } from '../shared/screen-states';
import { dateIn } from '../shared/weeks';
import { useCloseTogether } from './answer-check';
import { CheckForm } from './check-form';
import { roundsMessages } from './rounds-messages';
import { alikeHere, doneOf, optionalFields, type RoundDraft, type ShownItem } from './rounds-state';

/** What is the same for several batches of a house, closed for all of them by one answer. */
export function AlikeChecks({ open, site, on }: { open: readonly ShownItem[]; site: Site; on: string }) {
  const t = useMessages(roundsMessages);
  const mayRecord = useMay('record', site.code);
  const groups = alikeHere(open);
  if (groups.length === 0 || !mayRecord || on > dateIn(site.timeZone, Date.now())) return null;
  return (
    <div className="round-alike rc-no-print">
      <h3>{t.alike}</h3>
      {groups.map((items) => (
        <AlikeCheck key={items[0].task} items={items} site={site.code} />
      ))}
    </div>
  );
}

function AlikeCheck({ items, site }: { items: readonly [ShownItem, ...ShownItem[]]; site: string }) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const close = useCloseTogether(site, items);
  const [opened, setOpened] = useState(false);
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const [first] = items;
  const asks = first.asks.length + optionalFields(first.task).length > 0;

  const done = (draft: RoundDraft) => {
    const made = doneOf(first, draft, new Date().toISOString());
    if ('faults' in made) return made.faults;
    setBusy(true);
    close(made.done)
      .catch(setFailure)
      .finally(() => setBusy(false));
    return undefined;
  };
  return (
    <>
      <div className="round-alike-row">
        <span>
          <b>{t[first.task]}</b> <small>{t.batches(format.integer(items.length))}</small>
        </span>
        {!opened && (
          <button
            type="button"
            className="floor-button"
            aria-label={t.doneForAll(t[first.task], format.integer(items.length))}
            disabled={busy}
            onClick={() => (asks ? setOpened(true) : done({}))}
          >
            {t.forAll}
          </button>
        )}
      </div>
      {failure !== undefined && <ProblemNote failure={failure} />}
      {opened && <CheckForm item={first} site={site} busy={busy} record={done} back={() => setOpened(false)} />}
    </>
  );
}
