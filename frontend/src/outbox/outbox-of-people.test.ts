import { openDB } from 'idb';
import { describe, expect, test } from 'vitest';
import { Problem, Unreachable } from '../shared/problem';
import { ANA, entry, loss, NOTHING, outboxAt, outboxOf, plantsOf, Server, until } from './outbox-fixture';
import { waitingOfOthers } from './outbox-state';

describe('what an earlier version kept', () => {
  test('is kept, belongs to nobody, and goes once somebody takes it over', async () => {
    const store = 'from-version-1';
    const old = await openDB(store, 1, {
      upgrade(db) {
        db.createObjectStore('waiting', { keyPath: 'seq', autoIncrement: true }).createIndex('key', 'key', {
          unique: true,
        });
        db.createObjectStore('sent', { keyPath: 'key' }).createIndex('seq', 'seq');
      },
    });
    await old.add('waiting', {
      key: 'k1',
      batch: 'B1',
      batchName: 'Sage',
      entry: loss(4),
      undoes: null,
      attempts: 1,
      refusal: null,
    });
    await old.put('sent', {
      key: 'k0',
      seq: 0,
      batch: 'B1',
      batchName: 'Sage',
      entry: loss(3),
      id: 'e0',
      position: 9,
      sentAtMs: 1,
    });
    old.close();

    const server = new Server();
    const outbox = outboxAt(server, store);
    await outbox.start();
    await outbox.send();
    expect(server.keys).toEqual([]);
    expect(waitingOfOthers(outbox.current(), 'ana')).toMatchObject([{ by: null, items: [{ key: 'k1' }] }]);
    await outbox.takeOver('k1');
    const view = await until(outbox, (v) => v.sent.length === 2);
    expect(server.arrived).toEqual([entry('B1', loss(4))]);
    expect(view.sent.map(({ message }) => message)).toEqual([entry('B1', loss(4)), entry('B1', loss(3))]);
  });
});

describe('whose entry it is', () => {
  const signedOut = new Problem(401, '/problems/unauthenticated', 'Signed out', '', {});

  test('nothing is sent while nobody is signed in, and nothing is thrown out of the queue', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.session = undefined;
    await outbox.add(entry('B1', loss(3)));
    await outbox.send();
    expect(server.keys).toEqual([]);
    server.session = 'ana';
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual([3]);
  });

  test('a session that ends in the middle of a pass leaves the rest waiting', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = () => signedOut;
    await outbox.add(entry('B1', loss(3)));
    const view = await until(outbox, (v) => v.nextTryMs !== undefined);
    expect(view.waiting).toMatchObject([{ refusal: null, by: ANA }]);
  });

  test('what Ana pressed is not sent while Ben is signed in, and goes under her name when she is back', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = () => new Unreachable('no network');
    await outbox.add(entry('B1', loss(3)));
    await until(outbox, (v) => v.nextTryMs !== undefined);

    server.fail = () => undefined;
    server.session = 'ben';
    await outbox.add(entry('B1', loss(4)));
    await until(outbox, (v) => v.sent.length === 1);
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual([4]);
    expect(outbox.current().waiting).toMatchObject([{ by: ANA, message: { entry: { plants: 3 } } }]);

    server.session = 'ana';
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual([4, 3]);
    expect(server.recordedBy).toEqual(['ben', 'ana']);
  });

  test('a page that has not heard of a hand-over in another tab still sends under no wrong name', async () => {
    const server = new Server();
    const stale = outboxAt(server, undefined, () => ANA);
    server.session = 'ben';
    await stale.add(entry('B1', loss(3)));
    await stale.send();
    expect(server.keys).toEqual([]);
    expect(stale.current().waiting).toMatchObject([{ by: ANA, attempts: 0 }]);
  });

  test('Ben can take over what he has been shown; it goes under his name and a new key, its undo with it', async () => {
    const server = new Server();
    const outbox = outboxAt(server);
    server.fail = (item) => (item === NOTHING ? undefined : new Unreachable('lost'));
    const key = await outbox.add(entry('B1', loss(3)));
    await until(outbox, (v) => v.nextTryMs !== undefined);
    await outbox.undo(key, 'entered by mistake');

    server.fail = () => undefined;
    server.session = 'ben';
    await outbox.takeOver(key);
    const view = await until(outbox, (v) => v.sent.length === 2);
    expect(view.waiting).toEqual([]);
    expect(server.recordedBy).toEqual(['ben', 'ben']);
    expect(server.keys.at(-2)).not.toBe(key);
    expect(server.arrived[1]).toMatchObject({ entry: { kind: 'reversal', entry: 'e1' } });
  });

  test('signing out waits for the entry under way and lets no other begin', async () => {
    const server = new Server();
    let answer: () => void = () => undefined;
    const outbox = outboxOf({
      post: async (item) => {
        if (server.keys.length === 0) await new Promise<void>((resolve) => (answer = resolve));
        return server.post(item);
      },
      pressedBy: () => ANA,
      signedIn: server.signedIn,
    });
    await outbox.add(entry('B1', loss(1)));
    await until(outbox, (v) => v.sending);
    await outbox.add(entry('B1', loss(2)));
    const out = outbox.betweenSends(() => {
      const before = plantsOf(server.arrived);
      server.session = undefined;
      return Promise.resolve(before);
    });
    answer();
    expect(await out).toEqual([1]);
    await outbox.send();
    expect(plantsOf(server.arrived)).toEqual([1]);
    expect(outbox.current().waiting).toHaveLength(1);
  });
});
