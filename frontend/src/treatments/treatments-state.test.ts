import { describe, expect, test } from 'vitest';
import type { TreatmentView } from '../shared/climate-types';
import { closedHouses, treatmentOf, type TreatmentDraft } from './treatments-state';

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

test('a house is closed until its last interval ends; what was taken back closes nothing', () => {
  const treatment = (house: string, reentryAt: string, change: Partial<TreatmentView> = {}) =>
    ({ house, reentryAt, closed: true, reversedAt: null, ...change }) as TreatmentView;
  expect(
    closedHouses([
      treatment('n-2', '2026-11-25T12:00:00Z'),
      treatment('n-1', '2026-11-25T10:00:00Z'),
      treatment('n-2', '2026-11-25T18:00:00Z'),
      treatment('n-3', '2026-11-25T18:00:00Z', { reversedAt: '2026-11-25T09:00:00Z' }),
      treatment('n-4', '2026-11-25T08:00:00Z', { closed: false }),
    ]),
  ).toEqual([
    { house: 'n-1', until: '2026-11-25T10:00:00Z' },
    { house: 'n-2', until: '2026-11-25T18:00:00Z' },
  ]);
});
