import { useState } from 'react';
import type { BatchView, Instant, NewEntry } from '../shared/api-types';
import { useMessages } from '../shared/messages';
import { ProblemNote } from '../shared/screen-states';
import { EntryForm } from './entry-forms';
import { pressed, type Action, type Draft } from './floor-state';
import { outbox, useOutbox } from '../outbox/outbox';
import { outboxMessages } from '../outbox/outbox-messages';
import { isEntry } from '../outbox/outbox-state';
import './floor.css';

/**
 * A form with the outbox behind it. The time is taken at the press; the panel closes once the entry is safe on the
 * device, and keeps what was typed if it is not.
 */
export interface EntryPanelProps {
  readonly batch: BatchView;
  readonly action: Action;
  /** Safe on the device; `entry` is what was pressed. */
  readonly done: (entry: NewEntry) => void;
  /** Key of a refused entry to put right. */
  readonly mends?: string | undefined;
  /** When it happened, if not now; 'unclear' while that is being typed. */
  readonly happened?: Instant | 'unclear' | undefined;
}

export function EntryPanel({ batch, action, done, mends, happened }: EntryPanelProps) {
  const t = useMessages(outboxMessages);
  const { waiting, broken, read } = useOutbox();
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const refused = waiting.filter(isEntry).find((item) => item.key === mends && item.refusal !== null);

  const record = async (draft: Draft): Promise<void> => {
    if (happened === 'unclear') return;
    const entry = pressed(draft, happened === undefined ? Date.now() : Date.parse(happened));
    setBusy(true);
    try {
      if (refused) {
        // What is mended happened when it was first pressed, unless just that time was refused.
        const happenedAt =
          refused.refusal?.kind === 'in-the-future' ? entry.happenedAt : refused.message.entry.happenedAt;
        await outbox.mend(refused.key, { ...refused.message, entry: { ...entry, happenedAt } });
      } else {
        await outbox.add({ to: 'batch', batch: batch.id, batchName: batch.varietyName, entry });
      }
      done(entry);
    } catch (cause) {
      setFailure(cause);
    } finally {
      setBusy(false);
    }
  };
  if (broken !== undefined) return <p className="rc-problem">✕ {t.storeBroken}</p>;
  // The form takes over what a refused entry said only when it is first drawn.
  if (mends !== undefined && !read) return <p role="status">{t.reading}</p>;
  return (
    <>
      {failure !== undefined && <ProblemNote failure={failure} />}
      <EntryForm
        action={action}
        batch={batch}
        before={refused?.message.entry}
        busy={busy}
        earlier={happened !== undefined}
        record={(draft) => void record(draft)}
      />
    </>
  );
}
