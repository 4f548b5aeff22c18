import { expect, test } from 'vitest';
import { floorAfterHandOver, initialsOf } from './account-state';

test.each([
  ['Ana Ruiz', 'AR'],
  ['  rosa  maría  vidal ', 'RV'],
  ['Élodie', 'É'],
  ['', ''],
])('%j is %j for short', (name, short) => {
  expect(initialsOf(name)).toBe(short);
});

test('the next person gets the site and not the batch', () => {
  expect(floorAfterHandOver(new URLSearchParams('site=a b&batch=B1&do=count'))).toBe('/floor?site=a+b');
  expect(floorAfterHandOver(new URLSearchParams('batch=B1'))).toBe('/floor');
});
