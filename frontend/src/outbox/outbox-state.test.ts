import { describe, expect, test } from 'vitest';
import { ANA, BEN, check, DONE, entry, loss } from './outbox-fixture';
import {
  nextToSend,
  outcomeOf,
  unsentOf,
  waitingOfOthers,
  waitMs,
  type OutboxView,
  type Waiting,
} from './outbox-state';

describe('the queue', () => {
  const item = (seq: number, change: Partial<Waiting> = {}): Waiting => ({
    seq,
    key: `k${seq}`,
    message: entry('B1', loss(seq)),
    undoes: null,
    attempts: 0,
    refusal: null,
    by: ANA,
    ...change,
  });

  test('passes over refused items, undos that wait, and batches that are held', () => {
    const refused = item(1, { refusal: { status: 422, kind: 'x', detail: '', members: {} } });
    const queue = [item(4, { message: entry('B2', loss(4)) }), item(3), item(2, { undoes: 'k9' }), refused];
    expect(nextToSend(queue, new Set(), 'ana')?.seq).toBe(3);
    expect(nextToSend([item(4, { message: entry('B2', loss(4)) }), item(3)], new Set(['B1']), 'ana')?.seq).toBe(4);
  });

  test('passes over what another person pressed, and what was pressed while nobody was signed in', () => {
    const queue = [item(1), item(2, { by: null }), item(3, { by: undefined }), item(4, { by: BEN })];
    expect(nextToSend(queue, new Set(), 'ben')?.seq).toBe(4);
    expect(nextToSend(queue.slice(0, 3), new Set(), 'ben')).toBeUndefined();
  });

  test('says what is whose', () => {
    const refused = item(5, { refusal: { status: 422, kind: 'x', detail: '', members: {} } });
    const waiting = [item(1), item(2, { by: BEN }), item(3), item(4, { by: undefined }), refused];
    const view = { waiting } as unknown as OutboxView;
    expect(unsentOf(view, 'ana').map(({ seq }) => seq)).toEqual([1, 3]);
    expect(waitingOfOthers(view, 'ana').map(({ by, items }) => [by, items.map(({ seq }) => seq)])).toEqual([
      [BEN, [2]],
      [null, [4]],
    ]);
    expect(waitingOfOthers(view, undefined).map(({ by }) => by)).toEqual([ANA, BEN, null]);
  });

  test('only a 4xx about the entry itself takes it out', () => {
    expect([400, 403, 404, 409, 413, 422].map(outcomeOf)).toEqual(Array(6).fill('refused'));
    expect([undefined, 401, 408, 425, 429, 502, 503, 504].map(outcomeOf)).toEqual(Array(8).fill('stop'));
    expect(outcomeOf(500)).toBe('hold-lane');
  });

  test('waits longer after each pass that failed, up to a minute', () => {
    expect([1, 2, 3, 4, 5, 6, 7].map(waitMs)).toEqual([2000, 4000, 8000, 16000, 32000, 60000, 60000]);
  });

  test('lets no check of a batch overtake what was pressed of that batch before', () => {
    const queue = [
      item(1),
      item(2, { message: check(DONE, 'count.B1', 'B1') }),
      item(3, { message: check(DONE, 'scouting.H1') }),
    ];
    expect(nextToSend(queue, new Set(['B1']), 'ana')?.seq).toBe(3);
  });
});
