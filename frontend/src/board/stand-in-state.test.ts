import { describe, expect, it } from 'vitest';
import type { BoardRow } from '../shared/api-types';
import { short } from './short-lines';
import { standIns } from './stand-in-state';

const row = (variety: string, trayFormat: string, site: string, open: number, crop = 'mint'): BoardRow => ({
  variety,
  varietyName: `The ${variety}`,
  crop,
  cropName: crop,
  trayFormat,
  site,
  faulty: [],
  cells: [
    {
      week: '2026-W49',
      date: site === 'north' ? '2026-11-30' : '2026-12-02',
      ready: open,
      promised: 0,
      open,
      likely: open,
      atRisk: 0,
      lessSure: 0,
    },
  ],
});
const asked = short(1, { variety: 'spear', trayFormat: 'T72', site: 'north', asked: 10 });

describe('what could stand in for a line that is short', () => {
  it('is the same at another site, in another format, or another variety of the crop, with as many trays', () => {
    const rows = [
      row('spear', 'T72', 'north', 3),
      row('apple', 'T72', 'north', 40),
      row('spear', 'T50', 'north', 10),
      row('spear', 'T72', 'south', 12),
    ];
    expect(standIns(rows, asked).map(({ kind, item, shipOn, open }) => [kind, item, shipOn, open])).toEqual([
      ['site', 'spear~T72~south', '2026-12-02', 12],
      ['format', 'spear~T50~north', '2026-11-30', 10],
      ['variety', 'apple~T72~north', '2026-11-30', 40],
    ]);
  });

  it('is nothing with too few trays, of another crop, or differing twice', () => {
    expect(
      standIns(
        [
          row('spear', 'T72', 'north', 3),
          row('spear', 'T72', 'south', 9),
          row('rose', 'T72', 'north', 50, 'rose'),
          row('apple', 'T72', 'south', 50),
          row('spear', 'T50', 'south', 50),
        ],
        asked,
      ),
    ).toEqual([]);
  });

  it('is of each kind the two with the most open', () => {
    const rows = [5, 30, 20, 10].map((open, i) => row('spear', 'T72', `site-${i}`, open));
    expect(standIns(rows, asked).map(({ open }) => open)).toEqual([30, 20]);
  });
});
