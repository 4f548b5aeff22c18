import { describe, expect, test } from 'vitest';
import type { WhatIfAnswer } from '../shared/learning-types';
import {
  draftOf,
  isNothing,
  mediumTyped,
  outcomeOf,
  recipeLimits,
  scopeIn,
  shiftDays,
  wishIn,
  wishOf,
  withWish,
} from './what-if-state';

const wish = {
  setpoints: [{ house: 'n-1', mediumC: 23.5, from: '2026-11-26T07:00:00.000Z' }],
  moves: [{ batch: 'B7', house: 'n-2', from: '2026-11-27T08:30:00.000Z' }],
};
const amsterdam = () => 'Europe/Amsterdam';
const unknown = () => undefined;

describe('the address', () => {
  test('carries the whole wish and gives it back', () => {
    const params = withWish(new URLSearchParams('site=north&batch=B7'), wish);
    expect(params.get('site')).toBe('north');
    expect(params.has('batch')).toBe(false);
    expect(wishIn(params)).toEqual(wish);
  });

  test('leaves out lines that nobody could read', () => {
    const params = new URLSearchParams('set=n-1~warm~2026-11-26T07:00Z&set=n-1~22&move=B7~n-2~soon');
    expect(isNothing(wishIn(params))).toBe(true);
  });

  test('asks at nine in ten and for twelve weeks unless it says otherwise', () => {
    expect(scopeIn(new URLSearchParams())).toEqual({ confidence: 0.9, weeks: 12 });
    expect(scopeIn(new URLSearchParams('confidence=0.5&weeks=4'))).toEqual({ confidence: 0.5, weeks: 4 });
    expect(scopeIn(new URLSearchParams('confidence=7&weeks=0.5'))).toEqual({ confidence: 0.9, weeks: 12 });
  });
});

describe('the lines', () => {
  // 23.5 °C are 74.3 °F; 07:00 UTC is 08:00 in Amsterdam in November.
  test('are in the reader’s unit and the clocks of the site, and make the same wish again', () => {
    const draft = draftOf(wish, amsterdam, 'F');
    expect(draft.setpoints[0]).toMatchObject({ medium: '74.3', date: '2026-11-26', time: '08:00' });
    expect(wishOf(draft, amsterdam, 'F', unknown)).toEqual({ wish });
  });

  test('are marked place by place', () => {
    const made = wishOf(
      {
        setpoints: [{ key: 1, house: '', medium: 'warm', date: '2026-11-26', time: '25:00' }],
        moves: [{ key: 2, batch: '', house: 'n-2', date: '', time: '08:00' }],
      },
      amsterdam,
      'C',
      unknown,
    );
    expect('faults' in made && [...made.faults]).toEqual([
      ['setpoints.0.house', 'choose'],
      ['setpoints.0.medium', 'number'],
      ['setpoints.0.time', 'noTime'],
      ['moves.0.batch', 'choose'],
      ['moves.0.date', 'noDate'],
    ]);
  });
});

