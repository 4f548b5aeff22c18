import { describe, expect, test } from 'vitest';
import type { RoundAnswer, RoundMessage, Sent, Waiting } from '../outbox/outbox-state';
import type { HouseOnTheWalk, RoundItem } from '../shared/climate-types';
import {
  alikeHere,
  asPressed,
  byBatch,
  byHouse,
  clashesTogether,
  togetherByWay,
  doneOf,
  isByLabel,
  progressOf,
  startOf,
  walkedEarlier,
} from './rounds-state';

const AT = '2026-11-25T09:00:00Z';
const item = (id: string, house: string, change: Partial<RoundItem> = {}): RoundItem => ({
  id,
  house,
  houseName: `House ${house}`,
  batch: null,
  varietyName: null,
  trays: null,
  alive: null,
  phase: null,
  task: 'scouting',
  dueOn: '2026-11-25',
  state: 'due',
  why: null,
  asks: [],
  blockedUntil: null,
  blockedBy: null,
  fits: [],
  answer: null,
  ...change,
});
const stop = (house: string, change: Partial<HouseOnTheWalk> = {}): HouseOnTheWalk => ({
  house,
  name: `House ${house}`,
  batches: 1,
  blockedUntil: null,
  blockedBy: null,
  clashes: [],
  ...change,
});

const DONE: RoundAnswer = { verb: 'done', body: { happenedAt: AT } };
const SKIPPED: RoundAnswer = { verb: 'skipped', body: { happenedAt: AT, reason: 'no time' } };
const UNDO: RoundAnswer = { verb: 'undo', body: { reason: 'by mistake' } };
const message = (of: string, answer: RoundAnswer): RoundMessage => ({
  to: 'round',
  site: 's',
  item: of,
  batch: null,
  name: of,
  answer,
});
const waits = (of: string, answer: RoundAnswer, change: Partial<Waiting> = {}): Waiting => ({
  seq: 1,
  key: `k-${of}`,
  message: message(of, answer),
  undoes: null,
  attempts: 0,
  refusal: null,
  ...change,
});
const went = (of: string, answer: RoundAnswer, sentAtMs: number): Sent => ({
  key: `k-${of}`,
  seq: 1,
  message: message(of, answer),
  id: of,
  sentAtMs,
});

describe('the round as it was pressed', () => {
  const on = '2026-11-25';
  const states = (items: readonly RoundItem[], waiting: readonly Waiting[], sent: readonly Sent[] = []) =>
    asPressed({ items, askedAtMs: 1_000 }, { waiting, sent }, on).map(({ state, unsent }) => [state, unsent]);

  test('closes what waits on the device, and says that it waits', () => {
    expect(states([item('1', 'a'), item('2', 'a')], [waits('1', DONE)])).toEqual([
      ['done', 'k-1'],
      ['due', undefined],
    ]);
  });

  test('keeps what was sent closed until a list comes that was asked for later', () => {
    expect(states([item('1', 'a')], [], [went('1', SKIPPED, 1_001)])).toEqual([['skipped', undefined]]);
    expect(states([item('1', 'a')], [], [went('1', SKIPPED, 999)])).toEqual([['due', undefined]]);
  });

  test('opens again what is taken back, as what it was', () => {
    const carried = item('1', 'a', { state: 'done', dueOn: '2026-11-24' });
    expect(states([carried], [waits('1', UNDO)])).toEqual([['carried-over', 'k-1']]);
    expect(states([item('1', 'a', { state: 'done' })], [], [went('1', UNDO, 2_000)])).toEqual([['due', undefined]]);
  });

  test('goes by the last press', () => {
    expect(states([item('1', 'a')], [waits('1', UNDO)], [went('1', DONE, 2_000)])).toEqual([['due', 'k-1']]);
    const again = [went('1', UNDO, 3_000), went('1', DONE, 2_000)];
    expect(states([item('1', 'a')], [], again)).toEqual([['due', undefined]]);
  });

  test('counts nothing that was refused', () => {
    const refusal = { status: 409, kind: 'house-closed', detail: '', members: {} };
    expect(states([item('1', 'a')], [waits('1', DONE, { refusal })])).toEqual([['due', undefined]]);
  });
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
    const move = { batch: 'X', crop: 'mint', later: [], nearest: null };
    const both = [{ ...move, fits: ['b'] }];
    const other = [{ ...move, fits: [] }];
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

  test('names batches together for which the same can be done, and each crop once', () => {
    const none = { later: [], nearest: null };
    expect(
      togetherByWay([
        { batch: 'X', crop: 'mint', fits: ['b'], ...none },
        { batch: 'Y', crop: 'sage', fits: ['c'], ...none },
        { batch: 'Z', crop: 'mint', fits: ['b'], ...none },
        { batch: 'W', crop: 'sage', fits: ['b'], ...none },
      ]),
    ).toEqual([
      { batches: ['X', 'Z', 'W'], crops: ['mint', 'sage'], way: { fits: ['b'], ...none } },
      { batches: ['Y'], crops: ['sage'], way: { fits: ['c'], ...none } },
    ]);
  });

  test('is walked another way by carrying a house one place', () => {
    expect(walkedEarlier(['a', 'b', 'c'], 'c', -1)).toEqual(['a', 'c', 'b']);
    expect(walkedEarlier(['a', 'b', 'c'], 'a', 1)).toEqual(['b', 'a', 'c']);
    expect(walkedEarlier(['a', 'b', 'c'], 'a', -1)).toEqual(['a', 'b', 'c']);
  });
});

