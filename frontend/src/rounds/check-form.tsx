import { useEffect, useRef, useState } from 'react';
import { BOX_CONDITIONS, type RoundField, type RoundItem } from '../shared/climate-types';
import { useClosedWords } from '../shared/closed-houses';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { useHouses } from '../shared/setup-lists';
import { temperatureUnitName } from '../shared/units';
import { AmountPad } from '../floor/amount-pad';
import { Choice } from '../floor/form-parts';
import { MoistureChoice } from './moisture-choice';
import { roundsMessages } from './rounds-messages';
import {
  isUsualMove,
  mayReachStage,
  optionalFields,
  PESTS,
  startOf,
  type RoundDraft,
  type RoundFault,
} from './rounds-state';

interface CheckFormProps {
  readonly item: RoundItem;
  readonly site: string;
  readonly busy: boolean;
  /** What is wrong, by field; undefined when it was sent. */
  readonly record: (draft: RoundDraft) => ReadonlyMap<RoundField, RoundFault> | undefined;
  readonly back: () => void;
}

const PADDED: ReadonlySet<RoundField> = new Set(['cells', 'reached', 'traps', ...PESTS]);
/** Figures with a decimal point, typed and not counted. */
const TYPED = ['ecMsPerCm', 'nitrogenPpm', 'boxC', 'standbyHours'] as const satisfies readonly RoundField[];
const COMPLETE = 0.9;

/** Asks what the check asks for: amounts on the keypad, a level or a house by one press. */
export function CheckForm({ item, site, busy, record, back }: CheckFormProps) {
  const t = useMessages(roundsMessages);
  const { temperature } = usePreferences();
  const [draft, setDraft] = useState<RoundDraft>(() => startOf(item));
  const [faults, setFaults] = useState<ReadonlyMap<RoundField, RoundFault>>();
  const scouts = item.task === 'scouting';
  const fields: readonly RoundField[] = scouts ? ['traps', ...PESTS] : item.asks;
  const padded = fields.filter((field) => PADDED.has(field));
  const [chosen, setChosen] = useState<string>(padded[0] ?? '');
  const form = useRef<HTMLFormElement>(null);
  // One opened low on a phone would have its answer below the edge.
  useEffect(() => {
    form.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const put = (part: RoundDraft) => {
    setDraft((before) => ({ ...before, ...part }));
    setFaults(undefined);
  };
  const faultOf = (field: RoundField) => {
    const mine = faults?.get(field);
    return mine ? t[mine] : undefined;
  };
  const cells = Number(draft.cells);
  const label = (field: RoundField) => (field === 'boxC' ? t.boxC(temperatureUnitName(temperature)) : t[field]);
  const share = cells > 0 && draft.reached ? Number(draft.reached) / cells : undefined;
  return (
    <form
      ref={form}
      className="round-form rc-no-print"
      noValidate
      aria-label={t[item.task]}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) setFaults(record(draft));
      }}
    >
      {padded.length > 0 && (
        <AmountPad
          chosen={chosen}
          choose={setChosen}
          onValue={(name, value) => put({ [name]: value })}
          fields={padded.map((field) => ({
            name: field,
            label: label(field),
            value: draft[field] ?? '',
            placeholder: '–',
            ...(field === 'cells' ? { start: 50 } : {}),
            fault: faultOf(field),
          }))}
        />
      )}
      {scouts && (
        <Choice
          chosen={PESTS.every((pest) => draft[pest] === '0')}
          choose={() => put(Object.fromEntries(PESTS.map((pest) => [pest, '0'])))}
        >
          {t.noPests}
        </Choice>
      )}
      {item.asks.includes('reached') && (
        <div className="two" role="group" aria-label={t.reached}>
          <Choice chosen={draft.reached === '0'} choose={() => put({ reached: '0' })}>
            {t.noneYet}
          </Choice>
          <Choice
            chosen={Boolean(draft.cells) && draft.reached === draft.cells}
            choose={() => put({ reached: draft.cells ?? '' })}
          >
            {t.all}
          </Choice>
        </div>
      )}
      {mayReachStage(item.task) && share !== undefined && share >= COMPLETE && share <= 1 && (
        <Choice chosen={draft.stageReached ?? false} choose={() => put({ stageReached: !draft.stageReached })}>
          {t.stageReached}
        </Choice>
      )}
      {item.asks.includes('level') && (
        <MoistureChoice value={draft.level ?? ''} choose={(level) => put({ level })} fault={faultOf('level')} />
      )}
      {item.asks.includes('house') && (
        <HouseChoice
          item={item}
          site={site}
          value={draft.house}
          choose={(house) => put({ house })}
          fault={faultOf('house')}
        />
      )}
      {item.asks.includes('condition') && (
        <fieldset className="choices">
          <legend>
            {t.condition} {faultOf('condition') && <span className="rc-broken">✕ {faultOf('condition')}</span>}
          </legend>
          {BOX_CONDITIONS.map((condition) => (
            <Choice key={condition} chosen={draft.condition === condition} choose={() => put({ condition })}>
              {t[condition]}
            </Choice>
          ))}
        </fieldset>
      )}
      {TYPED.filter(
        (field) => item.asks.some((asked) => asked === field) || optionalFields(item.task).includes(field),
      ).map((field) => (
        <label key={field} className="note">
          <span>{label(field)}</span>
          <input
            value={draft[field] ?? ''}
            inputMode="decimal"
            autoComplete="off"
            aria-invalid={faultOf(field) !== undefined}
            onChange={(event) => put({ [field]: event.target.value })}
          />
          {faultOf(field) && <span className="rc-broken">✕ {faultOf(field)}</span>}
        </label>
      ))}
      <label className="note">
        <span>{t.note}</span>
        <input
          value={draft.note ?? ''}
          maxLength={2000}
          autoComplete="off"
          onChange={(event) => put({ note: event.target.value })}
        />
      </label>
      <div className="round-answers">
        <button type="submit" className="floor-button primary" disabled={busy}>
          {t.record}
        </button>
        <button type="button" className="floor-button" onClick={back}>
          {t.back}
        </button>
      </div>
    </form>
  );
}

interface HouseChoiceProps {
  readonly item: RoundItem;
  readonly site: string;
  readonly value: string | undefined;
  readonly choose: (house: string) => void;
  readonly fault: string | undefined;
}

/** Houses that would do come first and say so. */
function HouseChoice({ item, site, value, choose, fault }: HouseChoiceProps) {
  const t = useMessages(roundsMessages);
  const houses = (useHouses().data ?? []).filter((house) => house.site === site && house.code !== item.house);
  const closedWords = useClosedWords();
  const suits = (code: string) => item.fits.includes(code);
  const ordered = [...houses].sort((a, b) => Number(suits(b.code)) - Number(suits(a.code)));
  return (
    <fieldset className="choices">
      <legend>
        {t.house} {fault && <span className="rc-broken">✕ {fault}</span>}
      </legend>
      {ordered.map(({ code, name }) => (
        <Choice
          key={code}
          chosen={value === code}
          choose={() => choose(code)}
          disabled={closedWords(code) !== undefined}
        >
          {name} {suits(code) && <small>✓ {isUsualMove(item) ? t.usual : t.suits}</small>}
          {closedWords(code) !== undefined && <small className="rc-broken">✕ {closedWords(code, 'short')}</small>}
        </Choice>
      ))}
    </fieldset>
  );
}
