import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { RoundMessage, Sent } from '../outbox/outbox-state';
import { asPressed } from './rounds-state';

vi.stubGlobal('location', { origin: 'http://rootcast.test' });
const { roundOf } = await import('./rounds-api');

const ASKED = new Date('2026-11-25T09:00:00Z');
const CHECK = { id: 'look-B1', house: 'h1', batch: 'B1', task: 'look-callus', dueOn: '2026-11-25', state: 'due' };

beforeEach(() => vi.useFakeTimers({ now: ASKED }));
afterEach(() => vi.useRealTimers());

describe('a round that is long on its way', () => {
  test('does not open again what was sent after it was asked for', async () => {
    vi.stubGlobal('fetch', () => {
      vi.advanceTimersByTime(2_000);
      return Promise.resolve(Response.json([CHECK]));
    });
    const list = await roundOf('s1', '2026-11-25', new AbortController().signal);
    const message: RoundMessage = {
      to: 'round',
      site: 's1',
      item: CHECK.id,
      batch: CHECK.batch,
      name: 'Look for callus',
      answer: { verb: 'done', body: { happenedAt: ASKED.toISOString() } },
    };
    const sent: Sent = { key: 'k', seq: 1, id: CHECK.id, sentAtMs: ASKED.getTime() + 1_000, message };

    const shown = asPressed(list, { waiting: [], sent: [sent] }, '2026-11-25');

    expect(shown.map(({ state }) => state)).toEqual(['done']);
  });
});
