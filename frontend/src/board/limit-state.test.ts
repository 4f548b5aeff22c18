import { describe, expect, it } from 'vitest';
import type { CellPromise } from '../shared/api-types';
import { limitSum, promiseLists } from './limit-state';

const promise = (orderNumber: number, trays: number, inLimit: boolean, inWeek: boolean): CellPromise => ({
  order: `order-${orderNumber}`,
  orderNumber,
  line: 1,
  customer: 'Garden Row',
  shipOn: '2026-11-30',
  trays,
  shipped: 0,
  confidence: 0.9,
  chance: 0.93,
  kept: true,
  shortTrays: 0,
  inWeek,
  inLimit,
  lots: [],
});
const limitedBy = { dates: ['2026-11-30', '2026-12-07'], capacity: 28, promised: 14, confidence: 0.9 };

describe('an opened figure', () => {
  it('adds up: usable, less the promises that limit it, is open', () => {
    const promises = [promise(1, 6, true, true), promise(2, 8, true, false), promise(3, 5, false, false)];
    const sum = limitSum({ limitedBy, open: 14, promises });
    expect(sum).toEqual({ usable: 28, taken: 14, open: 14, tooFew: 0 });
    const { limiting } = promiseLists({ limitedBy, open: 14, promises });
    expect(limiting.reduce((all, { trays }) => all + trays, 0)).toBe(sum?.taken);
  });

  it('adds up where promises cannot all be kept: so many are too few', () => {
    expect(limitSum({ limitedBy: { ...limitedBy, capacity: 9 }, open: 0, promises: [] })).toEqual({
      usable: 9,
      taken: 14,
      open: 0,
      tooFew: 5,
    });
  });

  it('lists as promised in this week only what is promised in this week', () => {
    const promises = [promise(1, 6, true, true), promise(2, 8, true, false)];
    const { ofWeek, same } = promiseLists({ limitedBy, open: 14, promises });
    expect(ofWeek.map(({ orderNumber }) => orderNumber)).toEqual([1]);
    expect(same).toBe(false);
    expect(promiseLists({ limitedBy, open: 14, promises: [promise(1, 6, true, true)] }).same).toBe(true);
  });

  it('of a week that is over has no limit', () => {
    expect(limitSum({ limitedBy: null, open: 0, promises: [] })).toBeUndefined();
  });
});
