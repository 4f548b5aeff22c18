import type { BatchStage, BatchView } from '../shared/api-types';
import type { BatchListQuery } from '../shared/batch-list-state';
import { found } from '../shared/loose-words';
import { dateIn } from '../shared/weeks';

/** Which batches the list shows and in which order; all of it is in the address. */

export const COLUMNS = [
  'variety',
  'id',
  'site',
  'house',
  'stage',
  'stuck',
  'trays',
  'alive',
  'lost',
  'ready',
  'saleable',
] as const;
export type Column = (typeof COLUMNS)[number];

export const STAGES: readonly BatchStage[] = ['STICK', 'CALLUS', 'ROOT', 'READY', 'SHIP'];
const WHICH = ['live', 'finished', 'all'] as const;
export type Which = (typeof WHICH)[number];

export interface Sort {
  readonly column: Column;
  readonly descending: boolean;
}

export interface BatchFilter {
  readonly site: string | undefined;
  readonly house: string | undefined;
  readonly crop: string | undefined;
  readonly stage: BatchStage | undefined;
  readonly text: string;
  readonly state: Which;
  readonly sort: Sort;
}

const USUAL_SORT: Sort = { column: 'ready', descending: false };

/** What the address says; a word it does not know counts as not said. */
export function filterIn(params: URLSearchParams): BatchFilter {
  const said = (name: string) => params.get(name) ?? undefined;
  const sort = params.get('sort') ?? '';
  const column = COLUMNS.find((each) => each === sort.replace(/^-/, ''));
  return {
    site: said('site'),
    house: said('house'),
    crop: said('crop'),
    stage: STAGES.find((each) => each === params.get('stage')),
    text: params.get('text') ?? '',
    state: WHICH.find((each) => each === params.get('state')) ?? 'live',
    sort: column ? { column, descending: sort.startsWith('-') } : USUAL_SORT,
  };
}

/** The address with the filter in it; what is usual is left out. Words of other screens stay. */
export function withFilter(before: URLSearchParams, filter: BatchFilter): URLSearchParams {
  const after = new URLSearchParams(before);
  const put = (name: string, value: string | undefined) => {
    if (value === undefined || value === '') after.delete(name);
    else after.set(name, value);
  };
  put('site', filter.site);
  put('house', filter.house);
  put('crop', filter.crop);
  put('stage', filter.stage);
  put('text', filter.text);
  put('state', filter.state === 'live' ? undefined : filter.state);
  const { column, descending } = filter.sort;
  const usual = column === USUAL_SORT.column && descending === USUAL_SORT.descending;
  put('sort', usual ? undefined : `${descending ? '-' : ''}${column}`);
  return after;
}

/** What the server is asked; text is looked for here, so that typing costs no request. */
export function queryOf({ site, house, crop, stage, state }: BatchFilter): BatchListQuery {
  return { site, house, crop, stage, state };
}

/** The same column again turns the order round; a new one begins with what is usually wanted first. */
export function sortedBy(column: Column, now: Sort): Sort {
  if (now.column === column) return { column, descending: !now.descending };
  return { column, descending: column === 'lost' || column === 'alive' || column === 'trays' || column === 'saleable' };
}

export interface Names {
  readonly house: (code: string) => string;
  readonly site: (code: string) => string;
}

export function shownBatches(
  batches: readonly BatchView[],
  filter: Pick<BatchFilter, 'text' | 'sort'>,
  names: Names,
): readonly BatchView[] {
  const matching = found(batches, filter.text, (batch) =>
    [batch.id, batch.variety, batch.varietyName, batch.cropName, batch.house, names.house(batch.house)].join(' '),
  );
  return [...matching].sort(orderBy(filter.sort, names));
}

export function lostFraction({ plants }: Pick<BatchView, 'plants'>): number {
  return plants.stuck === 0 ? 0 : plants.lost / plants.stuck;
}

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

