import { describe, expect, it } from 'vitest';
import type { BoardCell, BoardRow } from '../shared/api-types';
import { boardToday, cropTotals } from './board-today-state';

const WEEKS = [
  { week: '2026-W48', monday: '2026-11-23' },
  { week: '2026-W49', monday: '2026-11-30' },
];
const cell = (week: string, figures: Partial<BoardCell>): BoardCell => ({
  week,
  date: '2026-11-23',
  ready: 0,
  promised: 0,
  open: 0,
  likely: 0,
  atRisk: 0,
  lessSure: 0,
  ...figures,
});
const row = (crop: string, now: Partial<BoardCell>, next: Partial<BoardCell>): BoardRow => ({
  variety: `${crop}-1`,
  varietyName: crop,
  crop,
  cropName: crop.toUpperCase(),
  trayFormat: '72',
  site: 's',
  faulty: [],
  cells: [cell('2026-W48', now), cell('2026-W49', next)],
});
const ROWS = [
  row('sage', { open: 4, ready: 10, promised: 6 }, { open: 9, atRisk: 2 }),
  row('mint', { open: 1, ready: 3, promised: 5, lessSure: 2 }, { open: 2 }),
  row('sage', { atRisk: 1 }, { open: 20, atRisk: 3 }),
];

describe('the line of today', () => {
  it('tells of the running week what is open and what is ready without a promise', () => {
    // 10 ready and 6 promised leave 4; 3 ready and 5 promised leave none, and take nothing from another row.
    expect(boardToday(ROWS, WEEKS, '2026-W48').thisWeek).toEqual({ open: 5, unpromised: 4, lessSure: 2 });
    expect(boardToday(ROWS, WEEKS, '2026-W47').thisWeek).toBeUndefined();
  });

  it('counts what is at risk in all weeks, and its rows', () => {
    expect(boardToday(ROWS, WEEKS, '2026-W48')).toMatchObject({ atRisk: 6, rowsAtRisk: 2 });
  });
});

it('totals by crop add up rows within each week and never weeks', () => {
  expect(cropTotals(ROWS)).toEqual([
    {
      crop: 'mint',
      name: 'MINT',
      rows: 1,
      weeks: [
        { open: 1, atRisk: 0 },
        { open: 2, atRisk: 0 },
      ],
    },
    {
      crop: 'sage',
      name: 'SAGE',
      rows: 2,
      weeks: [
        { open: 4, atRisk: 1 },
        { open: 29, atRisk: 5 },
      ],
    },
  ]);
});
