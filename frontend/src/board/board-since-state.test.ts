import { describe, expect, it } from 'vitest';
import type { BoardRow } from '../shared/api-types';
import { changesSince } from './board-since-state';

const row = (
  variety: string,
  cells: readonly (readonly [week: string, open: number, promised: number, atRisk: number])[],
): BoardRow => ({
  variety,
  varietyName: variety,
  crop: 'c',
  cropName: 'c',
  trayFormat: '72',
  site: 's',
  faulty: [],
  cells: cells.map(([week, open, promised, atRisk]) => ({
    week,
    date: '2026-11-30',
    ready: open,
    promised,
    open,
    likely: open,
    atRisk,
    lessSure: 0,
  })),
});
const told = (then: readonly BoardRow[], now: readonly BoardRow[], current = '2026-W49') =>
  changesSince(then, now, current).map(({ row: { variety }, week, before, after }) => [
    variety,
    week,
    `${before.open}→${after.open}`,
    `${before.promised}→${after.promised}`,
    `${before.atRisk}→${after.atRisk}`,
  ]);

describe('what changed since', () => {
  it('is dated by the ship day of the row’s site, also where the row has gone', () => {
    const then = [row('gone', [['2026-W49', 4, 0, 0]])];
    expect(changesSince(then, [], '2026-W49').map(({ date }) => date)).toEqual(['2026-11-30']);
    const [came] = [row('came', [['2026-W49', 4, 0, 0]])].map((each) => ({
      ...each,
      cells: each.cells.map((cell) => ({ ...cell, date: '2026-12-03' })),
    }));
    expect(changesSince([], came ? [came] : [], '2026-W49').map(({ date }) => date)).toEqual(['2026-12-03']);
  });

  it('is one list, more at risk first, then by how much open changed', () => {
    const then = [
      row('a', [['2026-W49', 10, 0, 0]]),
      row('b', [['2026-W49', 10, 5, 0]]),
      row('same', [['2026-W49', 3, 1, 0]]),
    ];
    const now = [
      row('a', [['2026-W49', 2, 8, 0]]),
      row('b', [['2026-W49', 9, 5, 2]]),
      row('same', [['2026-W49', 3, 1, 0]]),
    ];
    expect(told(then, now)).toEqual([
      ['b', '2026-W49', '10→9', '5→5', '0→2'],
      ['a', '2026-W49', '10→2', '0→8', '0→0'],
    ]);
  });

  it('tells rows that came and rows that went', () => {
    expect(told([row('went', [['2026-W50', 4, 0, 0]])], [row('came', [['2026-W50', 7, 0, 0]])])).toEqual([
      ['came', '2026-W50', '0→7', '0→0', '0→0'],
      ['went', '2026-W50', '4→0', '0→0', '0→0'],
    ]);
  });

  it('leaves out weeks that are over, and those that only one of the two shows', () => {
    const then = [
      row('a', [
        ['2026-W48', 9, 0, 0],
        ['2026-W49', 1, 0, 0],
      ]),
    ];
    const now = [
      row('a', [
        ['2026-W49', 1, 0, 0],
        ['2026-W50', 5, 0, 0],
      ]),
    ];
    expect(told(then, now)).toEqual([]);
  });
});
