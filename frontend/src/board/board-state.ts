import type {
  BoardBody,
  BoardCell,
  BoardKey,
  BoardRow,
  BoardWeek,
  Instant,
  LiveEvents,
  Position,
} from '../shared/api-types';

/**
 * What the open board shows. A load begins it, every live event carries it on, and an event heard twice changes
 * nothing: rows are always sent whole.
 */
export interface BoardState {
  readonly asOf: Instant;
  readonly position: Position;
  readonly confidence: number;
  readonly weeks: readonly BoardWeek[];
  readonly rows: ReadonlyMap<RowKey, BoardRow>;
  /** Cells that changed under the reader's eyes, and when (ms); older ones are dropped with the next change. */
  readonly changedMs: ReadonlyMap<CellKey, number>;
  /** The load this state grew from; another one means that the stream must follow from its position. */
  readonly loaded: object;
}

/** The part of all rows that was asked for. */
export interface BoardScope {
  readonly site?: string | undefined;
  readonly crop?: string | undefined;
}

export type RowKey = string & { readonly __brand: 'RowKey' };
export type CellKey = string & { readonly __brand: 'CellKey' };

export type BoardEvent =
  | ({ readonly kind: 'board' } & LiveEvents['board'])
  | ({ readonly kind: 'removed' } & LiveEvents['removed'])
  | ({ readonly kind: 'snapshot' } & LiveEvents['snapshot']);

/** How long a changed cell stays marked, ms; the theme's --rc-mark-ms. */
export const MARK_MS = 2_600;

// Codes hold neither blanks nor tildes, so the joined key is unambiguous.
export function rowKey({ variety, trayFormat, site }: BoardKey): RowKey {
  return `${variety}~${trayFormat}~${site}` as RowKey;
}

export function cellKey(row: RowKey, week: string): CellKey {
  return `${row}~${week}` as CellKey;
}

/** The item and week a `cell=` address names, or undefined when it names none. */
export function parseCellKey(text: string): (BoardKey & { readonly week: string }) | undefined {
  const [variety, trayFormat, site, week, ...more] = text.split('~');
  return variety && trayFormat && site && week && more.length === 0 ? { variety, trayFormat, site, week } : undefined;
}

export function boardFrom(body: BoardBody): BoardState {
  return {
    asOf: body.asOf,
    position: body.position,
    confidence: body.confidence,
    weeks: body.weeks,
    rows: new Map(body.rows.map((row) => [rowKey(row), row])),
    changedMs: new Map(),
    loaded: body,
  };
}

/** The board after `event`, which was heard at `heardMs`. */
export function applyBoardEvent(state: BoardState, event: BoardEvent, scope: BoardScope, heardMs: number): BoardState {
  switch (event.kind) {
    case 'snapshot':
      return {
        ...boardFrom({ ...event, rows: event.rows.filter((row) => inScope(row, scope)) }),
        loaded: state.loaded,
      };
    case 'board': {
      if (event.position < state.position) return state;
      const news = event.rows.filter((row) => inScope(row, scope) && coversSameWeeks(row, state.weeks));
      const changed = news.flatMap((row) => changedCells(state.rows.get(rowKey(row)), row));
      const rows = new Map(state.rows);
      for (const row of news) rows.set(rowKey(row), row);
      const same =
        changed.length === 0 &&
        rows.size === state.rows.size &&
        news.every((row) => sameFaulty(state.rows.get(rowKey(row)), row));
      return {
        ...state,
        asOf: event.asOf,
        position: event.position,
        rows: same ? state.rows : rows,
        changedMs: same ? state.changedMs : marked(state.changedMs, changed, heardMs),
      };
    }
    case 'removed': {
      if (event.position < state.position) return state;
      const gone = event.rows.map(rowKey).filter((key) => state.rows.has(key));
      if (gone.length === 0) return { ...state, position: event.position };
      const rows = new Map(state.rows);
      for (const key of gone) rows.delete(key);
      return { ...state, position: event.position, rows };
    }
  }
}

function inScope(row: BoardRow, { site, crop }: BoardScope): boolean {
  return (site === undefined || row.site === site) && (crop === undefined || row.crop === crop);
}

/** An event of the window shown before may still arrive after the reader has gone to other weeks. */
function coversSameWeeks(row: BoardRow, weeks: readonly BoardWeek[]): boolean {
  return row.cells.length === weeks.length && row.cells[0]?.week === weeks[0]?.week;
}

function changedCells(before: BoardRow | undefined, after: BoardRow): CellKey[] {
  const key = rowKey(after);
  return after.cells
    .filter((cell, i) => {
      const old = before?.cells[i];
      return !old || FIGURES.some((figure) => old[figure] !== cell[figure]);
    })
    .map((cell) => cellKey(key, cell.week));
}

function sameFaulty(before: BoardRow | undefined, after: BoardRow): boolean {
  const said = (row: BoardRow | undefined) => row?.faulty.map(({ batch }) => batch).join('\n');
  return said(before) === said(after);
}

export const FIGURES = [
  'open',
  'likely',
  'ready',
  'promised',
  'atRisk',
] as const satisfies readonly (keyof BoardCell)[];
export type Figure = (typeof FIGURES)[number];

function marked(
  before: ReadonlyMap<CellKey, number>,
  changed: readonly CellKey[],
  nowMs: number,
): ReadonlyMap<CellKey, number> {
  const marks = new Map([...before].filter(([, atMs]) => nowMs - atMs < MARK_MS));
  for (const key of changed) marks.set(key, nowMs);
  return marks;
}

/**
 * `20 / 8`; of promises made at lower odds than the board's `20 / ~8`, as the likely figure has its mark: those trays need
 * not be among the ready ones, and the pair would else not add up.
 */
export function readyAndPromised({ ready, promised, lessSure }: BoardCell, count: (n: number) => string): string {
  return ready === 0 && promised === 0 ? '' : `${count(ready)} / ${lessSure > 0 ? '~' : ''}${count(promised)}`;
}

/** Nothing there and nothing expected: drawn as a quiet dash. */
export function isBlank(cell: BoardCell): boolean {
  return FIGURES.every((figure) => cell[figure] === 0);
}