function orderBy({ column, descending }: Sort, names: Names): (a: BatchView, b: BatchView) => number {
  const turn = descending ? -1 : 1;
  return (a, b) => {
    const x = sortValue(a, column, names);
    const y = sortValue(b, column, names);
    // What is not known stands last, whichever way the column is turned.
    if (x === undefined || y === undefined) {
      if (x !== y) return x === undefined ? 1 : -1;
    } else {
      const difference =
        typeof x === 'number' && typeof y === 'number' ? x - y : collator.compare(String(x), String(y));
      if (difference !== 0) return turn * difference;
    }
    return collator.compare(a.varietyName, b.varietyName) || collator.compare(a.id, b.id);
  };
}

function sortValue(batch: BatchView, column: Column, names: Names): string | number | undefined {
  switch (column) {
    case 'variety':
      return batch.varietyName;
    case 'id':
      return batch.id;
    case 'site':
      return names.site(batch.site);
    case 'house':
      return names.house(batch.house);
    case 'stage':
      return STAGES.indexOf(batch.stage);
    case 'stuck':
      return Date.parse(batch.stuckAt);
    case 'trays':
      return batch.trays;
    case 'alive':
      return batch.plants.alive;
    case 'lost':
      return lostFraction(batch);
    case 'ready':
      return batch.outlook?.readyAt.p50 ? Date.parse(batch.outlook.readyAt.p50) : undefined;
    case 'saleable':
      return batch.outlook?.saleableTrays.p50;
  }
}

// --- The keyboard ------------------------------------------------------------------------------------------------

export interface Place {
  readonly row: number;
  readonly column: number;
}

/** Where a key leads in a grid of `rows` rows; undefined when the key means nothing there. */
export function placeAfter(
  key: string,
  ctrl: boolean,
  place: Place,
  rows: number,
  pageRows: number,
): Place | undefined {
  const lastRow = Math.max(0, rows - 1);
  const lastColumn = COLUMNS.length - 1;
  const at = (row: number, column: number): Place => ({
    row: Math.min(lastRow, Math.max(0, row)),
    column: Math.min(lastColumn, Math.max(0, column)),
  });
  const { row, column } = place;
  switch (key) {
    case 'ArrowDown':
      return at(row + 1, column);
    case 'ArrowUp':
      return at(row - 1, column);
    case 'ArrowRight':
      return at(row, column + 1);
    case 'ArrowLeft':
      return at(row, column - 1);
    case 'PageDown':
      return at(row + pageRows, column);
    case 'PageUp':
      return at(row - pageRows, column);
    case 'Home':
      return ctrl ? at(0, 0) : at(row, 0);
    case 'End':
      return ctrl ? at(lastRow, lastColumn) : at(row, lastColumn);
    default:
      return undefined;
  }
}

/** The part of a batch's page that says what a figure is made of. */
export function anchorOf(column: Column): string {
  if (column === 'ready' || column === 'saleable') return '#outlook';
  if (column === 'lost') return '#losses';
  if (column === 'variety' || column === 'id' || column === 'site') return '';
  return '#story';
}

// --- Taking it away ------------------------------------------------------------------------------------------------

/** One row of plain values per batch: dates of the site's calendar, numbers without marks, shares as fractions. */
export function takenRow(
  batch: BatchView,
  names: Names,
  zoneOf: (site: string) => string | undefined,
  plantsIn: (trayFormat: string) => number | undefined,
  stageOf: (batch: BatchView) => string,
) {
  const zone = zoneOf(batch.site);
  const day = (instant: string | null | undefined) => (!instant ? '' : dateIn(zone, Date.parse(instant)));
  const { outlook, plants } = batch;
  return [
    batch.varietyName,
    batch.cropName,
    batch.id,
    names.site(batch.site),
    names.house(batch.house),
    batch.trayFormat,
    plantsIn(batch.trayFormat) ?? '',
    stageOf(batch),
    day(batch.stuckAt),
    batch.trays,
    plants.stuck,
    plants.alive,
    plants.lost,
    plants.shipped,
    day(outlook?.readyAt.p10),
    day(outlook?.readyAt.p50),
    day(outlook?.readyAt.p90),
    outlook?.saleableTrays.p10 ?? '',
    outlook?.saleableTrays.p50 ?? '',
    outlook?.saleableTrays.p90 ?? '',
  ] as const;
}
