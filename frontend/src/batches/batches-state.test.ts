import { describe, expect, test } from 'vitest';
import type { BatchView, EntryView } from '../shared/api-types';
import { clockTyped } from '../shared/as-of-state';
import { belongs, happenedBy, patched } from '../shared/batch-list-state';
import { windowAt } from '../shared/windowed-rows';
import { instantOf, wallClock } from '../shared/zoned-time';
import {
  anchorOf,
  COLUMNS,
  filterIn,
  placeAfter,
  queryOf,
  shownBatches,
  sortedBy,
  takenRow,
  withFilter,
} from './batches-state';
import { linesBySource } from './development-state';
import { batchOf } from './stick-state';
import { newestFirst, ofCause } from './story-state';

function batch(id: string, change: Partial<BatchView> = {}): BatchView {
  return {
    id,
    site: 'north',
    house: 'n-1',
    variety: 'sage-dusk',
    varietyName: "Salvia nemorosa 'Harbour Dusk'",
    crop: 'salvia',
    cropName: 'Salvia nemorosa',
    trayFormat: '105',
    stuckAt: '2026-11-01T08:00:00Z',
    stage: 'CALLUS',
    stageSince: '2026-11-07T08:00:00Z',
    trays: 20,
    traysStuck: 20,
    plants: { stuck: 2100, alive: 2000, lost: 100, shipped: 0 },
    lostByCause: { rot: 100 },
    lastCount: null,
    outlook: null,
    position: 1,
    ...change,
  };
}

const readyOn = (at: string): BatchView['outlook'] => ({
  asOf: '2026-11-25T08:00:00Z',
  callusedAt: { p10: at, p50: at, p90: at },
  rootedAt: { p10: at, p50: at, p90: at },
  readyAt: { p10: at, p50: at, p90: at },
  saleableTrays: { p10: 17, p50: 18, p90: 19 },
  usableUntil: '2026-12-31',
  expectedAlive: 1800,
  missingHours: 0,
  filledFrom: null,
  forecastFrom: 'house pattern',
  moves: [],
});
const names = {
  house: (code: string) => (code === 'n-10' ? 'House 10' : `House ${code.slice(-1)}`),
  site: (code: string) => code,
};
const ids = (batches: readonly BatchView[]) => batches.map(({ id }) => id);

describe('the address', () => {
  test('carries the whole filter and gives it back', () => {
    const params = new URLSearchParams('site=north&house=n-1&crop=salvia&stage=ROOT&text=dusk&state=all&sort=-lost');
    const filter = filterIn(params);
    expect(filter).toEqual({
      site: 'north',
      house: 'n-1',
      crop: 'salvia',
      stage: 'ROOT',
      text: 'dusk',
      state: 'all',
      sort: { column: 'lost', descending: true },
    });
    expect(withFilter(new URLSearchParams(), filter).toString()).toBe(params.toString());
  });

  test('stays empty for what is usual, and keeps words of other screens', () => {
    expect(
      withFilter(new URLSearchParams('weeks=8&stage=ROOT'), { ...filterIn(new URLSearchParams()) }).toString(),
    ).toBe('weeks=8');
  });

  test('with words it does not know shows what is usual', () => {
    const filter = filterIn(new URLSearchParams('stage=FLOWER&state=gone&sort=colour'));
    expect(filter).toMatchObject({ stage: undefined, state: 'live', sort: { column: 'ready', descending: false } });
  });

  test('asks the server for all but the text', () => {
    expect(queryOf(filterIn(new URLSearchParams('text=dusk&crop=salvia')))).toEqual({ crop: 'salvia', state: 'live' });
  });
});

