import { useState } from 'react';
import { Button } from '../shared/button';
import { useMessages } from '../shared/messages';
import { NumberInput } from '../shared/number-input';
import { usePreferences } from '../shared/preferences';
import { ProblemNote } from '../shared/screen-states';
import { TextInput } from '../shared/text-input';
import { areaUnitName, sprayUnitName } from '../shared/units';
import { useProblemWords } from '../shared/use-problem-words';
import { ask, type FeedAnswer } from './feed-api';
import { FeedAnswerPanel } from './feed-answer';
import { rememberedFeed, rememberFeed } from './feed-memory';
import { feedMessages } from './feed-messages';
import {
  fieldsOf,
  questionOf,
  toRemember,
  unitName,
  unitOf,
  type Calculation,
  type DilutionWay,
  type FeedDraft,
  type FeedField,
  type FeedFieldName,
  type FeedFault,
} from './feed-state';

interface FeedFormProps {
  readonly calculation: Calculation;
  readonly draft: FeedDraft;
  readonly change: (draft: FeedDraft) => void;
}

/** One question: its fields in the reader's units, what is wrong beside them, and the answer below. */
export function FeedForm({ calculation, draft, change }: FeedFormProps) {
  const refusals = useProblemWords();
  const t = useMessages(feedMessages);
  const [way, setWay] = useState<DilutionWay>({ rate: 'perVolume', volume: 'spray' });
  const [faults, setFaults] = useState<ReadonlyMap<string, FeedFault>>(new Map());
  const [failure, setFailure] = useState<unknown>();
  const [answer, setAnswer] = useState<FeedAnswer>();
  const [changed, setChanged] = useState(false);
  const { length } = usePreferences();
  const fields = fieldsOf(calculation, way, length);
  const touch = () => {
    setFaults(new Map());
    setFailure(undefined);
    setChanged(true);
  };
  const put = (name: string, text: string) => {
    change({ ...draft, [name]: text });
    touch();
  };
  const compute = async () => {
    const made = questionOf(fields, draft);
    if ('faults' in made) {
      setFaults(made.faults);
      return;
    }
    try {
      setAnswer(await ask(calculation, made.question));
      rememberFeed({ ...rememberedFeed(), ...toRemember(draft) });
      setFailure(undefined);
      setChanged(false);
    } catch (refused) {
      setFailure(refused);
    }
  };
  const faultOf = (name: FeedFieldName) => {
    const mine = faults.get(name);
    if (mine) return t[mine];
    return (
      refusals.faultOf(failure, name) ??
      refusals.faultOf(failure, `${name}.value`) ??
      refusals.faultOf(failure, `${name}.unit`)
    );
  };
  const besideFields = fields.some(({ name }) => faultOf(name) !== undefined);
  return (
    <form
      noValidate
      aria-label={t[calculation]}
      onSubmit={(event) => {
        event.preventDefault();
        void compute();
      }}
    >
      <p className="rc-quiet">{t[`${calculation}Help`]}</p>
      {calculation === 'dilution' && (
        <>
          <p className="rc-warning">▲ {t.dilutionCaution}</p>
          <Ways
            way={way}
            choose={(next) => {
              setWay(next);
              touch();
            }}
          />
        </>
      )}
      <div className="feed-fields">
        {fields.map((field) => (
          <OneField key={field.name} field={field} draft={draft} put={put} fault={faultOf(field.name)} />
        ))}
      </div>
      <div className="rc-row rc-no-print">
        <Button theme="primary" onClick={() => void compute()}>
          {t.compute}
        </Button>
        {answer && (
          <Button theme="tertiary" onClick={() => print()}>
            {t.print}
          </Button>
        )}
        <button type="submit" hidden />
      </div>
      {failure !== undefined && !besideFields && <ProblemNote failure={failure} />}
      {answer && (
        <div className={changed ? 'feed-old' : undefined}>
          {changed && <p className="rc-warning">▲ {t.changed}</p>}
          <FeedAnswerPanel calculation={calculation} answer={answer} />
        </div>
      )}
    </form>
  );
}

function Ways({ way, choose }: { way: DilutionWay; choose: (way: DilutionWay) => void }) {
  const t = useMessages(feedMessages);
  return (
    <div className="rc-row rc-no-print">
      <label className="rc-row">
        <span className="rc-quiet">{t.rateWay}</span>
        <select
          className="rc-select"
          value={way.rate}
          onChange={(event) => choose({ ...way, rate: event.target.value as DilutionWay['rate'] })}
        >
          <option value="perVolume">{t.ratePerVolume}</option>
          <option value="liquid">{t.rateliquid}</option>
          <option value="solid">{t.ratesolid}</option>
        </select>
      </label>
      <label className="rc-row">
        <span className="rc-quiet">{t.volumeWay}</span>
        <select
          className="rc-select"
          value={way.volume}
          onChange={(event) => choose({ ...way, volume: event.target.value as DilutionWay['volume'] })}
        >
          <option value="spray">{t.volumespray}</option>
          <option value="area">{t.volumearea}</option>
        </select>
      </label>
    </div>
  );
}

interface OneFieldProps {
  readonly field: FeedField;
  readonly draft: FeedDraft;
  readonly put: (name: string, text: string) => void;
  readonly fault: string | undefined;
}

function useLabel(name: FeedFieldName): string {
  const t = useMessages(feedMessages);
  const { length } = usePreferences();
  switch (name) {
    case 'injector':
      return t.injectorField;
    case 'label':
      return t.labelField;
    case 'areaM2':
      return t.area(areaUnitName(length));
    case 'litresPerM2':
      return t.sprayOnArea(sprayUnitName(length));
    default:
      return t[name];
  }
}

function OneField({ field, draft, put, fault }: OneFieldProps) {
  const t = useMessages(feedMessages);
  const { name, kind, optional } = field;
  const label = useLabel(name);
  const hint = {
    injector: t.injectorHint,
    nitrogenPercent: t.gradeHint,
    label: t.labelHint,
    activeMgPerMl: t.activeMgPerMlHint,
    clearWaterMsPerCm: optional ? t.ecOptional : undefined,
    msPerCmPer100Ppm: optional ? t.ecOptional : undefined,
  }[name as string];
  if (kind === 'text' || kind === 'grade') {
    return (
      <TextInput
        label={label}
        value={draft[name] ?? ''}
        hint={hint}
        maxlength={500}
        required
        fault={fault}
        onValue={(text) => put(name, text)}
      />
    );
  }
  const input = (
    <NumberInput
      label={label}
      value={draft[name] ?? ''}
      fault={fault}
      required={!optional}
      {...(hint === undefined ? {} : { hint })}
      onValue={(text) => put(name, text)}
    />
  );
  if (kind === 'number') return input;
  return (
    <div className="feed-amount">
      {input}
      <select
        className="rc-select"
        aria-label={t.unitOf(label)}
        value={unitOf(field, draft)}
        onChange={(event) => put(`${name}.unit`, event.target.value)}
      >
        {field.units?.map((unit) => (
          <option key={unit} value={unit}>
            {unitName(unit)}
          </option>
        ))}
      </select>
    </div>
  );
}
