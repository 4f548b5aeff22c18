import type { House } from '../shared/api-types';
import type { Sensor } from '../shared/climate-types';
import { folded } from '../shared/loose-words';
import { unitsOf } from '../shared/reading-units';
import type { CsvColumn, CsvLine, CsvOutcome, CsvQuestion } from '../shared/reading-types';
import {
  cellOf,
  cellsOf,
  CLOCK_FORMATS,
  DAY_FORMATS,
  decimalOf,
  formatsOf,
  headerOf,
  ISO_LOCAL,
  JUDGED_LINES,
  LARGEST_BYTES,
  OWN_FORMAT,
  rowsOf,
  separatorOf,
  TIME_FORMATS,
  WITH_OFFSET,
} from '../tables/table-text-state';

/**
 * How a CSV file is to be imported, and what came of it. What the table itself tells is filled in; what it leaves
 * open, such as whether the day or the month comes first, is left to be chosen.
 */
export interface ColumnPlan {
  /** `line`: of whatever its line names. */
  readonly kind: 'none' | 'sensor' | 'house' | 'line';
  readonly sensor: string;
  readonly house: string;
  readonly quantity: string;
  readonly unit: string;
}

export interface TablePlan {
  readonly separator: string;
  readonly decimal: string;
  readonly timeColumn: string;
  readonly timeFormat: string;
  /** With the time of day, where the time column holds the day alone; else empty. */
  readonly clockColumn: string;
  readonly clockFormat: string;
  /** The pattern, where none of the known ones is it. */
  readonly ownFormat: string;
  /** Of a zone for the whole table; `SITE_CLOCKS` for each site's own. */
  readonly zone: string;
  /** Says of each line which house or sensor it is of; empty where the columns say it. */
  readonly nameColumn: string;
  readonly names: 'house' | 'sensor';
  readonly columns: Readonly<Record<string, ColumnPlan>>;
}

export type PlanWrong = 'needed' | 'noTable' | 'noColumn' | 'large' | 'unit' | 'sameSign';

export const NOT_TAKEN: ColumnPlan = { kind: 'none', sensor: '', house: '', quantity: '', unit: '' };
export const SITE_CLOCKS = 'site';

type Rows = readonly (readonly string[])[];

/**
 * The plan that `text` itself tells: a column with the name of a sensor or its topic is that sensor's, and one whose
 * cells all name houses or sensors says what its line is of.
 */
export function planFor(
  text: string,
  sensors: readonly Sensor[],
  houses: readonly House[],
  separator: string = separatorOf(text),
): TablePlan {
  const rows = rowsOf(text, separator, JUDGED_LINES);
  const header = headerOf(rows);
  const having = (formats: typeof TIME_FORMATS, not = '') =>
    header.find((name) => name !== not && formatsOf(cellsOf(rows, name), formats).length > 0) ?? '';
  const whole = having(TIME_FORMATS);
  const day = having(DAY_FORMATS);
  const clock = whole === '' && day !== '' ? having(CLOCK_FORMATS, day) : '';
  const naming = namingColumn(rows, header, sensors, houses);
  const plan: TablePlan = {
    separator,
    decimal: decimalOf(rows, separator),
    timeColumn: clock === '' ? whole : day,
    timeFormat: '',
    clockColumn: clock,
    clockFormat: '',
    ownFormat: '',
    zone: SITE_CLOCKS,
    ...naming,
    columns: Object.fromEntries(header.map((name) => [name, columnNamed(name, sensors)])),
  };
  return withFormats(plan, rows);
}

function namingColumn(
  rows: Rows,
  header: readonly string[],
  sensors: readonly Sensor[],
  houses: readonly House[],
): Pick<TablePlan, 'nameColumn' | 'names'> {
  const sensorNames = new Set(sensors.flatMap(({ code, topic }) => [code, topic ?? code].map(folded)));
  const houseNames = new Set(houses.flatMap(({ code, name }) => [code, name].map(folded)));
  const allIn = (known: ReadonlySet<string>) =>
    header.find((name) => {
      const cells = cellsOf(rows, name);
      return cells.length > 0 && cells.every((cell) => known.has(folded(cell)));
    });
  const bySensor = allIn(sensorNames);
  return { nameColumn: bySensor ?? allIn(houseNames) ?? '', names: bySensor === undefined ? 'house' : 'sensor' };
}

