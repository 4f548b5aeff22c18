import { expect, test } from 'vitest';
import { handReadings, NOTHING_READ } from './hand-readings-state';

const AT = '2026-11-25T16:41:00Z';

test('what was read goes in the unit it was read in, and what was not read is left out', () => {
  expect(handReadings({ ...NOTHING_READ, air: '71,5', moisture: '3' }, 'n-1', AT, 'F')).toEqual({
    readings: [
      { house: 'n-1', quantity: 'air-temperature', value: 71.5, unit: '[degF]', at: AT },
      { house: 'n-1', quantity: 'medium-moisture', value: 3, unit: '{level}', at: AT },
    ],
  });
});

test('nothing at all, or what is no number, is marked and kept', () => {
  expect(handReadings(NOTHING_READ, 'n-1', AT, 'C')).toEqual({ faults: { air: 'nothing' } });
  expect(handReadings({ ...NOTHING_READ, humidity: '8o' }, 'n-1', AT, 'C')).toEqual({
    faults: { humidity: 'notANumber' },
  });
});
