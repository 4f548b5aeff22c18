import { describe, expect, it } from 'vitest';
import type { BoardRow } from '../shared/api-types';
import { boardFrom, rowKey } from './board-state';
import {
  confidenceTyped,
  filterFrom,
  keptOrder,
  orderedKeys,
  paramsFor,
  sortedBy,
  weekTyped,
} from './board-filter-state';

const row = (varietyName: string, trayFormat: string, open: number): BoardRow => ({
  variety: varietyName.toLowerCase().replaceAll(' ', '-'),
  varietyName,
  crop: 'c',
  cropName: 'Crop',
  trayFormat,
  site: 's',
  faulty: [],
  cells: [
    { week: '2026-W48', date: '2026-11-23', ready: open, promised: 0, open, likely: open, atRisk: 0, lessSure: 0 },
  ],
});

const state = (rows: readonly BoardRow[]) =>
  boardFrom({ asOf: '', position: 1, confidence: 0.9, weeks: [{ week: '2026-W48', monday: '2026-11-23' }], rows });

const names = (rows: readonly BoardRow[], query: string) => {
  const board = state(rows);
  return orderedKeys(board, filterFrom(new URLSearchParams(query))).map((key) => {
    const found = board.rows.get(key);
    return `${found?.varietyName} ${found?.trayFormat}`;
  });
};

describe('the filter in the address', () => {
  it.each([
    '',
    'site=north&crop=salvia&text=blue+hour&from=2026-W50&weeks=10&confidence=0.95&sort=-2026-W51&open=yes',
    'confidence=0.975&sort=site',
    'least=40&risk=yes&totals=yes&since=yes',
  ])('"%s" comes back the same', (query) => {
    expect(paramsFor(filterFrom(new URLSearchParams(query)), new URLSearchParams()).toString()).toBe(query);
  });

  it('keeps the open cell that is not its own', () => {
    const before = new URLSearchParams('cell=a~b~c~2026-W48&text=x');
    expect(paramsFor({ ...filterFrom(before), text: '' }, before).toString()).toBe('cell=a%7Eb%7Ec%7E2026-W48');
  });

  it('shows the default where the address holds nonsense', () => {
    const filter = filterFrom(new URLSearchParams('from=2025-W53&weeks=-1&confidence=2&sort=colour'));
    expect(filter).toEqual(filterFrom(new URLSearchParams()));
  });
});

describe('the rows shown', () => {
  const risky = { ...row('Verbena', '72', 12) };
  const rows = [
    row('Salvia', '128', 3),
    row('Petunia', '72', 40),
    { ...risky, cells: risky.cells.map((cell) => ({ ...cell, atRisk: 2 })) },
  ];

  it('have at least so many trays open in some week', () => {
    expect(names(rows, 'least=12')).toEqual(['Petunia 72', 'Verbena 72']);
    expect(names(rows, 'least=41')).toEqual([]);
  });

  it('are those at risk', () => {
    expect(names(rows, 'risk=yes')).toEqual(['Verbena 72']);
  });

  it('are found through a small slip and by several words', () => {
    expect(names(rows, 'text=petnuia+72')).toEqual(['Petunia 72']);
  });
});

describe('the order of the rows', () => {
  const rows = [row('Salvia b', '128', 3), row('Álamo', '72', 3), row('Salvia b', '72', 9), row('Salvia a', '105', 0)];

  it('goes by name and then by tray as a number', () => {
    expect(names(rows, '')).toEqual(['Álamo 72', 'Salvia a 105', 'Salvia b 72', 'Salvia b 128']);
  });

  it('goes by what is open in a week, ties by name', () => {
    expect(names(rows, 'sort=-2026-W48')).toEqual(['Salvia b 72', 'Álamo 72', 'Salvia b 128', 'Salvia a 105']);
  });

  it('finds words in any order, without accents and case', () => {
    expect(names(rows, 'text=128+SALVIA')).toEqual(['Salvia b 128']);
    expect(names(rows, 'text=alamo')).toEqual(['Álamo 72']);
  });

  it('can leave out what is not open', () => {
    expect(names(rows, 'open=yes')).not.toContain('Salvia a 105');
  });

  it('turns round on the second press, and shows the most open first for a week', () => {
    expect(sortedBy({ by: 'variety', descending: false }, 'variety')).toEqual({ by: 'variety', descending: true });
    expect(sortedBy({ by: 'variety', descending: false }, '2026-W48')).toEqual({ by: '2026-W48', descending: true });
  });

  it('stays as it is when figures change, and puts what is new last', () => {
    const [a, b, c] = [row('a', '1', 0), row('b', '1', 0), row('c', '1', 0)].map(rowKey) as [never, never, never];
    const before = [b, a];
    expect(keptOrder(before, [a, b])).toBe(before);
    expect(keptOrder(before, [a, b, c])).toEqual([b, a, c]);
    expect(keptOrder(before, [a])).toEqual([a]);
  });
});

describe('what is typed', () => {
  it.each([
    ['2026-W49', '2026-W49'],
    ['w49', '2026-W49'],
    ['49', '2026-W49'],
    ['48', '2026-W48'],
    ['2', '2027-W02'],
    ['2027-01-01', '2026-W53'],
  ])('"%s" in week 48 of 2026 means %s', (text, week) => {
    expect(weekTyped(text, '2026-W48')).toBe(week);
  });

  it.each(['', '0', '54', 'next', '2026-13-01'])('"%s" is no week', (text) => {
    expect(weekTyped(text, '2026-W48')).toBeUndefined();
  });

  it.each([
    ['90', 0.9],
    ['90 %', 0.9],
    ['0.9', 0.9],
    ['0,95', 0.95],
    ['97.5%', 0.975],
  ])('"%s" is a confidence of %d', (text, value) => {
    expect(confidenceTyped(text)).toBe(value);
  });

  it.each(['0', '100', '-5', '101 %', 'sure', ''])('"%s" is no confidence', (text) => {
    expect(confidenceTyped(text)).toBeUndefined();
  });
});