/** The formats that the time columns of `plan` have, as far as each has only one. */
function withFormats(plan: TablePlan, rows: Rows): TablePlan {
  const only = (column: string, formats: typeof TIME_FORMATS) => {
    const found = formatsOf(cellsOf(rows, column), formats);
    return found.length === 1 ? (found[0] ?? '') : '';
  };
  const apart = plan.clockColumn !== '';
  return {
    ...plan,
    timeFormat: only(plan.timeColumn, apart ? DAY_FORMATS : TIME_FORMATS),
    clockFormat: apart ? only(plan.clockColumn, CLOCK_FORMATS) : '',
  };
}

/** `plan` with other time columns, and the formats that these have. */
export function withTimeColumns(
  plan: TablePlan,
  text: string,
  change: Partial<Pick<TablePlan, 'timeColumn' | 'clockColumn'>>,
): TablePlan {
  return withFormats({ ...plan, ...change }, rowsOf(text, plan.separator, JUDGED_LINES));
}

/** The first time of the table as its columns have it together. */
export function firstTime(plan: TablePlan, text: string): string {
  const rows = rowsOf(text, plan.separator, 2);
  return [plan.timeColumn, plan.clockColumn]
    .filter((column) => column !== '')
    .map((column) => cellOf(rows, 1, column))
    .join(' ');
}

/** `plan` cut at another separator; what was chosen for columns that are still there stays. */
export function withSeparator(
  plan: TablePlan,
  text: string,
  sensors: readonly Sensor[],
  houses: readonly House[],
  separator: string,
): TablePlan {
  const again = planFor(text, sensors, houses, separator);
  const columns = Object.entries(again.columns).map(([name, column]) => [name, plan.columns[name] ?? column] as const);
  return { ...again, zone: plan.zone, columns: Object.fromEntries(columns) };
}

export function withColumn(plan: TablePlan, name: string, change: Partial<ColumnPlan>): TablePlan {
  const column = { ...(plan.columns[name] ?? NOT_TAKEN), ...change };
  const units = unitsOf(column.quantity);
  const unit = change.quantity !== undefined && units.length === 1 ? (units[0] ?? '') : column.unit;
  return { ...plan, columns: { ...plan.columns, [name]: { ...column, unit } } };
}

function columnNamed(name: string, sensors: readonly Sensor[]): ColumnPlan {
  const wanted = name.toLowerCase();
  const found = sensors.find(({ code, topic }) => code.toLowerCase() === wanted || topic?.toLowerCase() === wanted);
  return found ? { ...NOT_TAKEN, kind: 'sensor', sensor: found.code } : NOT_TAKEN;
}

/** Columns that may hold readings: those that say neither when nor where. */
export function valueColumns(plan: TablePlan): [string, ColumnPlan][] {
  const others = [plan.timeColumn, plan.clockColumn, plan.nameColumn];
  return Object.entries(plan.columns).filter(([name]) => !others.includes(name));
}

/**
 * Columns that are to be taken, in the order in which they are sent. What was chosen for lines that name their house
 * means nothing where they do not, and the other way round.
 */
export function takenColumns(plan: TablePlan): [string, ColumnPlan][] {
  return valueColumns(plan).filter(([, { kind }]) => kind !== 'none' && (kind === 'line') === (plan.nameColumn !== ''));
}

