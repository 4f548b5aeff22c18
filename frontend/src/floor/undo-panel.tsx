import { useState } from 'react';
import { useMessages } from '../shared/messages';
import { ProblemNote } from '../shared/screen-states';
import { Choice } from './form-parts';
import { entryMessages } from './entry-messages';
import { outbox } from '../outbox/outbox';

/** What is to be undone: an entry the server knows, or one of this device by its key. */
export interface Undoing {
  readonly batch: string;
  readonly batchName: string;
  readonly words: string;
  readonly id?: string;
  readonly key?: string;
}

/** Asks why, with the usual reason already chosen. */
export function UndoPanel({ undoing, done }: { undoing: Undoing; done: (outcome?: 'removed' | 'sent') => void }) {
  const t = useMessages(entryMessages);
  const reasons = [t.reasonMistake, t.reasonBatch, t.reasonNumber];
  const [reason, setReason] = useState(t.reasonMistake);
  const [other, setOther] = useState(false);
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const said = reason.trim();

  const undo = async (): Promise<void> => {
    setBusy(true);
    try {
      if (undoing.key !== undefined) {
        done((await outbox.undo(undoing.key, said)) === 'removed' ? 'removed' : 'sent');
      } else if (undoing.id !== undefined) {
        const happenedAt = new Date().toISOString();
        const { batch, batchName, id } = undoing;
        await outbox.add({
          to: 'batch',
          batch,
          batchName,
          entry: { kind: 'reversal', happenedAt, entry: id, reason: said },
        });
        done('sent');
      }
    } catch (cause) {
      setFailure(cause);
      setBusy(false);
    }
  };
  return (
    <section className="undo-panel" aria-label={t.undoTitle}>
      <p className="undo-what">{undoing.words}</p>
      <p className="rc-quiet">{t.undoHelp}</p>
      {failure !== undefined && <ProblemNote failure={failure} />}
      <fieldset className="choices tall">
        <legend>{t.why}</legend>
        {reasons.map((each) => (
          <Choice
            key={each}
            chosen={!other && reason === each}
            choose={() => {
              setOther(false);
              setReason(each);
            }}
          >
            {each}
          </Choice>
        ))}
        <Choice
          chosen={other}
          choose={() => {
            setOther(true);
            setReason('');
          }}
        >
          {t.reasonOther}
        </Choice>
      </fieldset>
      {other && (
        <label className="note">
          <span>{t.why}</span>
          <input value={reason} maxLength={300} onChange={(event) => setReason(event.target.value)} />
        </label>
      )}
      <div className="record-bar two">
        <button type="button" className="floor-button" onClick={() => done()}>
          {t.cancel}
        </button>
        <button
          type="button"
          className="floor-button primary"
          disabled={busy || said === ''}
          onClick={() => void undo()}
        >
          {t.undoNow}
        </button>
      </div>
    </section>
  );
}
