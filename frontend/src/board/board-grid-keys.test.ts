import { describe, expect, it } from 'vitest';
import { placeAfter, within } from './board-grid-keys';

/** Three columns stand before the weeks, so eight weeks end in column 10; ten rows end in row 9; the head is row -1. */
const SIZE = { rows: 10, weeks: 8, page: 4 };
const after = (key: string, row: number, column: number, ctrl = false) => placeAfter(key, ctrl, { row, column }, SIZE);

describe('a key of the grid', () => {
  it.each([
    ['ArrowDown', 3, 5, 4, 5],
    ['ArrowUp', 3, 5, 2, 5],
    ['ArrowLeft', 3, 5, 3, 4],
    ['ArrowRight', 3, 5, 3, 6],
    ['PageDown', 3, 5, 7, 5],
    ['PageUp', 5, 5, 1, 5],
    ['Home', 3, 5, 3, 0],
    ['End', 3, 5, 3, 10],
  ])('%s leads from %d, %d to %d, %d', (key, row, column, toRow, toColumn) => {
    expect(after(key, row, column)).toEqual({ row: toRow, column: toColumn });
  });

  it('leads to the first and the last cell with Ctrl', () => {
    expect(after('Home', 3, 5, true)).toEqual({ row: 0, column: 0 });
    expect(after('End', 3, 5, true)).toEqual({ row: 9, column: 10 });
  });

  it('leads into the head by the arrow alone, and never out of the grid', () => {
    expect(after('ArrowUp', 0, 5)).toEqual({ row: -1, column: 5 });
    expect(after('ArrowUp', -1, 5)).toEqual({ row: -1, column: 5 });
    expect(after('PageUp', 2, 5)).toEqual({ row: 0, column: 5 });
    expect(after('PageDown', 8, 5)).toEqual({ row: 9, column: 5 });
    expect(after('ArrowLeft', 3, 0)).toEqual({ row: 3, column: 0 });
    expect(after('ArrowRight', 3, 10)).toEqual({ row: 3, column: 10 });
  });

  it('of another kind leads nowhere', () => {
    expect(after('a', 3, 5)).toBeUndefined();
  });
});

it('a place that is gone becomes the nearest that there is, in an empty grid the head', () => {
  expect(within({ row: 12, column: 14 }, SIZE)).toEqual({ row: 9, column: 10 });
  expect(within({ row: 3, column: 2 }, { rows: 0, weeks: 0 })).toEqual({ row: -1, column: 2 });
});
