import { FIXED } from './board-grid-types';

/** A place in the grid: row -1 is the head. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

export interface GridSize {
  readonly rows: number;
  readonly weeks: number;
  /** Rows that Page Up and Page Down pass over. */
  readonly page: number;
}

/** Where a key leads in the grid; undefined for a key that leads nowhere. Source: WAI-ARIA Authoring Practices, grid. */
export function placeAfter(key: string, ctrl: boolean, at: GridPlace, size: GridSize): GridPlace | undefined {
  const place = wantedBy(key, ctrl, at, size);
  return place && within(place, size);
}

function wantedBy(key: string, ctrl: boolean, { row, column }: GridPlace, size: GridSize): GridPlace | undefined {
  const lastColumn = size.weeks + FIXED - 1;
  switch (key) {
    case 'ArrowDown':
      return { row: row + 1, column };
    case 'ArrowUp':
      return { row: row - 1, column };
    case 'ArrowRight':
      return { row, column: column + 1 };
    case 'ArrowLeft':
      return { row, column: column - 1 };
    case 'PageDown':
      return { row: row + size.page, column };
    case 'PageUp':
      return { row: Math.max(0, row - size.page), column };
    case 'Home':
      return { row: ctrl ? 0 : row, column: 0 };
    case 'End':
      return { row: ctrl ? size.rows - 1 : row, column: lastColumn };
    default:
      return undefined;
  }
}

/** The nearest place that there is. */
export function within({ row, column }: GridPlace, { rows, weeks }: Pick<GridSize, 'rows' | 'weeks'>): GridPlace {
  return {
    row: Math.max(-1, Math.min(rows - 1, row)),
    column: Math.max(0, Math.min(weeks + FIXED - 1, column)),
  };
}
