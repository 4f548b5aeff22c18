import { describe, expect, test } from 'vitest';
import { byRole, cellOf, sameGrants, toggled, unknownSites } from './grants-state';
import type { Grant } from './people-types';

const north: Grant = { role: 'PRODUCTION', site: 'north' };
const south: Grant = { role: 'PRODUCTION', site: 'south' };
const everywhere: Grant = { role: 'PRODUCTION', site: null };
const sales: Grant = { role: 'SALES', site: null };

describe('a role at a site', () => {
  test('is given, and taken again', () => {
    expect(toggled([sales], 'PRODUCTION', 'north')).toEqual([sales, north]);
    expect(toggled([sales, north], 'PRODUCTION', 'north')).toEqual([sales]);
  });

  test('given for all sites covers each and takes the place of the single ones', () => {
    const all = toggled([north, sales, south], 'PRODUCTION', null);
    expect(all).toEqual([sales, everywhere]);
    expect(cellOf(all, 'PRODUCTION', 'south')).toEqual({ given: true, covered: true });
    expect(toggled(all, 'PRODUCTION', 'south')).toBe(all);
  });

  test('taken for all sites leaves nothing behind', () => {
    expect(toggled([everywhere, sales], 'PRODUCTION', null)).toEqual([sales]);
  });

  test('says nothing about other roles', () => {
    expect(cellOf([everywhere], 'MANAGER', 'north')).toEqual({ given: false, covered: false });
  });
});

test('grants are told by role, in the order of the columns', () => {
  expect(byRole([north, sales, south])).toEqual([
    { role: 'SALES', sites: [null] },
    { role: 'PRODUCTION', sites: ['north', 'south'] },
  ]);
  expect(byRole([north, everywhere])).toEqual([{ role: 'PRODUCTION', sites: [null] }]);
});

test('a site that is gone is still shown', () => {
  expect(unknownSites([north, south, sales], ['south'])).toEqual(['north']);
});

test('order makes no difference', () => {
  expect(sameGrants([north, sales], [sales, north])).toBe(true);
  expect(sameGrants([north], [south])).toBe(false);
});
