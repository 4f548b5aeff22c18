import type { BoardRow, IsoWeek } from '../shared/api-types';
import { rowKey, type BoardState, type RowKey } from './board-state';
import { isDate, isWeek, plusWeeks, weekNumber, weekOf } from '../shared/weeks';
import { found } from '../shared/loose-words';
import { numberTyped } from '../shared/units';

/** What the reader narrowed the board to. All of it lives in the address; what is left out there is the default. */
export interface BoardFilter {
  readonly site: string | undefined;
  readonly crop: string | undefined;
  readonly text: string;
  /** Undefined: from the current week on. */
  readonly from: IsoWeek | undefined;
  readonly weeks: number;
  readonly confidence: number;
  readonly sort: Sort;
  /** Rows with nothing open are hidden. */
  readonly openOnly: boolean;
  /** Only rows that in some week have so many trays open; undefined: any. */
  readonly atLeast: number | undefined;
  /** Only rows with promised trays at risk. */
  readonly riskOnly: boolean;
  /** Sums by crop in place of the rows. */
  readonly totals: boolean;
  /** While looking back: what changed since, in place of the rows. */
  readonly since: boolean;
}

export interface Sort {
  /** A week sorts by what is open in it. */
  readonly by: 'variety' | 'format' | 'site' | IsoWeek;
  readonly descending: boolean;
}

export const DEFAULT_WEEKS = 8;
export const MOST_WEEKS = 52;
export const DEFAULT_CONFIDENCE = 0.9;
const BY_NAME: Sort = { by: 'variety', descending: false };

export function filterFrom(params: URLSearchParams): BoardFilter {
  const from = params.get('from') ?? '';
  const weeks = Number(params.get('weeks'));
  const confidence = Number(params.get('confidence'));
  const least = Number(params.get('least'));
  return {
    site: params.get('site') || undefined,
    crop: params.get('crop') || undefined,
    text: params.get('text') ?? '',
    from: isWeek(from) ? from : undefined,
    weeks: Number.isInteger(weeks) && weeks >= 1 && weeks <= MOST_WEEKS ? weeks : DEFAULT_WEEKS,
    confidence: confidence > 0 && confidence < 1 ? confidence : DEFAULT_CONFIDENCE,
    sort: sortFrom(params.get('sort')),
    openOnly: params.get('open') === 'yes',
    atLeast: Number.isInteger(least) && least >= 1 ? least : undefined,
    riskOnly: params.get('risk') === 'yes',
    totals: params.get('totals') === 'yes',
    since: params.get('since') === 'yes',
  };
}

/** The address of `filter`; other parameters in `before` (an open cell) are kept. */
export function paramsFor(filter: BoardFilter, before: URLSearchParams): URLSearchParams {
  const params = new URLSearchParams(before);
  const put = (name: string, value: string | undefined) => (value ? params.set(name, value) : params.delete(name));
  put('site', filter.site);
  put('crop', filter.crop);
  put('text', filter.text);
  put('from', filter.from);
  put('weeks', filter.weeks === DEFAULT_WEEKS ? undefined : String(filter.weeks));
  put('confidence', filter.confidence === DEFAULT_CONFIDENCE ? undefined : String(filter.confidence));
  const { by, descending } = filter.sort;
  put('sort', by === BY_NAME.by && !descending ? undefined : (descending ? '-' : '') + by);
  put('open', filter.openOnly ? 'yes' : undefined);
  put('least', filter.atLeast === undefined ? undefined : String(filter.atLeast));
  put('risk', filter.riskOnly ? 'yes' : undefined);
  put('totals', filter.totals ? 'yes' : undefined);
  put('since', filter.since ? 'yes' : undefined);
  return params;
}

function sortFrom(text: string | null): Sort {
  const descending = text?.startsWith('-') ?? false;
  const by = descending ? text?.slice(1) : text;
  return by && (by === 'variety' || by === 'format' || by === 'site' || isWeek(by)) ? { by, descending } : BY_NAME;
}

