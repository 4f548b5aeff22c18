import { useState, type ReactNode } from 'react';
import { Link } from 'react-router';
import { useSignedIn } from '../people/signed-in';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useProblemWords } from '../shared/use-problem-words';
import { confirmed, doubtMessages, doubtWords, isDoubt } from './doubt-words';
import { outbox } from './outbox';
import { outboxMessages } from './outbox-messages';
import type { Waiting } from './outbox-state';

/** What the server would not take, each with its reason, to be mended or thrown away by hand. */
export function RefusedList({ count, children }: { count: number; children: ReactNode }) {
  const t = useMessages(outboxMessages);
  if (count === 0) return null;
  return (
    <section className="refused rc-no-print" aria-label={t.refusedTitle}>
      <h2>
        <span aria-hidden="true">✕</span> {t.refused(count)}
      </h2>
      {children}
    </section>
  );
}

interface RefusedItemProps {
  readonly item: Waiting;
  readonly what: string;
  readonly about: string;
  /** Where it can be put right; left out where it is simply done again. */
  readonly mendAt?: string | undefined;
  /** Of the site that it is about. */
  readonly timeZone: string | undefined;
}

export function RefusedItem({ item, what, about, mendAt, timeZone }: RefusedItemProps) {
  const t = useMessages(outboxMessages);
  const refusals = useProblemWords(timeZone);
  const doubt = useMessages(doubtMessages);
  const format = useFormats();
  const who = useSignedIn()?.name;
  const [sure, setSure] = useState(false);
  const asks = item.refusal !== null && isDoubt(item.refusal);
  const by = item.by && item.by.name !== who ? item.by.displayName : undefined;
  return (
    <div className="refused-entry">
      <p>
        <strong>{what}</strong>
        <br />
        <span className="rc-quiet">{[about, by].filter(Boolean).join(', ')}</span>
      </p>
      {item.refusal && !asks && <p>{refusals.told(item.refusal)}</p>}
      {item.refusal && asks && (
        <>
          <p>{doubtWords(item.refusal, doubt, format, timeZone)}</p>
          <p>
            <strong>{doubt.title}</strong>
          </p>
        </>
      )}
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
          {mendAt !== undefined && (
            <Link className={`floor-button ${asks ? '' : 'primary'}`} to={mendAt}>
              {t.mend}
            </Link>
          )}
          {asks && (
            <button
              type="button"
              className="floor-button primary refused-confirm"
              onClick={() => void outbox.mend(item.key, confirmed(item.message))}
            >
              {doubt.isRight}
            </button>
          )}
        </div>
      )}
    </div>
  );
}
