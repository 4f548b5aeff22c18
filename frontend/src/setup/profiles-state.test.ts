import { describe, expect, test } from 'vitest';
import type { CropProfile, StageProfile } from '../shared/api-types';
import type { ProfileVersion } from '../shared/learning-types';
import {
  actionsOn,
  comparedWith,
  differs,
  forecastVerdict,
  lookedAt,
  stageChanges,
  stateOf,
  wholeDays,
} from './profiles-state';

const stage = (daysAtReference: number): StageProfile => ({
  stage: 'STICK',
  daysAtReference,
  referenceC: 22,
  minC: 8,
  optimumC: 24,
  maxC: 36,
  survivalMean: 0.95,
  survivalWeight: 60,
});
const profile = (days: number): CropProfile => ({ stages: [stage(days)], rateSpread: 0.1, holdDays: 14 });
const version = (n: number, change: Partial<ProfileVersion> = {}): ProfileVersion => ({
  version: n,
  origin: 'entered',
  createdAt: '2026-10-01T08:00:00Z',
  adoptedAt: null,
  inForce: false,
  pinned: false,
  profile: profile(10),
  evidence: null,
  ...change,
});
const first = version(1, { adoptedAt: '2026-09-01T08:00:00Z' });
const inForce = version(2, { adoptedAt: '2026-10-01T08:00:00Z', inForce: true });
const proposal = version(3, { origin: 'learned' });

describe('what is looked at', () => {
  test('is a fresh proposal, else what is in force', () => {
    expect(lookedAt([proposal, inForce, first], undefined)).toBe(proposal);
    expect(lookedAt([inForce, first], undefined)).toBe(inForce);
  });

  test('is not a proposal that was passed over', () => {
    const passedOver = version(1, { origin: 'learned' });
    expect(lookedAt([inForce, passedOver], undefined)).toBe(inForce);
  });

  test('is what the address names, and nothing when there is no such version', () => {
    expect(lookedAt([inForce, first], '1')).toBe(first);
    expect(lookedAt([inForce, first], '9')).toBeUndefined();
  });

  test('is held against what is in force, and that against the one before it', () => {
    expect(comparedWith([proposal, inForce, first], proposal)).toBe(inForce);
    expect(comparedWith([proposal, inForce, first], inForce)).toBe(first);
    expect(comparedWith([version(1, { inForce: true, adoptedAt: '2026-09-01' })], inForce)).toBeDefined();
  });
});

describe('what may be done', () => {
  test('a proposal is adopted, an earlier version returned to, with or without a pin', () => {
    expect(actionsOn(proposal, [proposal, inForce, first])).toEqual(['adopt', 'adoptPinned']);
    expect(actionsOn(first, [proposal, inForce, first])).toEqual(['return', 'adoptPinned']);
  });

  test('what is in force can be pinned, and what is pinned let loose', () => {
    const pinned = { ...inForce, pinned: true };
    expect(actionsOn(inForce, [inForce, first])).toEqual(['pin']);
    expect(actionsOn(pinned, [pinned, first])).toEqual(['unpin']);
  });

  test('nothing is adopted past a pin', () => {
    const pinned = { ...inForce, pinned: true };
    expect(actionsOn(proposal, [proposal, pinned, first])).toEqual([]);
  });

  test('each version says what it is', () => {
    expect([proposal, inForce, first, version(4), { ...inForce, pinned: true }].map(stateOf)).toEqual([
      'proposal',
      'inForce',
      'earlier',
      'entered',
      'pinned',
    ]);
  });
});

describe('what would change', () => {
  test('stands stage by stage with before and after', () => {
    const [change] = stageChanges(profile(10), profile(12));
    expect(change?.figures.daysAtReference).toEqual({ before: 10, after: 12 });
    expect(stageChanges(undefined, profile(12))[0]?.figures.daysAtReference).toEqual({ before: undefined, after: 12 });
  });

  test('is only what a reader would see', () => {
    expect(differs(10.04, 10.01, 1)).toBe(false);
    expect(differs(10.04, 10.06, 1)).toBe(true);
    expect(differs(undefined, 10, 1)).toBe(false);
  });

  test('days of all stages add up', () => {
    expect(wholeDays([stage(5), stage(9.5)])).toBe(14.5);
  });
});

describe('what past batches say of a version', () => {
  const lead = (n: number, inForceMaeDays: number, versionMaeDays: number) => ({ n, inForceMaeDays, versionMaeDays });

  test('counts each lead by its batches: ten cases half a day better outweigh two a day worse', () => {
    expect(forecastVerdict([lead(10, 2, 1.5), lead(2, 2, 3)])).toBe('betterPast');
    expect(forecastVerdict([lead(10, 1.5, 2), lead(2, 3, 2)])).toBe('worsePast');
  });

  test('a tenth of a day is no difference', () => {
    expect(forecastVerdict([lead(20, 1.5, 1.4)])).toBe('samePast');
  });

  test('few batches prove nothing, however far apart the errors', () => {
    expect(forecastVerdict([lead(7, 5, 1), lead(7, 4, 1)])).toBe('fewPast');
    expect(forecastVerdict([])).toBe('fewPast');
  });
});