test('what is the same for several batches of a house is closed together, and a count is not', () => {
  const of = (id: string, task: RoundItem['task'], change: Partial<RoundItem> = {}) =>
    item(id, 'a', { task, batch: id, ...change });
  const groups = alikeHere([
    of('1', 'mist-off'),
    of('2', 'mist-off'),
    of('3', 'mist-off', { state: 'blocked' }),
    of('4', 'count'),
    of('5', 'count'),
    of('6', 'tone'),
  ]);
  expect(groups.map((items) => items.map(({ id }) => id))).toEqual([['1', '2']]);
});

describe('doing a check', () => {
  const look = { task: 'look-callus', asks: ['cells', 'reached'] } as const;

  test('sends what it asks for, and that the stage is reached when that was ticked', () => {
    expect(doneOf(look, { cells: '50', reached: '46', stageReached: true, note: ' even ' }, AT)).toEqual({
      done: { happenedAt: AT, cells: 50, reached: 46, stageReached: true, note: 'even', confirmed: false },
    });
  });

  test('takes a box as the reader measures it and leaves out what nobody knows', () => {
    const box = { task: 'arrival-check', asks: ['condition'] } as const;

    expect(doneOf(box, { condition: 'wilted', boxC: '50', standbyHours: ' ' }, AT, 'F')).toEqual({
      done: { happenedAt: AT, condition: 'wilted', boxC: 10, confirmed: false },
    });
    expect(doneOf(box, { boxC: 'cool' }, AT)).toEqual({
      faults: new Map([
        ['condition', 'needed'],
        ['boxC', 'number'],
      ]),
    });
    expect(['wetting-agent', 'prevention', 'count'].map((task) => isByLabel(task as 'count'))).toEqual([
      true,
      true,
      false,
    ]);
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
      done: { happenedAt: AT, nitrogenPpm: 87.5, confirmed: false },
    });
    expect(doneOf({ task: 'feed-step', asks: [] }, {}, AT)).toEqual({
      done: { happenedAt: AT, confirmed: false },
    });
  });

  test('sends nothing that does not belong to the task', () => {
    expect(doneOf({ task: 'tone', asks: [] }, { cells: '50', stageReached: true }, AT)).toEqual({
      done: { happenedAt: AT, confirmed: false },
    });
  });
});

test('a usual move starts with its house, a clash leaves the choice', () => {
  const why = (code: string) => ({ code, english: '', values: {} });
  const move = (code: string, fits: string[]) => item('move.B1', 'A', { task: 'move', why: why(code), fits });

  expect(startOf(move('usual-move', ['C']))).toEqual({ house: 'C' });
  expect(startOf(move('clashes', ['C']))).toEqual({});
  expect(startOf(item('scouting.A', 'A'))).toEqual({});
});