describe('what is shown', () => {
  test('must hold every word, in id, variety, crop or house, without accents', () => {
    const all = [
      batch('B1', { varietyName: "Sálvia 'Dusk'", house: 'n-10' }),
      batch('B2', { varietyName: "Gaura 'Dawn'", variety: 'gaura-dawn' }),
    ];
    const found = (text: string) => ids(shownBatches(all, { text, sort: { column: 'id', descending: false } }, names));
    expect(found('salvia house 10')).toEqual(['B1']);
    expect(found('b2')).toEqual(['B2']);
    expect(found('dusk dawn')).toEqual([]);
    expect(found(' ')).toEqual(['B1', 'B2']);
  });

  test('is sorted by numbers inside names and by shares, not amounts', () => {
    const all = [
      batch('B1', { house: 'n-10', plants: { stuck: 1000, alive: 900, lost: 100, shipped: 0 } }),
      batch('B2', { house: 'n-2', plants: { stuck: 100, alive: 80, lost: 20, shipped: 0 } }),
    ];
    const by = (column: 'house' | 'lost', descending: boolean) =>
      ids(shownBatches(all, { text: '', sort: { column, descending } }, names));
    expect(by('house', false)).toEqual(['B2', 'B1']);
    expect(by('lost', true)).toEqual(['B2', 'B1']);
  });

  test('keeps what has no outlook last, whichever way it is turned', () => {
    const all = [
      batch('none'),
      batch('late', { outlook: readyOn('2026-12-20T00:00:00Z') }),
      batch('early', { outlook: readyOn('2026-12-01T00:00:00Z') }),
    ];
    const by = (descending: boolean) =>
      ids(shownBatches(all, { text: '', sort: { column: 'ready', descending } }, names));
    expect(by(false)).toEqual(['early', 'late', 'none']);
    expect(by(true)).toEqual(['late', 'early', 'none']);
  });

  test('turns round on the same column and begins with the most on a column of losses', () => {
    expect(sortedBy('ready', { column: 'ready', descending: false })).toEqual({ column: 'ready', descending: true });
    expect(sortedBy('lost', { column: 'ready', descending: false })).toEqual({ column: 'lost', descending: true });
    expect(sortedBy('variety', { column: 'lost', descending: true })).toEqual({ column: 'variety', descending: false });
  });
});

describe('the keyboard', () => {
  const after = (key: string, row: number, column: number, ctrl = false) =>
    placeAfter(key, ctrl, { row, column }, 100, 20);
  test('moves by cell, page and end and stops at the edges', () => {
    expect(after('ArrowDown', 3, 1)).toEqual({ row: 4, column: 1 });
    expect(after('ArrowUp', 0, 1)).toEqual({ row: 0, column: 1 });
    expect(after('ArrowLeft', 3, 0)).toEqual({ row: 3, column: 0 });
    expect(after('PageDown', 90, 2)).toEqual({ row: 99, column: 2 });
    expect(after('Home', 9, 5, true)).toEqual({ row: 0, column: 0 });
    expect(after('End', 9, 5)).toEqual({ row: 9, column: COLUMNS.length - 1 });
  });
  test('leaves other keys to the browser', () => {
    expect(after('a', 0, 0)).toBeUndefined();
    expect(after('Tab', 0, 0)).toBeUndefined();
  });
});

test('a figure leads to the part of the page that explains it', () => {
  expect(anchorOf('lost')).toBe('#losses');
  expect(anchorOf('ready')).toBe('#outlook');
  expect(anchorOf('alive')).toBe('#story');
  expect(anchorOf('id')).toBe('');
});

test('what is taken away has dates of the site: 23:30 UTC is already the next day in Amsterdam', () => {
  const plantsIn = (format: string) => (format === '105' ? 100 : undefined);
  const row = takenRow(
    batch('B1', { outlook: readyOn('2026-12-06T23:30:00Z') }),
    names,
    () => 'Europe/Amsterdam',
    plantsIn,
    ({ stage }) => `stage ${stage}`,
  );
  expect(row.slice(5, 8)).toEqual(['105', 100, 'stage CALLUS']);
  expect(row.slice(8, 11)).toEqual(['2026-11-01', 20, 2100]);
  expect(row.slice(14)).toEqual(['2026-12-07', '2026-12-07', '2026-12-07', 17, 18, 19]);
  expect(
    takenRow(
      batch('B1'),
      names,
      () => undefined,
      plantsIn,
      () => 'x',
    ).slice(14),
  ).toEqual(['', '', '', '', '', '']);
});

