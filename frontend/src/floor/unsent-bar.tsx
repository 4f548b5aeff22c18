import { useState } from 'react';
import { Link } from 'react-router';
import { useSignedIn } from '../people/signed-in';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { useHouses } from '../shared/setup-lists';
import { entryMessages } from './entry-messages';
import { entryWords } from './entry-words';
import { floorMessages } from './floor-messages';
import { actionIn } from './floor-state';
import { outbox, useOutbox } from './outbox';
import { refusedOnes, unsentOf, waitingOfOthers, type Waiting } from './outbox-state';
import { refusalMessages, refusalWords } from './refusal-words';

/** What has not reached the server yet, always in sight. It never claims more than has been read from the store. */
export function UnsentBar() {
  const t = useMessages(floorMessages);
  const view = useOutbox();
  const nowMs = useNow();
  const who = useSignedIn()?.name;
  const unsent = unsentOf(view, who).length;
  const others = waitingOfOthers(view, who).length > 0;
  const refused = refusedOnes(view).length;
  const text = () => {
    if (view.broken !== undefined) return t.storeBroken;
    if (!view.read) return t.reading;
    if (unsent === 0) return refused > 0 ? t.refused(refused) : others ? t.mineSent : t.allSent;
    const when = view.sending
      ? t.sending
      : view.nextTryMs === undefined
        ? ''
        : t.nextTry(Math.max(1, Math.round((view.nextTryMs - nowMs) / 1000)));
    return [t.unsent(unsent), when, refused > 0 ? t.refused(refused) : ''].filter(Boolean).join(', ');
  };
  const mark =
    view.broken !== undefined || (unsent === 0 && refused > 0) ? '✕' : unsent > 0 ? '▲' : view.read ? '✓' : '…';
  return (
    <div className={`unsent ${unsent > 0 || view.broken !== undefined ? 'some' : ''}`}>
      <span role="status">
        <span aria-hidden="true">{mark}</span> {text()}
      </span>
      {unsent > 0 && !view.sending && (
        <button type="button" className="floor-button" onClick={() => void outbox.send()}>
          {t.sendNow}
        </button>
      )}
    </div>
  );
}

/** Entries the server would not take, each with its reason, to be mended or thrown away by hand. */
export function RefusedEntries({ batch }: { batch?: string }) {
  const t = useMessages(floorMessages);
  const refused = refusedOnes(useOutbox()).filter((item) => batch === undefined || item.batch === batch);
  if (refused.length === 0) return null;
  return (
    <section className="refused" aria-label={t.refusedTitle}>
      <h2>
        <span aria-hidden="true">✕</span> {t.refused(refused.length)}
      </h2>
      {refused.map((item) => (
        <RefusedEntry key={item.key} item={item} />
      ))}
    </section>
  );
}

function RefusedEntry({ item }: { item: Waiting }) {
  const t = useMessages(floorMessages);
  const words = useMessages(entryMessages);
  const why = useMessages(refusalMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const who = useSignedIn()?.name;
  const [sure, setSure] = useState(false);
  const action = actionIn(item.entry.kind);
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  return (
    <div className="refused-entry">
      <p>
        <strong>
          {words[`kind${item.entry.kind}`]}: {entryWords(item.entry, { t: words, format, houseName })}
        </strong>
        <br />
        <span className="rc-quiet">
          {item.batch}, {item.batchName}, {format.dateTime(item.entry.happenedAt)}
          {item.by && item.by.name !== who && <>, {item.by.displayName}</>}
        </span>
      </p>
      {item.refusal && <p>{refusalWords(item.refusal, why, format.integer)}</p>}
      {sure ? (
        <>
          <p>{t.discardSure}</p>
          <div className="two">
            <button type="button" className="floor-button" onClick={() => setSure(false)}>
              {t.keep}
            </button>
            <button type="button" className="floor-button danger" onClick={() => void outbox.discard(item.key)}>
              {t.discard}
            </button>
          </div>
        </>
      ) : (
        <div className="two">
          <button type="button" className="floor-button" onClick={() => setSure(true)}>
            {t.discard}
          </button>
          {action && (
            <Link
              className="floor-button primary"
              to={`/floor?batch=${encodeURIComponent(item.batch)}&do=${action}&mend=${item.key}`}
            >
              {t.mend}
            </Link>
          )}
        </div>
      )}
    </div>
  );
}
