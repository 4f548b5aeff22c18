import { describe, expect, test } from 'vitest';
import type { HouseOnTheWalk, RoundItem } from '../shared/climate-types';
import { byBatch, byHouse, clashesTogether, doneOf, progressOf, walkedEarlier } from './rounds-state';

const AT = '2026-11-25T09:00:00Z';
const item = (id: string, house: string, change: Partial<RoundItem> = {}): RoundItem => ({
  id,
  house,
  houseName: `House ${house}`,
  batch: null,
  varietyName: null,
  trays: null,
  phase: null,
  task: 'scouting',
  dueOn: '2026-11-25',
  state: 'due',
  why: '',
  asks: [],
  blockedUntil: null,
  fits: [],
  ...change,
});
const stop = (house: string, change: Partial<HouseOnTheWalk> = {}): HouseOnTheWalk => ({
  house,
  name: `House ${house}`,
  batches: 1,
  blockedUntil: null,
  clashes: [],
  ...change,
});

describe('the round', () => {
  test('goes through the houses in walking order and leaves out those without work', () => {
    const walk = [stop('c'), stop('a'), stop('b')];
    const houses = byHouse([item('1', 'a'), item('2', 'c'), item('3', 'z')], walk);
    expect(houses.map(({ house }) => house)).toEqual(['c', 'a', 'z']);
  });

  test('keeps what is closed apart from what is open, and says how far it is', () => {
    const items = [
      item('1', 'a'),
      item('2', 'a', { state: 'done' }),
      item('3', 'a', { state: 'skipped' }),
      item('4', 'a', { state: 'blocked' }),
    ];
    const [house] = byHouse(items, []);
    expect(house?.open.map(({ id }) => id)).toEqual(['1', '4']);
    expect(house?.closed.map(({ id }) => id)).toEqual(['2', '3']);
    expect(progressOf(items)).toEqual({ closed: 2, all: 4 });
  });

  test('has the checks of a batch together, and those of the house by themselves', () => {
    const stops = byBatch([
      item('1', 'a'),
      item('2', 'a', { batch: 'X' }),
      item('3', 'a', { batch: 'Y' }),
      item('4', 'a', { batch: 'X' }),
    ]);
    expect(stops.map(({ batch, items }) => [batch, items.map(({ id }) => id)])).toEqual([
      [undefined, ['1']],
      ['X', ['2', '4']],
      ['Y', ['3']],
    ]);
  });

  test('tells clashes once that the same moves settle', () => {
    const clash = { least: null, most: null, mist: [], stay: ['Z'] };
    const both = [{ batch: 'X', fits: ['b'] }];
    const other = [{ batch: 'X', fits: [] }];
    const told = clashesTogether([
      { ...clash, quantity: 'mist', move: both },
      { ...clash, quantity: 'light', move: other },
      { ...clash, quantity: 'medium-moisture', move: both },
    ]);
    expect(told).toEqual([
      { quantities: ['mist', 'medium-moisture'], move: both },
      { quantities: ['light'], move: other },
    ]);
  });

  test('is walked another way by carrying a house one place', () => {
    expect(walkedEarlier(['a', 'b', 'c'], 'c', -1)).toEqual(['a', 'c', 'b']);
    expect(walkedEarlier(['a', 'b', 'c'], 'a', 1)).toEqual(['b', 'a', 'c']);
    expect(walkedEarlier(['a', 'b', 'c'], 'a', -1)).toEqual(['a', 'b', 'c']);
  });
});

describe('doing a check', () => {
  const look = { task: 'look-callus', asks: ['cells', 'reached'] } as const;

  test('sends what it asks for, and that the stage is reached when that was ticked', () => {
    expect(doneOf(look, { cells: '50', reached: '46', stageReached: true, note: ' even ' }, AT)).toEqual({
      done: { happenedAt: AT, cells: 50, reached: 46, stageReached: true, note: 'even' },
    });
  });

  test('marks what is missing, not a number, not whole, or impossible', () => {
    const faults = (draft: Parameters<typeof doneOf>[1]) => {
      const made = doneOf(look, draft, AT);
      return 'faults' in made ? Object.fromEntries(made.faults) : undefined;
    };
    expect(faults({})).toEqual({ cells: 'needed', reached: 'needed' });
    expect(faults({ cells: 'many', reached: '2.5' })).toEqual({ cells: 'number', reached: 'whole' });
    expect(faults({ cells: '0', reached: '0' })).toEqual({ cells: 'noCells' });
    expect(faults({ cells: '50', reached: '51' })).toEqual({ reached: 'moreThanCells' });
  });

  test('takes the strength of a feed when it is given, and does without', () => {
    expect(doneOf({ task: 'feed-step', asks: [] }, { nitrogenPpm: '87.5' }, AT)).toEqual({
      done: { happenedAt: AT, nitrogenPpm: 87.5 },
    });
    expect(doneOf({ task: 'feed-step', asks: [] }, {}, AT)).toEqual({ done: { happenedAt: AT } });
  });

  test('sends nothing that does not belong to the task', () => {
    expect(doneOf({ task: 'tone', asks: [] }, { cells: '50', stageReached: true }, AT)).toEqual({
      done: { happenedAt: AT },
    });
  });
});