describe('a list that follows the stream', () => {
  const list = { asOf: '2026-11-25T08:00:00Z', position: 5, batches: [batch('B1'), batch('B2')], faulty: [] };
  test('takes the new figures in place', () => {
    const next = patched(list, [batch('B2', { trays: 3, position: 9 })], { state: 'live' });
    expect(next.batches.map(({ id, trays }) => [id, trays])).toEqual([
      ['B1', 20],
      ['B2', 3],
    ]);
    expect(next.position).toBe(9);
    expect(next.batches[0]).toBe(list.batches[0]);
  });
  test('no longer calls faulty what has been computed again', () => {
    const faulty = ['B3', 'B4'].map((id) => ({
      id,
      site: 'north',
      variety: 'v',
      varietyName: 'V',
      trayFormat: '105',
      stuckAt: '2026-11-01T08:00:00Z',
      fault: 'no such variety',
    }));
    const next = patched({ ...list, faulty }, [batch('B3')], { state: 'live' });
    expect(ids(next.batches)).toEqual(['B1', 'B2', 'B3']);
    expect(next.faulty.map(({ id }) => id)).toEqual(['B4']);
  });
  test('drops what no longer belongs and takes in what now does', () => {
    const gone = batch('B1', { plants: { stuck: 2100, alive: 0, lost: 100, shipped: 2000 } });
    expect(ids(patched(list, [gone, batch('B3')], { state: 'live' }).batches)).toEqual(['B2', 'B3']);
    expect(ids(patched(list, [batch('B1', { house: 'n-2' })], { state: 'live', house: 'n-1' }).batches)).toEqual([
      'B2',
    ]);
  });
  test('finished means that nothing is alive', () => {
    expect(belongs({ state: 'finished' }, batch('B1'))).toBe(false);
    expect(belongs({ state: 'all', stage: 'CALLUS' }, batch('B1'))).toBe(true);
  });
});

test('rows out of sight are not drawn, and never more than there are', () => {
  expect(windowAt(0, 280, 28, 1000)).toEqual({ fromInclusive: 0, untilExclusive: 30 });
  // Row 500 is at the top: 50 steps of ten.
  expect(windowAt(14_000, 280, 28, 1000)).toEqual({ fromInclusive: 490, untilExclusive: 530 });
  expect(windowAt(0, 280, 28, 3)).toEqual({ fromInclusive: 0, untilExclusive: 3 });
});

describe('wall clocks', () => {
  // Central European time: UTC+1 in November, UTC+2 in July. Clocks of 2026 change on 29 March and 25 October.
  test('a typed time is the time of the site', () => {
    expect(instantOf('Europe/Amsterdam', '2026-11-25', '09:30')).toBe('2026-11-25T08:30:00.000Z');
    expect(instantOf('Europe/Amsterdam', '2026-07-01', '09:30')).toBe('2026-07-01T07:30:00.000Z');
    expect(instantOf('America/Chicago', '2026-11-25', '09:30')).toBe('2026-11-25T15:30:00.000Z');
  });
  test('a time that the clock change skips does not exist; one that comes twice is the first', () => {
    expect(instantOf('Europe/Amsterdam', '2026-03-29', '02:30')).toBeUndefined();
    expect(instantOf('Europe/Amsterdam', '2026-10-25', '02:30')).toBe('2026-10-25T00:30:00.000Z');
  });
  test('what is no time is none', () => {
    expect(instantOf('Europe/Amsterdam', '2026-11-25', 'noon')).toBeUndefined();
    expect(instantOf('Europe/Amsterdam', '2026-11-25', '25:00')).toBeUndefined();
  });
  test('an instant reads back as the clock shows it', () => {
    expect(wallClock('Europe/Amsterdam', Date.parse('2026-11-25T23:05:00Z'))).toBe('2026-11-26T00:05');
  });
});