/** Clicking a header: the other way round when it sorts already, else that column (weeks: most open first). */
export function sortedBy(now: Sort, by: Sort['by']): Sort {
  return now.by === by ? { by, descending: !now.descending } : { by, descending: isWeek(by) };
}

/** The keys of the rows to show, in order. Ties keep the order by name, so that equal rows never swap. */
export function orderedKeys(
  state: BoardState,
  filter: Pick<BoardFilter, 'text' | 'sort' | 'openOnly' | 'atLeast' | 'riskOnly'>,
): readonly RowKey[] {
  const least = Math.max(filter.atLeast ?? 0, filter.openOnly ? 1 : 0);
  const rows = [...found([...state.rows.values()], filter.text, wordsFor)].filter(
    ({ cells }) =>
      (least === 0 || cells.some(({ open }) => open >= least)) &&
      (!filter.riskOnly || cells.some(({ atRisk }) => atRisk > 0)),
  );
  const column = state.weeks.findIndex(({ week }) => week === filter.sort.by);
  const sign = filter.sort.descending ? -1 : 1;
  const compare = (a: BoardRow, b: BoardRow): number => {
    switch (filter.sort.by) {
      case 'variety':
        return byName(a, b);
      case 'format':
        return numeric.compare(a.trayFormat, b.trayFormat);
      case 'site':
        return numeric.compare(a.site, b.site);
      default:
        return (a.cells[column]?.open ?? 0) - (b.cells[column]?.open ?? 0);
    }
  };
  return rows.sort((a, b) => sign * compare(a, b) || byName(a, b)).map(rowKey);
}

/**
 * The order after a live change: what stays keeps its place, what is new comes last until the reader sorts again.
 * A row that moved by itself would be read wrong.
 */
export function keptOrder(before: readonly RowKey[], wanted: readonly RowKey[]): readonly RowKey[] {
  const now = new Set(wanted);
  const kept = before.filter((key) => now.has(key));
  const known = new Set(before);
  const added = wanted.filter((key) => !known.has(key));
  return kept.length === before.length && added.length === 0 ? before : [...kept, ...added];
}

const numeric = new Intl.Collator(undefined, { numeric: true });
const byName = (a: BoardRow, b: BoardRow): number =>
  numeric.compare(a.varietyName, b.varietyName) ||
  numeric.compare(a.variety, b.variety) ||
  numeric.compare(a.trayFormat, b.trayFormat) ||
  numeric.compare(a.site, b.site);

/** What a row is found by. */
export function wordsFor(row: BoardRow): string {
  return `${row.varietyName} ${row.variety} ${row.cropName} ${row.trayFormat} ${row.site}`;
}

/**
 * A week as people type it: `2026-W49`, a date in it, or the bare number (`49`, `W49`), meaning the next such week from
 * `current` on, that one included. Undefined when it is none of these.
 */
export function weekTyped(text: string, current: IsoWeek): IsoWeek | undefined {
  const plain = text.trim().toUpperCase();
  if (isWeek(plain)) return plain;
  if (isDate(plain)) return weekOf(plain);
  const wanted = /^W?\s?(\d{1,2})$/.exec(plain)?.[1];
  if (wanted === undefined) return undefined;
  for (let ahead = 0; ahead < 60; ahead++) {
    const week = plusWeeks(current, ahead);
    if (weekNumber(week) === Number(wanted)) return week;
  }
  return undefined;
}

/** A confidence as people type it: `92`, `92 %` or `0.92`. Undefined outside of 0 to 100 %, ends excluded. */
export function confidenceTyped(text: string): number | undefined {
  const value = numberTyped(text.replace('%', ''));
  if (value === undefined) return undefined;
  const fraction = text.includes('%') || value >= 1 ? value / 100 : value;
  return fraction > 0 && fraction < 1 ? Number(fraction.toFixed(6)) : undefined;
}

/** Trays as people type them into a filter: nothing is any (0); undefined where it is no whole number. */
export function traysTyped(text: string): number | undefined {
  if (text.trim() === '') return 0;
  const value = numberTyped(text);
  return value !== undefined && Number.isInteger(value) && value >= 0 ? value : undefined;
}
