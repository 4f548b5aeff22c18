import { describe, expect, it } from 'vitest';
import type { Crop } from '../shared/api-types';
import { FIRST_FIGURES, isFolded, rangeOf, sourcesOf, startedFrom } from './crop-form-state';
import { bodyOf, draftOf, newItem, STAGES, type Item } from './setup-state';

const METRIC = { temperature: 'C', length: 'mm' } as const;
const AMERICAN = { temperature: 'F', length: 'in' } as const;

const SAGE: Crop = {
  code: 'sage',
  name: 'Sage',
  profile: {
    stages: STAGES.map((stage) => ({
      stage,
      daysAtReference: 7,
      referenceC: 22,
      minC: 10,
      optimumC: 26,
      maxC: 35,
      survivalMean: 0.97,
      survivalWeight: 60,
      form: 'BETA',
      source: 'common practice',
    })),
    rateSpread: 0.12,
    cellSpread: 0.14,
    holdDays: 12,
    note: 'two seasons',
    rates: { varieties: { 'sage-dusk': 1.06 }, sites: { north: 0.98 } },
    version: 4,
  },
};

describe('a crop that begins with another', () => {
  it('has its figures and sources, and none of the paces that were learned of it', () => {
    const item = startedFrom(SAGE, false, { ...draftOf('crops', newItem('crops'), METRIC), code: 'mint' });
    const made = bodyOf('crops', { ...draftOf('crops', item, METRIC), name: 'Mint' }, item, METRIC);
    const { stages, daysDoubt, rateSpread, cellSpread, holdDays, note } = SAGE.profile;
    const profile = { stages, daysDoubt, rateSpread, cellSpread, holdDays, note };
    expect(made).toEqual({ body: { code: 'mint', name: 'Mint', profile } });
  });

  it('is called as typed, and as a seeded profile is called only where nothing is typed', () => {
    expect(startedFrom(SAGE, false, { code: '', name: 'Mint' })).toMatchObject({ code: '', name: 'Mint' });
    expect(startedFrom(SAGE, true, { code: '', name: 'Mint' })).toMatchObject({ code: 'sage', name: 'Mint' });
  });
});

describe('the figures of a crop form', () => {
  it('are the days of three stages, and all else is folded away but code and name', () => {
    expect(FIRST_FIGURES).toHaveLength(3);
    expect(['code', 'name', ...FIRST_FIGURES].filter(isFolded)).toEqual([]);
    expect(['profile.stages.1.minC', 'profile.stages.2.source', 'profile.rateSpread'].every(isFolded)).toBe(true);
  });

  it('show spreads in percent and limits in °F to the half degree, and keep what was stored', () => {
    const item = SAGE as unknown as Item;
    const draft = draftOf('crops', item, AMERICAN);
    // 26 °C is 78.8 °F, 22 °C is 71.6 °F, 10 °C is 50 °F.
    expect(draft['profile.stages.0.optimumC']).toBe('79');
    expect(draft['profile.stages.0.referenceC']).toBe('71.5');
    expect(draft['profile.stages.0.minC']).toBe('50');
    expect([draft['profile.rateSpread'], draft['profile.cellSpread']]).toEqual(['12', '14']);
    const { version: counted, ...profile } = SAGE.profile;
    expect(counted).toBe(4);
    expect(bodyOf('crops', draft, item, AMERICAN)).toEqual({ body: { ...SAGE, profile } });
    const typed = { ...draft, 'profile.rateSpread': '15', 'profile.stages.0.minC': '59' };
    expect(bodyOf('crops', typed, item, AMERICAN)).toMatchObject({
      body: { profile: { rateSpread: 0.15, stages: [{ minC: 15 }, { minC: 10 }, { minC: 10 }] } },
    });
  });

  it('are refused with a range in the reader’s unit', () => {
    const refused = { members: { asked: 40, least: 10, most: 35 } };
    expect(rangeOf('profile.stages.1.optimumC', refused, 'C')).toEqual({ least: '10', most: '35' });
    expect(rangeOf('profile.stages.1.optimumC', refused, 'F')).toEqual({ least: '50', most: '95' });
    expect(rangeOf('profile.rateSpread', { members: { least: 0, most: 1 } }, 'F')).toEqual({ least: '0', most: '100' });
    expect(rangeOf('profile.stages.1.maxC', { members: { least: 10 } }, 'F')).toEqual({ least: '50' });
    expect(rangeOf('profile.holdDays', { members: {} }, 'F')).toBeUndefined();
  });
});

it('the sources of a seeded profile are said by what they are', () => {
  const common = 'common practice, no source';
  const seed = (source: string, note: string) => ({
    ...SAGE,
    profile: { ...SAGE.profile, stages: SAGE.profile.stages.map((stage) => ({ ...stage, source })), note },
  });
  const source = `daysAtReference: ${common} (rest of 3 weeks); optimumC: published, Wilkerson et al. 2005 (abstract); minC: ${common}`;
  expect(
    sourcesOf(seed(source, `rateSpread: ${common}; holdDays: ${common} (7 to 10 days). Water from below.`)),
  ).toEqual([
    { published: false, work: '', figures: ['daysAtReference', 'minC', 'rateSpread', 'holdDays'] },
    { published: true, work: 'Wilkerson et al. 2005', figures: ['optimumC'] },
  ]);
  expect(sourcesOf(seed('', ''))).toEqual([]);
});