describe('sticking', () => {
  const draft = {
    site: 'north',
    house: 'n-1',
    variety: 'sage',
    trayFormat: '105',
    date: '2026-11-25',
    time: '9:30',
    trays: '40',
    plants: '',
  };
  test('an hour without its zero and an empty number of plants are understood', () => {
    expect(batchOf(draft, 'Europe/Amsterdam')).toEqual({
      batch: {
        site: 'north',
        house: 'n-1',
        variety: 'sage',
        trayFormat: '105',
        stuckAt: '2026-11-25T08:30:00.000Z',
        trays: 40,
      },
    });
    expect(clockTyped('930')).toBe('09:30');
  });
  test('every fault is named at its field', () => {
    expect(batchOf({ ...draft, house: '', date: '', trays: '2.5', plants: 'many' }, undefined)).toEqual({
      faults: { house: 'choose', date: 'noDate', trays: 'wholeTrays', plants: 'wholePlants' },
    });
    expect(batchOf({ ...draft, date: '2026-03-29', time: '02:30' }, 'Europe/Amsterdam')).toEqual({
      faults: { time: 'noSuchTime' },
    });
  });
});

describe('the plot', () => {
  const hour = (h: number, mediumC: number, source: 'measured' | 'filled' | 'forecast') => ({
    at: `2026-11-25T0${h}:00:00Z`,
    mediumC,
    house: 'H1',
    source,
  });
  const hours = [hour(0, 20, 'measured'), hour(1, 21, 'filled'), hour(2, 22, 'measured'), hour(3, 23, 'forecast')];
  test('lines of different sources touch, so that a single hour shows', () => {
    expect(linesBySource(hours, (c) => c)).toEqual({
      measured: [20, 21, 22, null],
      filled: [20, 21, null, null],
      forecast: [null, null, 22, 23],
    });
  });
});

describe('the story', () => {
  const entry = (id: string, position: number, happenedAt: string, change: Partial<EntryView> = {}) =>
    ({ id, position, happenedAt, cause: null, reverses: null, postings: [], ...change }) as unknown as EntryView;
  const told = [
    entry('stick', 1, '2026-11-01T08:00:00Z'),
    entry('late', 4, '2026-11-02T08:00:00Z', { cause: 'rot' }),
    entry('loss', 2, '2026-11-03T08:00:00Z', { cause: 'pest' }),
    entry('undo', 3, '2026-11-03T08:00:00Z', { reverses: 'loss' }),
  ];
  test('is told by when things happened, not by when they were written down', () => {
    expect(newestFirst(told).map(({ id }) => id)).toEqual(['undo', 'loss', 'late', 'stick']);
  });
  test('of one cause holds its entries and what undid them', () => {
    expect(ofCause(told, 'pest').map(({ id }) => id)).toEqual(['loss', 'undo']);
  });
});

test('looking back shows what had happened, and an undo that came later undoes nothing yet', () => {
  const entry = (id: string, happenedAt: string, reversedBy: string | null = null) =>
    ({ id, happenedAt, reversedBy }) as EntryView;
  const all = [
    entry('loss', '2026-11-10T08:00:00Z', 'undo'),
    entry('count', '2026-11-11T08:00:00Z'),
    entry('undo', '2026-11-12T08:00:00Z'),
  ];
  expect(happenedBy(all, '2026-11-11T08:00:00Z')).toEqual([{ ...all[0], reversedBy: null }, all[1]]);
  expect(happenedBy(all, '2026-11-13T08:00:00Z')).toEqual(all);
});
