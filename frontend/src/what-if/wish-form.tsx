import { ComboBox } from '@vaadin/react-components/ComboBox.js';
import { useResidentBatches, type ResidentBatch } from '../climate/climate-api';
import { Button } from '../shared/button';
import { DateInput } from '../shared/date-input';
import { useBatchList } from '../shared/batch-queries';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { NumberInput } from '../shared/number-input';
import { useNow } from '../shared/now';
import { useHouses, useSites } from '../shared/setup-lists';
import { useSiteFilter } from '../shared/site-filter';
import { TextInput } from '../shared/text-input';
import type { TemperatureUnit } from '../shared/units';
import { whatIfMessages } from './what-if-messages';
import {
  mediumTyped,
  recipeLimits,
  type MediumBand,
  type MoveDraft,
  type SetpointDraft,
  type WishDraft,
} from './what-if-state';

interface WishFormProps {
  readonly draft: WishDraft;
  readonly change: (draft: WishDraft) => void;
  readonly faultOf: (path: string) => string | undefined;
  readonly unit: TemperatureUnit;
  readonly ask: () => void;
  readonly asking: boolean;
  readonly newLine: () => { readonly key: number; readonly date: string; readonly time: string };
}

/** The lines of a trial: set-points of houses, and batches carried to other houses. */
export function WishForm({ draft, change, faultOf, ask, asking, newLine, unit }: WishFormProps) {
  const t = useMessages(whatIfMessages);
  const [site] = useSiteFilter();
  const residents = useResidentBatches(site, useNow());
  const putSetpoint = (key: number, part: Partial<SetpointDraft>) =>
    change({ ...draft, setpoints: draft.setpoints.map((line) => (line.key === key ? { ...line, ...part } : line)) });
  const putMove = (key: number, part: Partial<MoveDraft>) =>
    change({ ...draft, moves: draft.moves.map((line) => (line.key === key ? { ...line, ...part } : line)) });
  return (
    <section aria-label={t.wish} className="wish rc-no-print">
      {draft.setpoints.map((line, i) => (
        <SetpointLine
          key={line.key}
          line={line}
          name={t.setpoint(i + 1)}
          unit={unit}
          residents={residents}
          faultOf={(field) => faultOf(`setpoints.${i}.${field}`)}
          put={(part) => putSetpoint(line.key, part)}
          remove={() => change({ ...draft, setpoints: draft.setpoints.filter(({ key }) => key !== line.key) })}
        />
      ))}
      {draft.moves.map((line, i) => (
        <MoveLine
          key={line.key}
          line={line}
          name={t.move(i + 1)}
          faultOf={(field) => faultOf(`moves.${i}.${field}`)}
          put={(part) => putMove(line.key, part)}
          remove={() => change({ ...draft, moves: draft.moves.filter(({ key }) => key !== line.key) })}
        />
      ))}
      <div className="rc-row">
        <Button
          onClick={() => change({ ...draft, setpoints: [...draft.setpoints, { ...newLine(), house: '', medium: '' }] })}
        >
          + {t.addSetpoint}
        </Button>
        <Button onClick={() => change({ ...draft, moves: [...draft.moves, { ...newLine(), batch: '', house: '' }] })}>
          + {t.addMove}
        </Button>
        <Button theme="primary" disabled={asking || draft.setpoints.length + draft.moves.length === 0} onClick={ask}>
          {asking ? t.asking : t.ask}
        </Button>
      </div>
    </section>
  );
}

interface Growing {
  /** The unit that temperatures are typed in. */
  readonly unit: TemperatureUnit;
  /** Batches by house, with the phase of the recipe that each is in. */
  readonly residents: ReadonlyMap<string, readonly ResidentBatch[]>;
}

interface LineProps<L> {
  readonly line: L;
  readonly name: string;
  readonly faultOf: (field: string) => string | undefined;
  readonly put: (part: Partial<L>) => void;
  readonly remove: () => void;
}

function SetpointLine({ line, name, faultOf, put, remove, unit, residents }: LineProps<SetpointDraft> & Growing) {
  const t = useMessages(whatIfMessages);
  const format = useFormats();
  const [site] = useSiteFilter();
  const houses = (useHouses().data ?? []).filter((house) => site === undefined || house.site === site);
  const now = houses.find(({ code }) => code === line.house)?.mediumSetpointC;
  const medium = mediumTyped(line.medium, now ?? undefined, unit);
  const bands = (residents.get(line.house) ?? []).flatMap(({ phase }) => phase?.mediumC ?? []);
  return (
    <div className="wish-line" role="group" aria-label={name}>
      <Choice
        label={t.house}
        value={line.house}
        items={houses.map(({ code, name: label }) => ({ code, label }))}
        fault={faultOf('house')}
        choose={(house) => put({ house })}
      />
      <NumberInput
        label={t.medium}
        unit={format.temperatureUnit}
        value={line.medium}
        onValue={(medium) => put({ medium })}
        fault={faultOf('medium') ?? faultOf('mediumC')}
        className="wish-short"
        hint={[typeof now === 'number' ? t.mediumNow(format.temperature(now)) : '', t.mediumSigns]
          .filter(Boolean)
          .join('; ')}
      />
      <When line={line} site={houses.find(({ code }) => code === line.house)?.site} faultOf={faultOf} put={put} />
      <Button theme="tertiary" onClick={remove} aria-label={`${t.remove}: ${name}`}>
        ✕
      </Button>
      {line.house !== '' && 'mediumC' in medium && <Limits bands={bands} mediumC={medium.mediumC} />}
    </div>
  );
}

