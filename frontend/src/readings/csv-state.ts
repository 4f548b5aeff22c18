import type { Site } from '../shared/api-types';
import type { Sensor } from '../shared/climate-types';
import { unitsOf } from '../shared/reading-units';
import type { CsvColumn, CsvLine, CsvOutcome, CsvQuestion } from '../shared/reading-types';
import {
  cellsOf,
  decimalOf,
  formatsOf,
  headerOf,
  ISO_LOCAL,
  JUDGED_LINES,
  LARGEST_BYTES,
  OWN_FORMAT,
  rowsOf,
  separatorOf,
  WITH_OFFSET,
} from '../tables/table-text-state';

/**
 * How a CSV file is to be imported, and what came of it. What the table itself tells is filled in; what it leaves
 * open, such as whether the day or the month comes first, is left to be chosen.
 */
export interface ColumnPlan {
  readonly kind: 'none' | 'sensor' | 'house';
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
  /** The pattern, where none of the known ones is it. */
  readonly ownFormat: string;
  readonly zone: string;
  readonly columns: Readonly<Record<string, ColumnPlan>>;
}

export type PlanWrong = 'needed' | 'noTable' | 'noColumn' | 'large' | 'unit' | 'sameSign';

export const NOT_TAKEN: ColumnPlan = { kind: 'none', sensor: '', house: '', quantity: '', unit: '' };

/** The time zone of the site that is looked at, or of all sites if they share one; else it must be chosen. */
export function usualZone(sites: readonly Site[], site: string | undefined): string {
  const zones = new Set(sites.filter(({ code }) => site === undefined || code === site).map((each) => each.timeZone));
  return zones.size === 1 ? ([...zones][0] ?? '') : '';
}

/** The plan that `text` itself tells; a column with the name of a sensor or its topic is that sensor's. */
export function planFor(
  text: string,
  sensors: readonly Sensor[],
  zone: string,
  separator: string = separatorOf(text),
): TablePlan {
  const rows = rowsOf(text, separator, JUDGED_LINES);
  const header = headerOf(rows);
  const timeColumn = header.find((name) => formatsOf(cellsOf(rows, name)).length > 0) ?? '';
  return {
    separator,
    decimal: decimalOf(rows, separator),
    timeColumn,
    timeFormat: onlyFormat(rows, timeColumn),
    ownFormat: '',
    zone,
    columns: Object.fromEntries(header.map((name) => [name, columnNamed(name, sensors)])),
  };
}

/** `plan` with another time column, and the format that this one has. */
export function withTimeColumn(plan: TablePlan, text: string, timeColumn: string): TablePlan {
  return { ...plan, timeColumn, timeFormat: onlyFormat(rowsOf(text, plan.separator, JUDGED_LINES), timeColumn) };
}

/** `plan` cut at another separator; what was chosen for columns that are still there stays. */
export function withSeparator(plan: TablePlan, text: string, sensors: readonly Sensor[], separator: string): TablePlan {
  const again = planFor(text, sensors, plan.zone, separator);
  const columns = Object.entries(again.columns).map(([name, column]) => [name, plan.columns[name] ?? column] as const);
  return { ...again, columns: Object.fromEntries(columns) };
}

export function withColumn(plan: TablePlan, name: string, change: Partial<ColumnPlan>): TablePlan {
  const column = { ...(plan.columns[name] ?? NOT_TAKEN), ...change };
  const units = unitsOf(column.quantity);
  const unit = change.quantity !== undefined && units.length === 1 ? (units[0] ?? '') : column.unit;
  return { ...plan, columns: { ...plan.columns, [name]: { ...column, unit } } };
}

function onlyFormat(rows: readonly (readonly string[])[], column: string): string {
  const found = formatsOf(cellsOf(rows, column));
  return found.length === 1 ? (found[0] ?? '') : '';
}

function columnNamed(name: string, sensors: readonly Sensor[]): ColumnPlan {
  const wanted = name.toLowerCase();
  const found = sensors.find(({ code, topic }) => code.toLowerCase() === wanted || topic?.toLowerCase() === wanted);
  return found ? { ...NOT_TAKEN, kind: 'sensor', sensor: found.code } : NOT_TAKEN;
}

/** Columns that are to be taken, in the order in which they are sent. */
export function takenColumns(plan: TablePlan): [string, ColumnPlan][] {
  return Object.entries(plan.columns).filter(([name, { kind }]) => kind !== 'none' && name !== plan.timeColumn);
}

/** What to ask of the server; or what is wrong, by the path that the server would name too. */
export function questionOf(
  text: string,
  plan: TablePlan,
): { readonly question: CsvQuestion } | { readonly wrong: ReadonlyMap<string, PlanWrong> } {
  const wrong = new Map<string, PlanWrong>();
  const need = (path: string, value: string) => {
    if (value.trim() === '') wrong.set(path, 'needed');
  };
  if (text.length > LARGEST_BYTES) wrong.set('csv', 'large');
  else if (rowsOf(text, plan.separator, 2).length < 2) wrong.set('csv', 'noTable');
  if (plan.separator === plan.decimal) wrong.set('decimal', 'sameSign');
  need('timeColumn', plan.timeColumn);
  need('timeFormat', plan.timeFormat === OWN_FORMAT ? plan.ownFormat : plan.timeFormat);
  if (plan.timeFormat !== WITH_OFFSET) need('zone', plan.zone);
  const columns = takenColumns(plan);
  if (columns.length === 0) wrong.set('columns', 'noColumn');
  columns.forEach(([, { kind, house, quantity, unit }], i) => {
    if (kind === 'sensor') return;
    need(`columns.${i}.house`, house);
    need(`columns.${i}.quantity`, quantity);
    need(`columns.${i}.unit`, unit);
    if (quantity && unit && !unitsOf(quantity).includes(unit)) wrong.set(`columns.${i}.unit`, 'unit');
  });
  if (wrong.size > 0) return { wrong };
  const pattern = plan.timeFormat === OWN_FORMAT ? plan.ownFormat.trim() : plan.timeFormat;
  const question: CsvQuestion = {
    csv: text,
    separator: plan.separator,
    decimal: plan.decimal,
    timeColumn: plan.timeColumn,
    ...([WITH_OFFSET, ISO_LOCAL].includes(pattern) ? {} : { timeFormat: pattern }),
    ...(plan.timeFormat === WITH_OFFSET ? {} : { zone: plan.zone }),
    columns: columns.map(([column, { kind, sensor, house, quantity, unit }]): CsvColumn =>
      kind === 'sensor' ? { column, sensor } : { column, house, quantity, unit },
    ),
  };
  const bytes = new TextEncoder().encode(JSON.stringify(question)).length;
  return bytes > LARGEST_BYTES ? { wrong: new Map([['csv', 'large']]) } : { question };
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
