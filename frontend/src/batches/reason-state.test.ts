import { describe, expect, test } from 'vitest';
import type { Development } from '../shared/api-types';
import type { ExplanationPart } from '../shared/learning-types';
import { interpolated, lookNotes, progressLines } from './development-state';
import { rangeByRecord, signedDays, spanOf, stepsOf, verdictOf } from './reason-state';

const part = (cause: ExplanationPart['cause'], days: number, on: string | null = null): ExplanationPart => ({
  cause,
  days,
  on,
  actualC: null,
  plannedC: null,
  text: `${cause} ${on ?? ''}`,
});
const total = (steps: readonly { days: number }[]) => steps.reduce((sum, { days }) => sum + days, 0);

describe('the steps from plan to date', () => {
  test('begin at the plan and each where the one before ended', () => {
    const steps = stepsOf([
      part('profile-version', -0.5),
      part('temperature', 1.5, '2026-11-03'),
      part('rate-seen', 1),
    ]);
    expect(steps.map(({ from, to }) => [from, to])).toEqual([
      [0, -0.5],
      [-0.5, 1],
      [1, 2],
    ]);
  });

  test('name the days that count most and put the others together without losing any of the sum', () => {
    const days = [0.1, 0.9, -0.2, 0.3, 0.05, -0.7, 0.4, 0.02];
    const parts = days.map((each, i) => part('temperature', each, `2026-11-0${i + 1}`));
    const steps = stepsOf([part('profile-version', 1), ...parts, part('forecast', -1)], 3);
    expect(steps.map(({ on, together }) => on ?? together)).toEqual([
      1,
      '2026-11-02',
      '2026-11-06',
      '2026-11-07',
      5,
      1,
    ]);
    expect(total(steps)).toBeCloseTo(
      days.reduce((a, b) => a + b, 0),
      9,
    );
    expect(steps.at(-1)?.to).toBeCloseTo(total(steps), 9);
  });

  test('one day too many is not worth putting together', () => {
    const parts = [1, 2, 3].map((n) => part('temperature', n, `2026-11-0${n}`));
    expect(stepsOf(parts, 2)).toHaveLength(3);
  });
});

test('the picture has a width even when nothing moved', () => {
  const { least, most } = spanOf(stepsOf([part('forecast', 0)]));
  expect(most - least).toBeGreaterThan(0);
});

test('an hour is as planned, and no date is unknown', () => {
  expect(verdictOf({ differenceDays: 0.03 })).toBe('asPlanned');
  expect(verdictOf({ differenceDays: 2 })).toBe('later');
  expect(verdictOf({ differenceDays: -2 })).toBe('earlier');
  expect(verdictOf({ differenceDays: null })).toBe('unknown');
});

test('days carry their sign, and a rounded nothing has none', () => {
  const decimal = (value: number, digits: number) => value.toFixed(digits);
  expect([signedDays(1.25, decimal), signedDays(-0.4, decimal), signedDays(-0.02, decimal)]).toEqual([
    '+1.3',
    '−0.4',
    '0.0',
  ]);
});

describe('the development as lines', () => {
  const at = (day: number) => `2026-11-0${day}T00:00:00.000Z`;
  const development = {
    progress: [
      { at: at(1), p10: 0, p50: 0, p90: 0 },
      { at: at(3), p10: 1, p50: 2, p90: 3 },
    ],
    plan: [
      { at: at(2), progress: 1 },
      { at: at(4), progress: 3 },
    ],
  } as unknown as Development;

  test('plan and expectation share their times, straight between their own points and nothing outside', () => {
    expect(progressLines(development)).toEqual({
      at: [at(1), at(2), at(3), at(4)],
      p10: [0, 0.5, 1, null],
      p50: [0, 1, 2, null],
      p90: [0, 1.5, 3, null],
      plan: [null, 1, 2, 3],
    });
  });

  test('a batch without a plan has no plan line', () => {
    expect(progressLines({ ...development, plan: [] }).plan).toBeUndefined();
  });

  test('nothing is read off beyond the ends', () => {
    expect(interpolated([{ ms: 10, value: 1 }], 10)).toBe(1);
    expect(interpolated([{ ms: 10, value: 1 }], 11)).toBeNull();
    expect(interpolated([], 11)).toBeNull();
  });

  test('a look stands at the stage it looked for, filled once nine in ten were there', () => {
    const looks = [
      { at: at(1), stage: 'CALLUS', cells: 50, reached: 0 },
      { at: at(2), stage: 'ROOT', cells: 50, reached: 45 },
    ] as const;
    expect(lookNotes(looks, (reached, cells) => `${reached}/${cells}`)).toEqual([
      { at: at(1), value: 1, label: '0/50', filled: false },
      { at: at(2), value: 2, label: '45/50', filled: true },
    ]);
  });
});

test('a range is told to be wider or narrower than the model’s where one decimal shows it', () => {
  expect(rangeByRecord({ width: 1.31, batches: 40 })).toBe('wider');
  expect(rangeByRecord({ width: 0.8, batches: 40 })).toBe('narrower');
  expect(rangeByRecord({ width: 1.04, batches: 40 })).toBe('same');
  expect(rangeByRecord(null)).toBe('same');
});