/** What the recipes of the batches there ask for, and how many of them this would not suit. */
function Limits({ bands, mediumC }: { bands: readonly MediumBand[]; mediumC: number }) {
  const t = useMessages(whatIfMessages);
  const format = useFormats();
  const limits = recipeLimits(bands, mediumC);
  if (!limits) return null;
  const { least, most, batches, tooCold, tooWarm } = limits;
  const ends = [least, most].flatMap((end) => (end === null ? [] : [format.limit(end)])).join(' – ');
  const outside = tooCold + tooWarm;
  return (
    <p className={outside > 0 ? 'wish-limits rc-at-risk' : 'wish-limits rc-quiet'}>
      {outside > 0 && '▲ '}
      {t.would(format.temperature(mediumC))} {t.recipes(batches, ends)}{' '}
      {tooCold > 0 && t.tooCold(tooCold, format.integer(tooCold))}{' '}
      {tooWarm > 0 && t.tooWarm(tooWarm, format.integer(tooWarm))}
    </p>
  );
}

function MoveLine({ line, name, faultOf, put, remove }: LineProps<MoveDraft>) {
  const t = useMessages(whatIfMessages);
  const [site] = useSiteFilter();
  const houses = useHouses().data ?? [];
  const batches = useBatchList({ site, state: 'live' }).data?.batches ?? [];
  const batch = batches.find(({ id }) => id === line.batch);
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  const known = line.batch === '' || batch !== undefined;
  return (
    <div className="wish-line" role="group" aria-label={name}>
      <Choice
        // The field does not look again for the words of a value that it had before the list came.
        key={known ? 'known' : 'unknown'}
        label={t.batch}
        value={line.batch}
        items={[
          ...(known ? [] : [{ code: line.batch, label: line.batch }]),
          ...batches.map(({ id, varietyName, house }) => ({
            code: id,
            label: `${id}, ${varietyName}, ${houseName(house)}`,
          })),
        ]}
        fault={faultOf('batch')}
        choose={(id) => put({ batch: id })}
        wide
      />
      <Choice
        label={t.toHouse}
        value={line.house}
        items={houses
          .filter(({ code, site: of }) => !batch || (of === batch.site && code !== batch.house))
          .map(({ code, name: label }) => ({ code, label }))}
        fault={faultOf('house')}
        choose={(house) => put({ house })}
      />
      <When line={line} site={batch?.site} faultOf={faultOf} put={put} />
      <Button theme="tertiary" onClick={remove} aria-label={`${t.remove}: ${name}`}>
        ✕
      </Button>
    </div>
  );
}

interface WhenProps {
  /** Whose clocks the hour is of; not known before a house or a batch is chosen. */
  readonly site: string | undefined;
  readonly line: { readonly date: string; readonly time: string };
  readonly faultOf: (field: string) => string | undefined;
  readonly put: (part: { readonly date?: string; readonly time?: string }) => void;
}

function When({ line, site, faultOf, put }: WhenProps) {
  const t = useMessages(whatIfMessages);
  const siteName = useSites().data?.find(({ code }) => code === site)?.name;
  return (
    <>
      <DateInput
        label={t.from}
        value={line.date}
        onValue={(date) => put({ date })}
        fault={faultOf('date') ?? faultOf('from')}
      />
      <TextInput
        label={t.time}
        value={line.time}
        className="wish-short"
        hint={siteName === undefined ? undefined : t.clockOf(siteName)}
        fault={faultOf('time')}
        onValue={(time) => put({ time })}
      />
    </>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly items: readonly { readonly code: string; readonly label: string }[];
  readonly fault: string | undefined;
  readonly choose: (code: string) => void;
  readonly wide?: boolean;
}

function Choice({ label, value, items, fault, choose, wide }: ChoiceProps) {
  return (
    <ComboBox
      label={label}
      items={[...items]}
      itemValuePath="code"
      itemLabelPath="label"
      value={value}
      className={wide ? 'wish-wide' : ''}
      manualValidation
      invalid={fault !== undefined}
      errorMessage={fault ?? ''}
      onValueChanged={(event) => {
        if (event.detail.value !== value) choose(event.detail.value);
      }}
    />
  );
}
