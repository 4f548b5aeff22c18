import { describe, expect, test } from 'vitest';
import type { WarningView } from '../shared/climate-types';
import { filterFrom, paramsFor, shownWarnings, spokenAs, undelivered, unseen } from './warnings-state';

const warning = (id: string, state: WarningView['state'], since: string): WarningView => ({
  id,
  kind: 'medium-cold',
  site: 'north',
  house: 'n-1',
  batch: null,
  quantity: null,
  state,
  since,
  raisedAt: since,
  until: null,
  worst: 17.2,
  limit: 20,
  unit: 'Cel',
  batches: [],
  text: '',
  acknowledgedAt: null,
  acknowledgedBy: null,
  acknowledgement: null,
  deliveries: [],
});
const all = [
  warning('ended', 'ended', '2026-11-25T10:00:00Z'),
  warning('seen', 'acknowledged', '2026-11-25T09:00:00Z'),
  warning('older', 'lasting', '2026-11-24T09:00:00Z'),
  warning('newer', 'lasting', '2026-11-25T08:00:00Z'),
];

test('what nobody has seen comes first, the newest first, and what ended only in the log', () => {
  expect(shownWarnings(all, 'open').map(({ id }) => id)).toEqual(['newer', 'older', 'seen']);
  expect(shownWarnings(all, 'all').map(({ id }) => id)).toEqual(['newer', 'older', 'seen', 'ended']);
});

test('the bell counts what lasts and nobody has seen', () => {
  expect(unseen(all)).toBe(2);
});

test('figures are said in the words of their unit, and a new unit is not guessed at', () => {
  expect(spokenAs('Cel')).toBe('medium-temperature');
  expect(spokenAs('furlong')).toBeUndefined();
  expect(spokenAs(null)).toBeUndefined();
});

describe('the address', () => {
  test('carries house and scope and leaves the site alone', () => {
    const params = new URLSearchParams('site=north&house=n-1&scope=all');
    expect(filterFrom(params)).toEqual({ site: 'north', house: 'n-1', scope: 'all' });
    expect(paramsFor({ site: 'north', house: undefined, scope: 'open' }, params).toString()).toBe('site=north');
  });
});

test('a letter that failed and is still to be delivered is named', () => {
  const delivery = { channel: 'mail', dueAt: '', attempts: 2, lastError: 'no answer', deliveredAt: null };
  expect(undelivered({ deliveries: [delivery, { ...delivery, channel: 'hook', deliveredAt: 'x' }] })).toEqual(['mail']);
});
