import { describe, expect, test } from 'vitest';
import { monthSpan, monthsUntil, NO_DETAILS, treatmentOf, type TreatmentDraft } from './treatments-state';

const DRAFT: TreatmentDraft = {
  house: 'n-1',
  batch: '',
  purpose: 'prevention',
  product: ' as on the container ',
  rate: '1 mL per L',
  appliedBy: 'A. Grower',
  date: '2026-11-25',
  time: '830',
  reentryHours: '4,5',
  note: '',
  ...NO_DETAILS,
};

describe('what is typed', () => {
  // Amsterdam is one hour ahead of UTC in November.
  test('is sent as it stands on the label, at the time of the site', () => {
    expect(treatmentOf(DRAFT, 'Europe/Amsterdam')).toEqual({
      treatment: {
        house: 'n-1',
        purpose: 'prevention',
        product: 'as on the container',
        rate: '1 mL per L',
        appliedBy: 'A. Grower',
        appliedAt: '2026-11-25T07:30:00.000Z',
        reentryHours: 4.5,
      },
    });
  });

  test('is marked where something is missing or cannot be read; a re-entry interval is never assumed', () => {
    const draft = { ...DRAFT, house: '', product: ' ', rate: '', date: 'soon', reentryHours: '' };
    expect(treatmentOf(draft, undefined)).toEqual({
      faults: { house: 'choose', product: 'needed', rate: 'needed', date: 'noDate', reentryHours: 'needed' },
    });
    expect(treatmentOf({ ...DRAFT, reentryHours: 'a day', time: 'noon' }, undefined)).toEqual({
      faults: { time: 'noTime', reentryHours: 'number' },
    });
  });
});

describe('what local rules ask for', () => {
  test('is sent where it is said, an area in square metres', () => {
    const said = treatmentOf({ ...DRAFT, target: ' thrips ', weather: 'calm', area: '1000' }, 'UTC', 'in');
    // A foot is 0.3048 m: 1 000 square feet are 92.90304 m².
    expect(said).toMatchObject({ treatment: { target: 'thrips', weather: 'calm', areaM2: 92.903 } });
    expect('treatment' in said && Object.keys(said.treatment)).not.toContain('totalUsed');
    expect(treatmentOf({ ...DRAFT, area: '0' }, 'UTC')).toEqual({ faults: { area: 'noArea' } });
    expect(treatmentOf({ ...DRAFT, area: 'half' }, 'UTC')).toEqual({ faults: { area: 'noArea' } });
  });
});

describe('the record of a month', () => {
  test('begins and ends with the clocks of the site, over the change of clocks and of the year', () => {
    expect(monthSpan('2026-10', 'Europe/Amsterdam')).toEqual({
      from: '2026-09-30T22:00:00.000Z',
      to: '2026-10-31T23:00:00.000Z',
    });
    expect(monthSpan('2026-12', 'UTC')).toEqual({ from: '2026-12-01T00:00:00.000Z', to: '2027-01-01T00:00:00.000Z' });
    expect(monthSpan('2026-13', 'UTC')).toBeUndefined();
    expect(monthSpan(undefined, 'UTC')).toBeUndefined();
  });

  test('can be had of this month and those before', () => {
    expect(monthsUntil('2026-02-28', 4)).toEqual(['2026-02', '2026-01', '2025-12', '2025-11']);
  });
});
