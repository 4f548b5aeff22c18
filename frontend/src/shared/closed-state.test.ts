import { expect, test } from 'vitest';
import { stillClosed, type ClosedHouse } from './closed-state';

const closed = (house: string, until: string): ClosedHouse => ({
  site: 'north',
  house,
  until,
  product: 'Guard 50',
  treatment: '00000000-0000-4000-8000-000000000001',
});

test('a house is closed until the very moment it opens, though the list was fetched before', () => {
  const houses = [closed('n-1', '2026-11-28T12:00:00Z'), closed('n-2', '2026-11-28T18:00:00Z')];

  expect([...stillClosed(houses, Date.parse('2026-11-28T11:59:59Z')).keys()]).toEqual(['n-1', 'n-2']);
  expect([...stillClosed(houses, Date.parse('2026-11-28T12:00:00Z')).keys()]).toEqual(['n-2']);
});
