import { useEffect, useRef, useState } from 'react';
import { useMessages } from '../shared/messages';
import { Choice } from '../floor/form-parts';
import { roundsMessages } from './rounds-messages';

interface SkipFormProps {
  readonly busy: boolean;
  readonly skip: (reason: string) => void;
  readonly back: () => void;
}

/** Why something is left out today; the usual reasons are one press. */
export function SkipForm({ busy, skip, back }: SkipFormProps) {
  const t = useMessages(roundsMessages);
  const reasons = [t.skipNoTime, t.skipNotNeeded, t.skipNotReached];
  const [reason, setReason] = useState('');
  const [other, setOther] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    form.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  return (
    <form
      ref={form}
      className="round-form rc-no-print"
      noValidate
      aria-label={t.whySkip}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy && reason.trim() !== '') skip(reason.trim());
      }}
    >
      <fieldset className="choices tall">
        <legend>{t.whySkip}</legend>
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
          {t.skipOther}
        </Choice>
      </fieldset>
      {other && (
        <label className="note">
          <span>{t.whySkip}</span>
          <input value={reason} maxLength={500} onChange={(event) => setReason(event.target.value)} />
        </label>
      )}
      <div className="round-answers">
        <button type="submit" className="floor-button primary" disabled={busy || reason.trim() === ''}>
          {t.skipNow}
        </button>
        <button type="button" className="floor-button" onClick={back}>
          {t.back}
        </button>
      </div>
    </form>
  );
}
