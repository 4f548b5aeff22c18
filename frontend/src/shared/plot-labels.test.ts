import { describe, expect, it } from 'vitest';
import { formatsFor } from './formats';
import { linesFor, restingPlace, timeTick } from './plot-labels';

describe('words in a plot', () => {
  it('stand on the first line while there is room, and below where another stands', () => {
    const words = [
      { from: 0, until: 40 },
      { from: 30, until: 70 },
      { from: 40, until: 80 },
      { from: 35, until: 60 },
    ];
    expect(linesFor(words, 3)).toEqual([0, 1, 0, 2]);
  });

  it('are left out rather than written on one another', () => {
    const same = { from: 0, until: 40 };
    expect(linesFor([same, same, same], 2)).toEqual([0, 1, undefined]);
  });
});

describe('a legend at rest', () => {
  it('tells the last figures up to now', () => {
    expect(restingPlace([10, 20, 30, 40], [[1, 2, null, 4]], 35)).toBe(1);
    expect(
      restingPlace(
        [10, 20, 30, 40],
        [
          [1, 2, null, 4],
          [null, null, 3, null],
        ],
        35,
      ),
    ).toBe(2);
  });

  it('tells the last of all where there is no now, or nothing before it', () => {
    expect(restingPlace([10, 20, 30], [[1, 2, null]], undefined)).toBe(1);
    expect(restingPlace([10, 20], [[1, 2]], 5)).toBe(1);
    expect(restingPlace([], [], 5)).toBeUndefined();
  });
});

it('a day that begins on an axis of hours is named', () => {
  const format = formatsFor({ language: 'en', temperature: 'C' });
  const at = (instant: string) => Date.parse(instant) / 1000;
  const hours = [at('2026-11-26T16:00:00Z'), at('2026-11-27T00:00:00Z'), at('2026-11-27T08:00:00Z')];
  expect(hours.map((s) => timeTick(s, hours, format, 'UTC'))).toEqual(['16:00', '27 Nov', '08:00']);
  expect(timeTick(at('2026-11-27T05:00:00Z'), hours, format, 'America/New_York')).toBe('27 Nov');
});
