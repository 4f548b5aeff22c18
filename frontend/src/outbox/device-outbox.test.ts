import { describe, expect, test } from 'vitest';
import { Unreachable } from '../shared/problem';
import { entry, isLossOf, loss, outboxAt, plantsOf, reading, refusal, Server, until } from './outbox-fixture';
import { unsentCount } from './outbox-state';

describe('sending', () => {
  test('goes in the order of the presses', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    await Promise.all([1, 2, 3, 4, 5].map((plants) => outbox.add(entry('B1', loss(plants)))));
    const view = await until(outbox, (v) => v.sent.length === 5);
    expect(plantsOf(server.arrived)).toEqual([1, 2, 3, 4, 5]);
    expect(view.waiting).toEqual([]);
  });

  test('an entry whose answer was lost happens once', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.loseAnswers = true;
    await outbox.add(entry('B1', loss(3)));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    expect(unsentCount(outbox.current())).toBe(1);
    server.loseAnswers = false;
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual([3]);
    expect(new Set(server.keys).size).toBe(1);
    expect(outbox.current().waiting).toEqual([]);
  });

  test('what was not sent is there after the page was closed', async () => {
    const server = new Server();
    const store = 'survives';
    const before = outboxAt(server, store);
    server.fail = () => new Unreachable('no network');
    await before.add(entry('B1', loss(7)));
    await until(before, (v) => v.nextTryMs !== undefined);
    await before.close();

    server.fail = () => undefined;
    const after = outboxAt(server, store);
    expect(after.current().read).toBe(false);
    await after.start();
    await until(after, (v) => v.sent.length === 1);
    expect(plantsOf(server.arrived)).toEqual([7]);
  });

  test('without network everything waits, in its order', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = () => new Unreachable('no network');
    await outbox.add(entry('B1', loss(1)));
    await outbox.add(entry('B2', loss(2)));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    server.fail = () => undefined;
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual([1, 2]);
  });
});

describe('what was read by hand', () => {
  test('waits without a network beside what else was pressed, and arrives once', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = () => new Unreachable('no network');
    await outbox.add(reading(21.5));
    await outbox.add(entry('B1', loss(2)));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    expect(unsentCount(outbox.current())).toBe(2);
    server.fail = () => undefined;
    await outbox.send();
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual([21.5, 2]);
  });

  test('is not taken back by an opposite: there is none', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    const key = await outbox.add(reading(21.5));
    await until(outbox, (v) => v.sent.length === 1);
    await expect(outbox.undo(key, 'mistyped')).rejects.toThrow('cannot be taken back');
    expect(plantsOf(server.arrived)).toEqual([21.5]);
  });
});

describe('a refusal', () => {
  test('stays with its reason and lets the next one pass', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = (item) => (isLossOf(5)(item) ? refusal : undefined);
    await outbox.add(entry('B1', loss(5)));
    await outbox.add(entry('B1', loss(1)));
    const view = await until(outbox, (v) => v.sent.length === 1);
    expect(view.waiting[0]?.refusal).toEqual({
      status: 422,
      kind: 'more-than-alive',
      detail: '5 named, 2 alive',
      members: { asked: 5, alive: 2 },
    });
    expect(unsentCount(view)).toBe(0);
  });

  test('is mended under a new key', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = (item) => (isLossOf(5)(item) ? refusal : undefined);
    const key = await outbox.add(entry('B1', loss(5)));
    await until(outbox, (v) => v.waiting[0]?.refusal !== null && v.waiting.length === 1);
    await outbox.mend(key, entry('B1', loss(2)));
    const view = await until(outbox, (v) => v.sent.length === 1);
    expect(view.waiting).toEqual([]);
    expect(server.keys).toHaveLength(2);
    expect(server.keys[1]).not.toBe(key);
  });

  test('can be discarded; an entry that may have happened cannot', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = () => new Unreachable('no network');
    const key = await outbox.add(entry('B1', loss(5)));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    await outbox.discard(key);
    expect(outbox.current().waiting).toHaveLength(1);
    server.fail = () => refusal;
    await outbox.send();
    await outbox.discard(key);
    expect(outbox.current().waiting).toEqual([]);
  });
});

describe('undo', () => {
  test('of an acknowledged entry is a reversal of it', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    const key = await outbox.add(entry('B1', loss(3)));
    await until(outbox, (v) => v.sent.length === 1);
    expect(await outbox.undo(key, 'entered by mistake')).toBe('reversed');
    await until(outbox, (v) => v.sent.length === 2);
    expect(server.arrived[1]).toMatchObject({ entry: { kind: 'reversal', entry: 'e1', reason: 'entered by mistake' } });
  });

  test('of an entry whose answer is missing waits for it, then reverses what was recorded', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.loseAnswers = true;
    const key = await outbox.add(entry('B1', loss(3)));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    expect(await outbox.undo(key, 'entered by mistake')).toBe('waits');
    server.loseAnswers = false;
    await outbox.send();
    await until(outbox, (v) => v.sent.length === 2);
    expect(server.arrived[1]).toMatchObject({ entry: { kind: 'reversal', entry: 'e1' } });
  });

  test('of an entry that turns out refused leaves nothing behind', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = () => new Unreachable('no network');
    const key = await outbox.add(entry('B1', loss(5)));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    await outbox.undo(key, 'entered by mistake');
    server.fail = () => refusal;
    await outbox.send();
    expect(outbox.current().waiting).toEqual([]);
    expect(server.arrived).toEqual([]);
  });

  test('of an entry that never left takes it back', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = () => new Unreachable('no network');
    await outbox.add(entry('B1', loss(1)));
    const second = await outbox.add(entry('B1', loss(2)));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    expect(await outbox.undo(second, 'entered by mistake')).toBe('removed');
    server.fail = () => undefined;
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual([1]);
  });
});
