import { describe, expect, it } from 'vitest';
import type { BatchView, EntryView } from '../shared/api-types';
import { entriesSince, figuresSince } from './batch-since-state';

const THEN = {
  stage: 'CALLUS',
  house: 'h1',
  trays: 10,
  plants: { alive: 700 },
  // 00:30 and 23:30 UTC are the evenings of the 19th and of the 20th in New York.
  outlook: { readyAt: { p50: '2026-11-20T00:30:00Z' }, saleableTrays: { p50: 9 } },
} as BatchView;

function changed(change: object): BatchView {
  return { ...THEN, ...change };
}

describe('what changed in a batch since then', () => {
  it('names each figure that moved, as it was and as it is, in the order of the page', () => {
    const now = changed({
      plants: { alive: 650 },
      house: 'h2',
      outlook: { ...THEN.outlook, saleableTrays: { p50: 8 } },
    });
    expect(figuresSince(THEN, now, 'UTC')).toEqual([
      { figure: 'alive', before: 700, after: 650 },
      { figure: 'house', before: 'h1', after: 'h2' },
      { figure: 'saleable', before: 9, after: 8 },
    ]);
    expect(figuresSince(THEN, THEN, 'UTC')).toEqual([]);
  });

  it('takes the day of readiness by the clock of the site, and no less than a day for a change', () => {
    const now = changed({ outlook: { ...THEN.outlook, readyAt: { p50: '2026-11-20T23:30:00Z' } } });
    expect(figuresSince(THEN, now, 'UTC')).toEqual([]);
    expect(figuresSince(THEN, now, 'America/New_York').map(({ figure }) => figure)).toEqual(['ready']);
  });

  it('says that there is no outlook any more', () => {
    expect(figuresSince(THEN, changed({ outlook: null }), 'UTC')).toEqual([
      { figure: 'ready', before: '2026-11-20T00:30:00Z', after: null },
      { figure: 'saleable', before: 9, after: null },
    ]);
  });

  it('lists what happened after the moment, newest first; what happened at it was there', () => {
    const at = (id: string, happenedAt: string) => ({ id, happenedAt, position: 1 }) as EntryView;
    const entries = [
      at('at', '2026-11-18T12:00:00Z'),
      at('later', '2026-11-18T12:00:01Z'),
      at('last', '2026-11-19T12:00:00Z'),
    ];
    expect(entriesSince(entries, '2026-11-18T12:00:00Z').map(({ id }) => id)).toEqual(['last', 'later']);
  });
});
