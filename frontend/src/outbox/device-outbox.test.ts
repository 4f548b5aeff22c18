import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { afterEach, describe, expect, test } from 'vitest';
import type { NewEntry } from '../shared/api-types';
import { Problem, Unreachable } from '../shared/problem';
import { Outbox, type Receipt } from './device-outbox';
import {
  nextToSend,
  outcomeOf,
  unsentCount,
  unsentOf,
  waitingOfOthers,
  waitMs,
  type Message,
  type OutboxView,
  type RoundAnswer,
  type Waiting,
} from './outbox-state';

const loss = (plants: number): NewEntry => ({
  kind: 'loss',
  plants,
  cause: 'rot',
  happenedAt: '2026-11-25T09:41:00.000Z',
});

const entry = (batch: string, what: NewEntry): Message => ({ to: 'batch', batch, batchName: 'Sage', entry: what });
const reading = (value: number): Message => ({
  to: 'reading',
  site: 'NORTH',
  houseName: 'House 1',
  reading: { house: 'N1', quantity: 'air-temperature', value, unit: 'Cel', at: '2026-11-25T09:41:00.000Z' },
});
const NOTHING = { key: '', message: entry('', loss(0)) } as Waiting;
const ANA = { name: 'ana', displayName: 'Ana Ruiz' };
const BEN = { name: 'ben', displayName: 'Ben Okafor' };

/** A server that keeps one result per key, as the real one does, and fails as it is told. */
class Server {
  readonly results = new Map<string, Receipt>();
  readonly arrived: Message[] = [];
  readonly keys: string[] = [];
  fail: (item: Waiting) => Error | undefined = () => undefined;
  /** Records, but the answer does not come back. */
  loseAnswers = false;
  /** Whose cookie the device has. */
  session: string | undefined = 'ana';
  /** Who recorded what, as the server saw it. */
  readonly recordedBy: string[] = [];
  readonly signedIn = (): Promise<string | undefined> =>
    this.fail(NOTHING) instanceof Unreachable
      ? Promise.reject(new Unreachable('no network'))
      : Promise.resolve(this.session);

  readonly post = (item: Waiting): Promise<Receipt> => {
    this.keys.push(item.key);
    const failure = this.fail(item);
    if (failure) return Promise.reject(failure);
    let receipt = this.results.get(item.key);
    if (!receipt) {
      receipt = { id: `e${this.results.size + 1}` };
      this.results.set(item.key, receipt);
      this.arrived.push(item.message);
      this.recordedBy.push(this.session ?? 'nobody');
    }
    return this.loseAnswers ? Promise.reject(new Unreachable('lost')) : Promise.resolve(receipt);
  };
}

const refusal = new Problem(422, '/problems/more-than-alive', 'More than alive', '5 named, 2 alive', {
  asked: 5,
  alive: 2,
});

let open: Outbox[] = [];
let stores = 0;

function outboxAt(server: Server, store = `test-${++stores}`, presses = () => (server.session === 'ben' ? BEN : ANA)) {
  const made = new Outbox({ post: server.post, pressedBy: presses, signedIn: server.signedIn, store });
  open.push(made);
  return made;
}

afterEach(async () => {
  for (const each of open) await each.close();
  open = [];
});

function until(outbox: Outbox, holds: (view: OutboxView) => boolean): Promise<OutboxView> {
  return new Promise((resolve) => {
    const look = () => {
      if (!holds(outbox.current())) return;
      stop();
      resolve(outbox.current());
    };
    const stop = outbox.subscribe(look);
    look();
  });
}

const plantsOf = (messages: readonly Message[]) =>
  messages.map((message) => {
    if (message.to === 'round') return message.answer.verb;
    if (message.to === 'reading') return message.reading.value;
    return message.entry.kind === 'loss' ? message.entry.plants : message.entry.kind;
  });
const isLossOf = (plants: number) => (item: Waiting) => plantsOf([item.message])[0] === plants;

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

const check = (answer: RoundAnswer, item = 'scouting.H1.2026-11-25', batch: string | null = null): Message => ({
  to: 'round',
  site: 'S1',
  item,
  batch,
  name: 'Scout',
  answer,
});
const DONE: RoundAnswer = {
  verb: 'done',
  body: { happenedAt: '2026-11-25T09:41:00.000Z', fungusGnats: 1, shoreFlies: 0 },
};
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

  test('about a batch does not overtake what was pressed of that batch before', () => {
    const at = (seq: number, message: Message): Waiting => ({
      seq,
      key: `k${seq}`,
      message,
      undoes: null,
      attempts: 0,
      refusal: null,
      by: ANA,
    });
    const queue = [
      at(1, entry('B1', loss(1))),
      at(2, check(DONE, 'count.B1', 'B1')),
      at(3, check(DONE, 'scouting.H1')),
    ];
    expect(nextToSend(queue, new Set(['B1']), 'ana')?.seq).toBe(3);
  });
});

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
    const outbox = new Outbox({
      post: async (item) => {
        if (server.keys.length === 0) await new Promise<void>((resolve) => (answer = resolve));
        return server.post(item);
      },
      pressedBy: () => ANA,
      signedIn: server.signedIn,
      store: `test-${++stores}`,
    });
    open.push(outbox);
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
});
