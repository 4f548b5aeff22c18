import { expect, test } from 'vitest';
import { formatsFor } from './formats';
import { homeZoneOf } from './home-zone';

const north = { code: 'N', timeZone: 'America/Denver' };
const south = { code: 'S', timeZone: 'America/Chicago' };

test('times without a site of their own are those of the chosen site, or of all sites where they share one', () => {
  expect(homeZoneOf([north, south], 'S')).toBe('America/Chicago');
  expect(homeZoneOf([north, { ...south, timeZone: 'America/Denver' }], undefined)).toBe('America/Denver');
  expect(homeZoneOf([north, south], undefined)).toBeUndefined();
});

test('a time says its own zone before any other', () => {
  const format = formatsFor({ language: 'en', temperature: 'C' }, 'America/Denver');
  expect(format.time('2026-11-25T16:41:00Z')).toBe('09:41');
  expect(format.dateTime('2026-11-25T16:41:00Z', 'America/Chicago')).toBe('25 Nov, 10:41');
});
