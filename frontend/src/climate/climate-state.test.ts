import { describe, expect, test } from 'vitest';
import type { ClimateHour, PhaseRecipe } from '../shared/climate-types';
import {
  bandAt,
  bandOf,
  commonBand,
  daysIn,
  hoursOutside,
  isNight,
  isSilent,
  linesOf,
  periodUntil,
  phaseOf,
  trendOf,
} from './climate-state';

const band = (least: number | null, most: number | null) => ({ least, most });
const phase = (change: Partial<PhaseRecipe> = {}): PhaseRecipe => ({
  phase: 'STICKING',
  mediumC: band(20, 23.3),
  dayAirC: band(20, 26.7),
  nightAirC: band(18, 24),
  humidityPercent: band(80, 90),
  deficitKpa: band(null, 0.53),
  lightUmol: band(260, 300),
  moistureLevel: band(4, 4),
  mist: 'RUNNING',
  mediumEcMsPerCm: band(null, 1.5),
  nitrogenPpm: band(0, 50),
  ...change,
});
const hour = (n: number, value: number, source: ClimateHour['source'] = 'measured'): ClimateHour => ({
  at: new Date(Date.UTC(2026, 10, 25, n)).toISOString(),
  value,
  source,
});
const NOW = Date.parse('2026-11-25T12:00:00Z');

describe('the phase of a batch', () => {
  const recipe = { fullMistDays: 3, toneAfterDays: 7 };
  const batch = (stage: 'STICK' | 'CALLUS' | 'ROOT' | 'READY', days: number) => {
    const since = new Date(NOW - days * 86_400_000).toISOString();
    return { stage, stageSince: since, stuckAt: since };
  };

  test('follows from what was seen and how long ago', () => {
    expect(phaseOf(batch('STICK', 2.9), recipe, NOW)).toBe('STICKING');
    expect(phaseOf(batch('STICK', 3), recipe, NOW)).toBe('CALLUSING');
    expect(phaseOf(batch('CALLUS', 30), recipe, NOW)).toBe('ROOTING');
    expect(phaseOf(batch('ROOT', 6.9), recipe, NOW)).toBe('FILLING');
    expect(phaseOf(batch('ROOT', 7), recipe, NOW)).toBe('TONING');
    expect(phaseOf(batch('READY', 0), recipe, NOW)).toBe('TONING');
  });
});

test('night is from eight to six by the clocks of the site', () => {
  // In November Amsterdam is one hour ahead of UTC.
  expect(isNight('Europe/Amsterdam', Date.parse('2026-11-25T18:59:00Z'))).toBe(false);
  expect(isNight('Europe/Amsterdam', Date.parse('2026-11-25T19:00:00Z'))).toBe(true);
  expect(isNight('Europe/Amsterdam', Date.parse('2026-11-25T04:59:00Z'))).toBe(true);
  expect(isNight('Europe/Amsterdam', Date.parse('2026-11-25T05:00:00Z'))).toBe(false);
});

describe('the band of a house', () => {
  test('is what suits every batch in it', () => {
    const phases = [phase(), phase({ mediumC: band(18, 22) })];
    expect(bandAt(phases, 'medium-temperature', false)).toEqual({ least: 20, most: 22, clash: false });
  });

  test('says when nothing suits all', () => {
    expect(commonBand([band(20, 22), band(23, 25)])).toEqual({ least: 23, most: 22, clash: true });
  });

  test('takes the night air at night, and of light only the upper end', () => {
    expect(bandAt([phase()], 'air-temperature', true)).toMatchObject({ least: 18, most: 24 });
    expect(bandOf(phase(), 'light', true)).toEqual({ least: null, most: 300 });
  });

  test('is none where nothing is asked or nothing stands', () => {
    expect(bandAt([phase()], 'dew-point', false)).toBeUndefined();
    expect(bandAt([], 'medium-temperature', false)).toBeUndefined();
  });
});

describe('hours', () => {
  test('outside are counted below and above; on the limit is inside', () => {
    const hours = [hour(0, 19.9), hour(1, 20), hour(2, 23.3), hour(3, 23.4), hour(4, 30)];
    expect(hoursOutside(hours, () => ({ least: 20, most: 23.3, clash: false }))).toEqual({ below: 1, above: 2 });
    expect(hoursOutside(hours, () => undefined)).toEqual({ below: 0, above: 0 });
  });

  test('rise or fall by the last three against the three before', () => {
    const of = (values: readonly number[]) => values.map((value, n) => hour(n, value));
    expect(trendOf(of([20, 20, 20, 21, 21, 21]), 'medium-temperature')).toBe('rising');
    expect(trendOf(of([21, 21, 21, 20, 20, 20]), 'medium-temperature')).toBe('falling');
    expect(trendOf(of([20, 20, 20, 20.2, 20.2, 20.2]), 'medium-temperature')).toBe('steady');
    expect(trendOf(of([20, 21]), 'medium-temperature')).toBe('unknown');
  });

  test('measured and filled touch where one takes over', () => {
    const { measured, filled } = linesOf([hour(0, 1), hour(1, 2, 'filled'), hour(2, 3)], (value) => value);
    expect(measured).toEqual([1, 2, 3]);
    expect(filled).toEqual([1, 2, null]);
  });

  test('a sensor is silent after two hours', () => {
    expect(isSilent('2026-11-25T10:00:00Z', NOW, 'north/air')).toBe(false);
    expect(isSilent('2026-11-25T09:59:00Z', NOW, 'north/air')).toBe(true);
    expect(isSilent('2026-11-20T09:59:00Z', NOW, null)).toBe(false);
  });
});

test('a period ends with the hour that is running, and unknown lengths are the usual one', () => {
  expect(periodUntil(Date.parse('2026-11-25T12:20:00Z'), 1)).toEqual({
    from: '2026-11-24T13:00:00.000Z',
    to: '2026-11-25T13:00:00.000Z',
  });
  expect(daysIn(new URLSearchParams('days=14'))).toBe(14);
  expect(daysIn(new URLSearchParams('days=5'))).toBe(3);
});