/** What to ask of the server; or what is wrong, by the path that the server would name too. */
export function questionOf(
  text: string,
  plan: TablePlan,
): { readonly question: CsvQuestion } | { readonly wrong: ReadonlyMap<string, PlanWrong> } {
  const wrong = wrongIn(text, plan);
  if (wrong.size > 0) return { wrong };
  const pattern = patternOf(plan);
  const question: CsvQuestion = {
    csv: text,
    separator: plan.separator,
    decimal: plan.decimal,
    timeColumn: plan.timeColumn,
    ...(plan.clockColumn === '' ? {} : { clockColumn: plan.clockColumn }),
    ...([WITH_OFFSET, ISO_LOCAL].includes(pattern) ? {} : { timeFormat: pattern }),
    ...(plan.zone !== SITE_CLOCKS ? { zone: plan.zone } : statesOffset(plan) ? {} : { clockOfSite: true }),
    ...(plan.nameColumn === '' ? {} : { [`${plan.names}Column`]: plan.nameColumn }),
    columns: takenColumns(plan).map(([column, each]) => columnAsked(column, each, plan)),
  };
  const bytes = new TextEncoder().encode(JSON.stringify(question)).length;
  return bytes > LARGEST_BYTES ? { wrong: new Map([['csv', 'large']]) } : { question };
}

function columnAsked(column: string, { kind, sensor, house, quantity, unit }: ColumnPlan, plan: TablePlan): CsvColumn {
  if (kind === 'line') return plan.names === 'sensor' ? { column } : { column, quantity, unit };
  return kind === 'sensor' ? { column, sensor } : { column, house, quantity, unit };
}

/** Day and time of day with a blank between, as the server joins them. */
function patternOf({ timeFormat, ownFormat, clockColumn, clockFormat }: TablePlan): string {
  if (timeFormat === OWN_FORMAT) return ownFormat.trim();
  return clockColumn === '' ? timeFormat : `${timeFormat} ${clockFormat}`;
}

/** Whether every time of the table must say how far it is from UTC. */
export function statesOffset({ timeFormat, clockColumn, clockFormat }: TablePlan): boolean {
  return timeFormat === WITH_OFFSET || (clockColumn !== '' && clockFormat.endsWith('XXX'));
}

function wrongIn(text: string, plan: TablePlan): Map<string, PlanWrong> {
  const wrong = new Map<string, PlanWrong>();
  const need = (path: string, value: string) => {
    if (value.trim() === '') wrong.set(path, 'needed');
  };
  if (text.length > LARGEST_BYTES) wrong.set('csv', 'large');
  else if (rowsOf(text, plan.separator, 2).length < 2) wrong.set('csv', 'noTable');
  if (plan.separator === plan.decimal) wrong.set('decimal', 'sameSign');
  need('timeColumn', plan.timeColumn);
  need('timeFormat', plan.timeFormat === OWN_FORMAT ? plan.ownFormat : plan.timeFormat);
  if (plan.clockColumn !== '' && plan.timeFormat !== OWN_FORMAT) need('clockFormat', plan.clockFormat);
  need('zone', plan.zone);
  const columns = takenColumns(plan);
  if (columns.length === 0) wrong.set('columns', 'noColumn');
  columns.forEach(([, { kind, house, quantity, unit }], i) => {
    if (kind === 'sensor' || (kind === 'line' && plan.names === 'sensor')) return;
    if (kind === 'house') need(`columns.${i}.house`, house);
    need(`columns.${i}.quantity`, quantity);
    need(`columns.${i}.unit`, unit);
    if (quantity && unit && !unitsOf(quantity).includes(unit)) wrong.set(`columns.${i}.unit`, 'unit');
  });
  return wrong;
}

// --- What came of it -----------------------------------------------------------------------------------------------

export const OUTCOMES = ['refused', 'set-aside', 'flagged', 'noted'] as const satisfies readonly CsvOutcome[];

/** Lines of a report of which the same is to be said. */
export interface LineGroup {
  readonly outcome: CsvOutcome;
  readonly kind: string | null;
  readonly column: string | null;
  readonly lines: readonly CsvLine[];
}

/** What is not taken first, then what is odd; within that the most frequent. */
export function grouped(lines: readonly CsvLine[]): LineGroup[] {
  const groups = new Map<string, CsvLine[]>();
  for (const line of lines) {
    const key = JSON.stringify([line.outcome, line.kind, line.column]);
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups.values()]
    .flatMap((same) => {
      const [first] = same;
      return first ? [{ outcome: first.outcome, kind: first.kind, column: first.column, lines: same }] : [];
    })
    .sort((a, b) => OUTCOMES.indexOf(a.outcome) - OUTCOMES.indexOf(b.outcome) || b.lines.length - a.lines.length);
}
