import 'fake-indexeddb/auto';
import { afterEach } from 'vitest';
import type { NewEntry } from '../shared/api-types';
import { Problem, Unreachable } from '../shared/problem';
import { Outbox, type OutboxSettings, type Receipt } from './device-outbox';
import type { Message, OutboxView, RoundAnswer, Waiting } from './outbox-state';

/** What the tests of the outbox share: a device, the server it sends to, and what is pressed. */

export const loss = (plants: number): NewEntry => ({
  kind: 'loss',
  plants,
  cause: 'rot',
  happenedAt: '2026-11-25T09:41:00.000Z',
});

export const entry = (batch: string, what: NewEntry): Message => ({
  to: 'batch',
  batch,
  batchName: 'Sage',
  entry: what,
});
export const reading = (value: number): Message => ({
  to: 'reading',
  site: 'NORTH',
  houseName: 'House 1',
  reading: { house: 'N1', quantity: 'air-temperature', value, unit: 'Cel', at: '2026-11-25T09:41:00.000Z' },
});
export const NOTHING = { key: '', message: entry('', loss(0)) } as Waiting;
export const ANA = { name: 'ana', displayName: 'Ana Ruiz' };
export const BEN = { name: 'ben', displayName: 'Ben Okafor' };

/** A server that keeps one result per key, as the real one does, and fails as it is told. */
export class Server {
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

export const refusal = new Problem(422, '/problems/more-than-alive', 'More than alive', '5 named, 2 alive', {
  asked: 5,
  alive: 2,
});

let open: Outbox[] = [];
let stores = 0;

export function outboxAt(
  server: Server,
  store?: string,
  presses = () => (server.session === 'ben' ? BEN : ANA),
): Outbox {
  return outboxOf({ post: server.post, pressedBy: presses, signedIn: server.signedIn, ...(store ? { store } : {}) });
}

/** Closed after the test. */
export function outboxOf(parts: Omit<OutboxSettings, 'store'> & { readonly store?: string }): Outbox {
  const made = new Outbox({ store: `test-${++stores}`, ...parts });
  open.push(made);
  return made;
}

afterEach(async () => {
  for (const each of open) await each.close();
  open = [];
});

export function until(outbox: Outbox, holds: (view: OutboxView) => boolean): Promise<OutboxView> {
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

export const plantsOf = (messages: readonly Message[]) =>
  messages.map((message) => {
    if (message.to === 'round') return message.answer.verb;
    if (message.to === 'reading') return message.reading.value;
    return message.entry.kind === 'loss' ? message.entry.plants : message.entry.kind;
  });
export const isLossOf = (plants: number) => (item: Waiting) => plantsOf([item.message])[0] === plants;

export const check = (answer: RoundAnswer, item = 'scouting.H1.2026-11-25', batch: string | null = null): Message => ({
  to: 'round',
  site: 'S1',
  item,
  batch,
  name: 'Scout',
  answer,
});
export const DONE: RoundAnswer = {
  verb: 'done',
  body: { happenedAt: '2026-11-25T09:41:00.000Z', fungusGnats: 1, shoreFlies: 0 },
};
