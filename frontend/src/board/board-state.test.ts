import { describe, expect, it } from 'vitest';
import type { BoardBody, BoardCell, BoardRow } from '../shared/api-types';
import {
  applyBoardEvent,
  boardFrom,
  cellKey,
  MARK_MS,
  parseCellKey,
  readyAndPromised,
  rowKey,
  type BoardEvent,
} from './board-state';

const WEEKS = [
  { week: '2026-W48', monday: '2026-11-23' },
  { week: '2026-W49', monday: '2026-11-30' },
];

const cell = (week: string, open: number): BoardCell => ({
  week,
  date: '2026-11-23',
  ready: open,
  promised: 0,
  open,
  likely: open,
  atRisk: 0,
  lessSure: 0,
});

const row = (variety: string, opens: readonly [number, number], more: Partial<BoardRow> = {}): BoardRow => ({
  variety,
  varietyName: variety,
  crop: 'salvia',
  cropName: 'Salvia',
  trayFormat: '72',
  site: 'north',
  faulty: [],
  cells: [cell('2026-W48', opens[0]), cell('2026-W49', opens[1])],
  ...more,
});

const body = (rows: readonly BoardRow[], position = 10): BoardBody => ({
  asOf: '2026-11-25T09:00:00Z',
  position,
  confidence: 0.9,
  weeks: WEEKS,
  rows,
});

const changed = (position: number, ...rows: BoardRow[]): BoardEvent => ({
  kind: 'board',
  position,
  asOf: '2026-11-25T09:01:00Z',
  rows,
});

describe('the board', () => {
  const before = boardFrom(body([row('a', [5, 6]), row('b', [1, 2])]));

  it('takes a changed row and marks only the cells whose figures differ', () => {
    const after = applyBoardEvent(before, changed(11, row('a', [5, 4])), {}, 1000);

    expect(after.rows.get(rowKey(row('a', [0, 0])))?.cells.map((each) => each.open)).toEqual([5, 4]);
    expect([...after.changedMs.keys()]).toEqual([cellKey(rowKey(row('a', [0, 0])), '2026-W49')]);
    expect(after.position).toBe(11);
  });

  it('keeps its rows when an event is heard twice', () => {
    const once = applyBoardEvent(before, changed(11, row('a', [5, 4])), {}, 1000);
    const twice = applyBoardEvent(once, changed(11, row('a', [5, 4])), {}, 2000);

    expect(twice.rows).toBe(once.rows);
    expect(twice.changedMs).toBe(once.changedMs);
  });

  it('takes in that a batch of a row can no longer be computed, though no figure changes', () => {
    const faulty = [{ batch: 'B7', fault: 'no such variety' }];
    const after = applyBoardEvent(before, changed(11, row('a', [5, 6], { faulty })), {}, 1000);
    expect(after.rows.get(rowKey(row('a', [0, 0])))?.faulty).toEqual(faulty);
  });

  it('ignores what lies behind it', () => {
    expect(applyBoardEvent(before, changed(9, row('a', [99, 99])), {}, 0)).toBe(before);
  });

  it('ignores rows of another site or crop than was asked for', () => {
    const elsewhere = changed(11, row('c', [1, 1], { site: 'quay' }), row('d', [1, 1], { crop: 'petunia' }));
    expect(applyBoardEvent(before, elsewhere, { site: 'north', crop: 'salvia' }, 0).rows).toBe(before.rows);
  });

  it('ignores rows that speak of other weeks', () => {
    const other = row('a', [0, 0], { cells: [cell('2026-W50', 7), cell('2026-W51', 7)] });
    expect(applyBoardEvent(before, changed(11, other), {}, 0).rows).toBe(before.rows);
  });

  it('drops marks that have faded with the next change', () => {
    const once = applyBoardEvent(before, changed(11, row('a', [5, 4])), {}, 1000);
    const later = applyBoardEvent(once, changed(12, row('b', [1, 3])), {}, 1000 + MARK_MS);

    expect([...later.changedMs.keys()]).toEqual([cellKey(rowKey(row('b', [0, 0])), '2026-W49')]);
  });

  it('lets a removed row go, and an unknown one without a word', () => {
    const gone = applyBoardEvent(
      before,
      { kind: 'removed', position: 12, rows: [row('a', [0, 0]), row('zz', [0, 0])] },
      {},
      0,
    );
    expect([...gone.rows.keys()]).toEqual([rowKey(row('b', [0, 0]))]);
  });

  it('begins anew with a snapshot, even one behind it, within what was asked for', () => {
    const snapshot: BoardEvent = {
      kind: 'snapshot',
      ...body([row('n', [1, 1]), row('q', [2, 2], { site: 'quay' })], 3),
    };
    const after = applyBoardEvent(before, snapshot, { site: 'north' }, 0);

    expect(after.position).toBe(3);
    expect([...after.rows.values()].map((each) => each.variety)).toEqual(['n']);
  });
});

describe('the address of a cell', () => {
  it('names item and week', () => {
    const key = cellKey(rowKey(row('salvia-1.b', [0, 0])), '2026-W48');
    expect(parseCellKey(key)).toEqual({ variety: 'salvia-1.b', trayFormat: '72', site: 'north', week: '2026-W48' });
  });

  it.each(['', 'a~b~c', 'a~b~c~d~e'])('"%s" names none', (text) => {
    expect(parseCellKey(text)).toBeUndefined();
  });
});

it('marks promised trays that rest on lower odds than the board’s: 0 / 2 would not add up', () => {
  const of = (more: Partial<BoardCell>) => readyAndPromised({ ...cell('2026-W48', 0), ...more }, String);
  expect(of({ ready: 0, promised: 2, lessSure: 2 })).toBe('0 / ~2');
  expect(of({ ready: 9, promised: 8, lessSure: 1 })).toBe('9 / ~8');
  expect(of({ ready: 20, promised: 8 })).toBe('20 / 8');
  expect(of({})).toBe('');
});
