import { describe, expect, it } from 'vitest';
import type { CropRecord, LeadRecord } from '../shared/learning-types';
import {
  byRisingLead,
  comparisonOf,
  coveragePoints,
  doubtful,
  filterFrom,
  leadsWith,
  leanOf,
  missesOf,
  paramsFor,
  quarterOf,
  rangesOf,
} from './track-record-state';

describe('the address', () => {
  it('carries lead and crop, and leaves out what is usual', () => {
    const params = new URLSearchParams('site=north&lead=14&crop=salvia');
    expect(filterFrom(params)).toEqual({ leadDays: 14, crop: 'salvia' });
    expect(paramsFor({ leadDays: 7, crop: undefined }, params).toString()).toBe('site=north');
    expect(paramsFor({ leadDays: 3, crop: 'heuchera' }, new URLSearchParams()).toString()).toBe('lead=3&crop=heuchera');
  });

  it('takes a lead that is none for the usual one', () => {
    for (const lead of ['0', '-3', '2.5', 'soon', '999']) {
      expect(filterFrom(new URLSearchParams({ lead })).leadDays).toBe(7);
    }
  });

  it('offers the lead of a pasted link among the others', () => {
    expect(leadsWith(9)).toContain(9);
    expect(leadsWith(7).filter((lead) => lead === 7)).toHaveLength(1);
  });
});

describe('the words', () => {
  it('call a lean of less than an hour level', () => {
    expect(leanOf(0.04)).toBe('level');
    expect(leanOf(0.4)).toBe('later');
    expect(leanOf(-0.4)).toBe('earlier');
  });

  it('say a skill as less or more error, never as a negative share', () => {
    expect(comparisonOf(0.42)).toEqual({ kind: 'less', share: 0.42 });
    expect(comparisonOf(-0.1)).toEqual({ kind: 'more', share: 0.1 });
    expect(comparisonOf(0.001)).toEqual({ kind: 'same' });
  });
});

describe('coverage', () => {
  it('leaves out shares that are not known', () => {
    expect(coveragePoints({ '0.5': 0.48, '0.8': null, '0.9': 0.93 })).toEqual([
      { stated: 0.5, held: 0.48 },
      { stated: 0.9, held: 0.93 },
    ]);
  });
});

describe('misses', () => {
  const record = {
    batch: 'B1',
    crop: 'salvia',
    readyAt: '2026-11-10T12:00:00Z',
    seenReadyAt: '2026-11-11T08:00:00Z',
    predicted: { p10: '2026-11-08T12:00:00Z', p50: '2026-11-09T00:00:00Z', p90: '2026-11-10T00:00:00Z' },
    errorDays: 1.5,
  };

  it('are days from the day the batch was ready, and say whether the range held', () => {
    expect(missesOf([record])).toEqual([
      { batch: 'B1', readyAt: record.readyAt, p10: -2, p50: -1.5, p90: -0.5, held: false },
    ]);
  });

  it('stand in the order in which the batches became ready', () => {
    const earlier = { ...record, batch: 'B0', readyAt: '2026-11-01T12:00:00Z' };
    expect(missesOf([record, earlier]).map(({ batch }) => batch)).toEqual(['B0', 'B1']);
  });

  it('know nothing where no date was in sight', () => {
    const unseen = { ...record, predicted: { p10: '2026-11-08T12:00:00Z', p50: null, p90: null } };
    expect(missesOf([unseen])[0]).toMatchObject({ p50: null, p90: null, held: null });
  });
});

it('leads are drawn in rising order whatever order they came in', () => {
  const at = (leadDays: number) => ({ leadDays }) as LeadRecord;
  expect(byRisingLead([at(14), at(1), at(7)]).map(({ leadDays }) => leadDays)).toEqual([1, 7, 14]);
});

describe('crops whose dates cannot be trusted', () => {
  const crop = (name: string, verdict: CropRecord['verdict']) => ({ crop: name, verdict }) as CropRecord;

  it('stand with the worst first; those that hold, or of which that is not known yet, are left out', () => {
    const crops = [crop('a', 'too-few'), crop('b', 'holds'), crop('c', 'too-wide'), crop('d', 'too-narrow')];
    expect(doubtful(crops).map((each) => each.crop)).toEqual(['d', 'c']);
  });
});

it.each([
  ['2026-01-01', 1],
  ['2026-04-01', 2],
  ['2026-10-01', 4],
] as const)('%s begins quarter %i', (from, quarter) => {
  expect(quarterOf(from)).toEqual([quarter, '2026']);
});

it('ranges are told to be other than the model’s where one decimal shows it', () => {
  expect(rangesOf(null)).toBe('unheld');
  expect(rangesOf(1.04)).toBe('same');
  expect(rangesOf(1.3)).toBe('other');
  expect(rangesOf(0.8)).toBe('other');
});
