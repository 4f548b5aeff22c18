import { useState } from 'react';
import { outbox } from '../outbox/outbox';
import { MoistureChoice } from '../rounds/moisture-choice';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { usePreferences } from '../shared/preferences';
import { ProblemNote } from '../shared/screen-states';
import { useHouses } from '../shared/setup-lists';
import { Choice, Form } from './form-parts';
import { handReadings, NOTHING_READ, type HandDraft, type HandFault } from './hand-readings-state';
import { handMessages } from './hand-messages';
import { RefusedReadings } from './refused-readings';
import { byNumberInside } from './floor-state';

interface HandReadingsProps {
  readonly site: string;
  readonly timeZone: string | undefined;
  /** Where one stands; undefined until it is chosen. */
  readonly house: string | undefined;
  readonly choose: (house: string) => void;
  readonly leave: () => void;
}

/** A house read by hand: thermometer, hygrometer and fingers, in one go. What was not read stays empty. */
export function HandReadings({ site, timeZone, house, choose, leave }: HandReadingsProps) {
  const t = useMessages(handMessages);
  const houses = (useHouses().data ?? [])
    .filter((each) => each.site === site)
    .sort((a, b) => byNumberInside(a.name, b.name));
  return (
    <section className="floor-panel">
      <div className="panel-head">
        <button type="button" className="floor-button" onClick={leave}>
          ← {t.back}
        </button>
        <h2>{t.title}</h2>
      </div>
      <RefusedReadings timeZone={timeZone} />
      <fieldset className="choices">
        <legend>{t.house}</legend>
        {houses.map(({ code, name }) => (
          <Choice key={code} chosen={house === code} choose={() => choose(code)}>
            {name}
          </Choice>
        ))}
      </fieldset>
      {house !== undefined && (
        <HouseRead
          key={house}
          site={site}
          house={house}
          name={houses.find(({ code }) => code === house)?.name ?? house}
        />
      )}
    </section>
  );
}

function HouseRead({ site, house, name }: { site: string; house: string; name: string }) {
  const t = useMessages(handMessages);
  const { temperature } = usePreferences();
  const { temperatureUnit } = useFormats();
  const [draft, setDraft] = useState(NOTHING_READ);
  const [faults, setFaults] = useState<Partial<Record<keyof HandDraft, HandFault>>>({});
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const put = (part: Partial<HandDraft>) => {
    setDraft((before) => ({ ...before, ...part }));
    setFaults({});
  };
  const record = async () => {
    const made = handReadings(draft, house, new Date().toISOString(), temperature);
    if ('faults' in made) {
      setFaults(made.faults);
      return;
    }
    setBusy(true);
    setFailure(undefined);
    try {
      for (const reading of made.readings) await outbox.add({ to: 'reading', site, houseName: name, reading });
      notice({ text: t.recorded(name, made.readings.length) });
      put(NOTHING_READ);
    } catch (cause) {
      // Only the device's own store fails here, and what was typed stays: what the server says comes later.
      setFailure(cause);
    } finally {
      setBusy(false);
    }
  };
  const field = (of: 'air' | 'medium' | 'humidity', unit: string) => (
    <label className="note" key={of}>
      <span>
        {t[of]}, {unit} {faults[of] && <span className="rc-broken">✕ {t[faults[of]]}</span>}
      </span>
      <input
        value={draft[of]}
        inputMode="decimal"
        autoComplete="off"
        enterKeyHint="next"
        aria-invalid={faults[of] !== undefined}
        onChange={(event) => put({ [of]: event.target.value })}
      />
    </label>
  );
  return (
    <Form busy={busy} submit={() => void record()}>
      <ProblemNote failure={failure} />
      <div className="hand-fields">
        {field('air', temperatureUnit)}
        {field('medium', temperatureUnit)}
        {field('humidity', '%')}
      </div>
      <MoistureChoice
        value={draft.moisture}
        choose={(moisture) => put({ moisture: draft.moisture === moisture ? '' : moisture })}
        fault={undefined}
      />
    </Form>
  );
}