describe('what comes of it', () => {
  const at = (day: number) => ({ p10: null, p50: `2026-12-${String(day).padStart(2, '0')}T00:00:00Z`, p90: null });
  const prospect = (day: number | null, house = 'n-1', trays = 10) => ({
    house,
    readyAt: day === null ? { p10: null, p50: null, p90: null } : at(day),
    saleableTrays: { p10: trays, p50: trays, p90: trays },
    usableUntil: null,
  });
  const cell = (week: string, openBefore: number, openAfter: number) => ({
    variety: 'v',
    trayFormat: '72',
    site: 'north',
    week,
    date: '2026-12-07',
    openBefore,
    openAfter,
  });
  const promise = (orderNumber: number, shortBefore: number, shortAfter: number) => ({
    orderNumber,
    line: 1,
    customer: 'Garden Row',
    variety: 'v',
    trayFormat: '72',
    site: 'north',
    shipOn: '2026-12-14',
    trays: 10,
    shortBefore,
    shortAfter,
  });
  const answer: WhatIfAnswer = {
    asOf: '',
    position: 1,
    confidence: 0.9,
    batches: [
      { id: 'same', before: prospect(10), after: prospect(10) },
      { id: 'earlier', before: prospect(10), after: prospect(8) },
      { id: 'later', before: prospect(10), after: prospect(11) },
      { id: 'lost', before: prospect(10), after: prospect(null) },
      { id: 'moved', before: prospect(10), after: prospect(10, 'n-2') },
    ],
    promises: [promise(1, 2, 0), promise(2, 0, 1), promise(3, 0, 6), promise(4, 9, 5)],
    cells: [cell('2026-W51', 4, 9), cell('2026-W50', 6, 3), cell('2026-W52', 2, 2)],
  };

  test('counts what moves which way and how far, and puts the largest change first', () => {
    const outcome = outcomeOf(answer);
    expect(outcome.batches.map(({ id }) => id)).toEqual(['lost', 'earlier', 'later', 'moved']);
    expect(outcome).toMatchObject({ unchanged: 1, earlier: 1, later: 1, earliestDays: 2, latestDays: 1 });
  });

  test('counts places of the board that rise and fall, and leaves out those that stay', () => {
    const { risen, fallen, cells } = outcomeOf(answer);
    expect([risen, fallen]).toEqual([1, 1]);
    expect(cells.map(({ week }) => week)).toEqual(['2026-W50', '2026-W51']);
  });

  test('names promises that would break and those that would be rescued, the largest first', () => {
    const { broken, rescued } = outcomeOf(answer);
    expect(broken.map(({ orderNumber }) => orderNumber)).toEqual([3, 2]);
    expect(rescued.map(({ orderNumber }) => orderNumber)).toEqual([4, 1]);
  });

  test('a date out of sight has no shift', () => {
    expect(shiftDays(at(3), { p10: null, p50: null, p90: null })).toBeNull();
  });
});

describe('a medium as typed', () => {
  test.each([
    ['22', 'C', 22],
    ['+2', 'C', 22],
    [' - 1.5', 'C', 18.5],
    ['−1', 'C', 19],
    // 20 °C are 68 °F; 70 °F are 21.1 °C.
    ['+2', 'F', 21.11],
    ['70', 'F', 21.11],
  ] as const)('"%s" in °%s with 20 °C now is %d °C', (text, unit, mediumC) => {
    const typed = mediumTyped(text, 20, unit);
    expect('mediumC' in typed && Math.round(typed.mediumC * 100) / 100).toBe(mediumC);
  });

  test('as a difference to nothing known, or as no number, is refused', () => {
    expect(mediumTyped('+2', undefined, 'C')).toEqual({ fault: 'noNow' });
    expect(mediumTyped('warm', 20, 'C')).toEqual({ fault: 'number' });
  });
});

test('a difference in no house is only told to choose a house', () => {
  const made = wishOf(
    { setpoints: [{ key: 1, house: '', medium: '+2', date: '2026-11-26', time: '08:00' }], moves: [] },
    amsterdam,
    'C',
    unknown,
  );
  expect('faults' in made && [...made.faults]).toEqual([['setpoints.0.house', 'choose']]);
});

describe('the limits of the recipes', () => {
  const bands = [
    { least: 20, most: 24 },
    { least: 18, most: 21 },
    { least: null, most: 25 },
  ];

  test('span what the batches ask for and count those that a temperature does not suit', () => {
    expect(recipeLimits(bands, 23)).toEqual({ least: 18, most: 25, batches: 3, tooCold: 0, tooWarm: 1 });
    expect(recipeLimits(bands, 19)).toEqual({ least: 18, most: 25, batches: 3, tooCold: 1, tooWarm: 0 });
  });

  test('are none where no batch asks for anything', () => {
    expect(recipeLimits([], 20)).toBeUndefined();
    expect(recipeLimits([{ least: null, most: null }], 20)).toBeUndefined();
  });
});
