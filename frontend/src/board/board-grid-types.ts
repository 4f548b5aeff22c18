import type { BoardCell, BoardRow, BoardWeek, FaultyOfRow } from '../shared/api-types';
import type { CellKey, RowKey } from './board-state';

/** What the board's grid shows. */
export interface GridContent {
  readonly order: readonly RowKey[];
  readonly rows: ReadonlyMap<RowKey, BoardRow>;
  readonly weeks: readonly BoardWeek[];
  readonly changedMs: ReadonlyMap<CellKey, number>;
}

/** How the grid says things and whom it tells; replaced when language, sorting or site names change. */
export interface GridSpeech {
  readonly label: string;
  readonly heads: readonly [variety: string, format: string, site: string];
  week(week: BoardWeek): { readonly short: string; readonly day: string; readonly long: string; readonly now: boolean };
  sortOf(column: number): 'ascending' | 'descending' | 'none';
  /** The site of a row with its ship day. */
  site(row: BoardRow): string;
  count(n: number): string;
  /** How many batches of a row are in none of its figures. */
  faulty(batches: readonly FaultyOfRow[]): string;
  /** The words of one cell for those who hear it. */
  cell(cell: BoardCell): string;
  /** What its mark says; empty where it has none. */
  lessSure(cell: BoardCell): string;
}

export interface GridActions {
  sort(column: number): void;
  openRow(row: BoardRow): void;
  openCell(row: BoardRow, cell: BoardCell): void;
}

/** Columns before the weeks: variety, tray format, site. */
export const FIXED = 3;
