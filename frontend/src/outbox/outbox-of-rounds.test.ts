import { describe, expect, test } from 'vitest';
import { Unreachable } from '../shared/problem';
import { check, DONE, entry, loss, outboxAt, plantsOf, refusal, Server, until } from './outbox-fixture';
import type { RoundAnswer } from './outbox-state';

const SKIPPED: RoundAnswer = { verb: 'skipped', body: { reason: 'no time', happenedAt: '2026-11-25T09:42:00.000Z' } };

describe('an answer of the round', () => {
  test('waits without network, survives the page and is sent once, in its order', async () => {
    const server = new Server();
    const store = 'round-survives';
    const before = outboxAt(server, store);
    server.fail = () => new Unreachable('no network');
    await before.add(check(DONE, 'a'));
    await before.add(entry('B1', loss(2)));
    await before.add(check(SKIPPED, 'b'));
    await until(before, (v) => v.nextTryMs !== undefined);
    await before.close();

    server.fail = () => undefined;
    const after = outboxAt(server, store);
    await after.start();
    await until(after, (v) => v.sent.length === 3);
    expect(plantsOf(server.arrived)).toEqual(['done', 2, 'skipped']);
    expect(new Set(server.keys).size).toBe(3);
  });

  test('whose reply was lost happens once', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.loseAnswers = true;
    await outbox.add(check(DONE));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    server.loseAnswers = false;
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual(['done']);
  });

  test('is taken back by reopening the check, once it is known to have arrived', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.loseAnswers = true;
    const key = await outbox.add(check(DONE));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    expect(await outbox.undo(key, 'closed by mistake')).toBe('waits');
    server.loseAnswers = false;
    await outbox.send();
    await until(outbox, (v) => v.sent.length === 2);
    expect(server.arrived[1]).toEqual(check({ verb: 'undo', body: { reason: 'closed by mistake' } }));
  });

  test('that the server will not take stays with its reason, and lets those of other batches pass', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = (item) => (item.message.to === 'round' ? refusal : undefined);
    await outbox.add(check(DONE));
    await outbox.add(entry('B1', loss(1)));
    const view = await until(outbox, (v) => v.sent.length === 1);
    expect(view.waiting[0]?.refusal?.kind).toBe('more-than-alive');
  });
});
