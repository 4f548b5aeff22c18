import { newKey } from '../shared/http';
import { Problem } from '../shared/problem';
import { openDeviceStore, type DeviceStore } from './device-store';
import {
  EMPTY_OUTBOX,
  laneOf,
  nextToSend,
  oppositeOf,
  outcomeOf,
  releasedBy,
  waitMs,
  type By,
  type Message,
  type OutboxView,
  type Refusal,
  type Sent,
  type Waiting,
} from './outbox-state';

/**
 * Keeps what was pressed on the device until the server acknowledges it.
 *
 * - `add` returns once the message is safe on the device; only then may a form close.
 * - Items go out one by one, oldest first, each under its own key; a lost answer is asked for again under that key.
 * - A refused item stays, with the reason, until a person mends or discards it.
 * - An entry is sent under the name of the person who pressed it, or not at all: before each pass the server is asked
 *   who is signed in, and whoever signs in or out does so while nothing is under way (`betweenSends`).
 * - Several tabs share one store. A lock lets one of them send at a time; where the browser has no locks (plain http),
 *   the keys still make a doubled send happen once.
 */
export interface Receipt {
  /** Of what was recorded. */
  readonly id: string;
}

export type Post = (item: Waiting) => Promise<Receipt>;

export interface OutboxSettings {
  readonly post: Post;
  /** Who presses now, as far as this page knows. */
  readonly pressedBy: () => By | null;
  /** The name that the server takes our requests for; undefined when nobody is signed in. Rejects without an answer. */
  readonly signedIn: () => Promise<string | undefined>;
  readonly store?: string;
  readonly nowMs?: () => number;
  /** An answer that takes longer counts as lost. */
  readonly answerWithinMs?: number;
}

const SENT_KEPT = 40;

export class Outbox {
  private view: OutboxView = EMPTY_OUTBOX;
  private readonly changedListeners = new Set<() => void>();
  private readonly sentListeners = new Set<(sent: Sent) => void>();
  private readonly db: Promise<DeviceStore>;
  private readonly post: Post;
  private readonly pressedBy: () => By | null;
  private readonly signedIn: () => Promise<string | undefined>;
  private readonly nowMs: () => number;
  private readonly answerWithinMs: number;
  private readonly channel: BroadcastChannel | undefined;
  private underWay: Promise<unknown> = Promise.resolve();
  private lastInPage: Promise<unknown> = Promise.resolve();
  private closed = false;
  private pausing = false;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private failedPasses = 0;

  constructor(settings: OutboxSettings) {
    const name = settings.store ?? 'rootcast-outbox';
    this.post = settings.post;
    this.pressedBy = settings.pressedBy;
    this.signedIn = settings.signedIn;
    this.nowMs = settings.nowMs ?? Date.now;
    this.answerWithinMs = settings.answerWithinMs ?? 25_000;
    this.db = openDeviceStore(name);
    this.db.catch((failure: unknown) =>
      this.show({ broken: failure instanceof Error ? failure.message : String(failure) }),
    );
    this.channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(name);
    if (this.channel) this.channel.onmessage = (event) => this.heard(event.data as Sent | null);
  }

  readonly subscribe = (changed: () => void): (() => void) => {
    this.changedListeners.add(changed);
    return () => this.changedListeners.delete(changed);
  };

  readonly current = (): OutboxView => this.view;

  /** Told whenever a message has been acknowledged, by this tab or another. */
  onSent(listener: (sent: Sent) => void): () => void {
    this.sentListeners.add(listener);
    return () => this.sentListeners.delete(listener);
  }

  /** Reads what is left from before and begins to send it. */
  async start(): Promise<void> {
    await this.readStore();
    void this.send();
  }

  /** Ends after the pass that is under way. */
  async close(): Promise<void> {
    this.closed = true;
    clearTimeout(this.timer);
    this.channel?.close();
    await this.underWay;
    (await this.db).close();
  }

  /** Safe on the device when it returns; the key is made here and stays. */
  async add(message: Message): Promise<string> {
    const key = newKey();
    await this.put({ key, message, undoes: null, attempts: 0, refusal: null, by: this.pressedBy() });
    void this.send();
    return key;
  }

  /**
   * Takes a message of this device back, by its key. One that never left simply goes; one that is with the server gets
   * its opposite; of one whose answer is missing the reversal waits until it is known what became of it.
   */
  async undo(key: string, reason: string): Promise<'removed' | 'reversed' | 'waits'> {
    const db = await this.db;
    const tx = db.transaction(['waiting', 'sent'], 'readwrite');
    const item = await tx.objectStore('waiting').index('key').get(key);
    const sent = await tx.objectStore('sent').get(key);
    if (item && item.attempts === 0) {
      await tx.objectStore('waiting').delete(item.seq);
      await tx.done;
      await this.changed();
      return 'removed';
    }
    await tx.done;
    const known = sent ?? item;
    if (!known) throw new Error(`nothing under ${key} on this device`);
    const message = oppositeOf(known.message, reason, new Date(this.nowMs()).toISOString(), sent?.id);
    if (!message) throw new Error(`what is under ${key} cannot be taken back`);
    if (sent) {
      await this.add(message);
      return 'reversed';
    }
    await this.put({ key: newKey(), message, undoes: key, attempts: 0, refusal: null, by: this.pressedBy() });
    void this.send();
    return 'waits';
  }

  /** A refused message goes again as `message`, under a new key: the old one may have been answered for good. */
  async mend(key: string, message: Message): Promise<void> {
    const db = await this.db;
    const tx = db.transaction('waiting', 'readwrite');
    const item = await tx.store.index('key').get(key);
    const by = this.pressedBy();
    if (item?.refusal) await tx.store.put({ ...item, key: newKey(), message, attempts: 0, refusal: null, by });
    await tx.done;
    await this.changed();
    void this.send();
  }

  /**
   * Whoever is signed in takes what another person pressed over, having been shown it, and it goes under the new name.
   * The key is new: the server keeps keys by person, so the old one would not stop a second recording anyway.
   */
  async takeOver(key: string): Promise<void> {
    const by = this.pressedBy();
    const db = await this.db;
    const tx = db.transaction('waiting', 'readwrite');
    const item = await tx.store.index('key').get(key);
    if (item && item.refusal === null && by && item.by?.name !== by.name) {
      const taken = { ...item, key: newKey(), attempts: 0, by };
      await tx.store.put(taken);
      for (const undo of await tx.store.getAll()) {
        if (undo.undoes === key) await tx.store.put({ ...undo, undoes: taken.key, by });
      }
    }
    await tx.done;
    await this.changed();
    void this.send();
  }

  /** Only a refused message can be thrown away: of any other it is not known that it did not happen. */
  async discard(key: string): Promise<void> {
    const db = await this.db;
    const tx = db.transaction('waiting', 'readwrite');
    const item = await tx.store.index('key').get(key);
    if (item?.refusal) await tx.store.delete(item.seq);
    await tx.done;
    await this.changed();
  }

  /** Does `work` (signing in or out) while no tab is sending; a pass under way ends after the entry it is at. */
  async betweenSends<T>(work: () => Promise<T>): Promise<T> {
    this.pausing = true;
    try {
      return await this.locked(work);
    } finally {
      this.pausing = false;
    }
  }

  /** Sends what can be sent; at most one pass runs at a time among all tabs. */
  async send(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    // Turns are taken in order, so the last one ends last.
    this.underWay = this.locked(() => this.sendAndTell());
    await this.underWay;
  }

  private async sendAndTell(): Promise<void> {
    if (this.closed) return;
    try {
      const failed = await this.pass();
      this.failedPasses = failed ? this.failedPasses + 1 : 0;
      await this.readStore();
      this.show({ sending: false, nextTryMs: failed ? this.tryLater() : undefined });
    } catch (failure) {
      // Only the device's own store fails here: a request that failed is an outcome.
      this.show({ sending: false, broken: failure instanceof Error ? failure.message : String(failure) });
    }
  }

  private tryLater(): number {
    const wait = waitMs(this.failedPasses);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.send(), wait);
    return this.nowMs() + wait;
  }

  /** Whether something is left that should be tried again. */
  private async pass(): Promise<boolean> {
    if (!(await this.anythingToSend())) return false;
    let who: string | undefined;
    try {
      who = await this.signedIn();
    } catch {
      return true;
    }
    // Signing in begins another pass.
    if (who === undefined) return false;
    const held = new Set<string>();
    for (;;) {
      const item = this.pausing ? undefined : await this.claim(held, who);
      if (!item) return held.size > 0;
      this.show({ sending: true, nextTryMs: undefined });
      try {
        await this.settle(item, await this.answerTo(item));
      } catch (failure) {
        const outcome = outcomeOf(failure instanceof Problem ? failure.status : undefined);
        if (outcome === 'refused') await this.refuse(item, refusalOf(failure as Problem));
        else if (outcome === 'hold-lane') held.add(laneOf(item.message));
        else return true;
      }
    }
  }

  private async anythingToSend(): Promise<boolean> {
    return (await (await this.db).getAll('waiting')).some(({ refusal }) => refusal === null);
  }

  private async answerTo(item: Waiting): Promise<Receipt> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const lost = new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new Error('no answer in time')), this.answerWithinMs);
    });
    try {
      return await Promise.race([this.post(item), lost]);
    } finally {
      clearTimeout(timer);
    }
  }

  /** Marks the try before it is made, in one transaction with the choice, so that an undo cannot slip between. */
  private async claim(held: ReadonlySet<string>, who: string): Promise<Waiting | undefined> {
    const tx = (await this.db).transaction('waiting', 'readwrite');
    const next = nextToSend(await tx.store.getAll(), held, who);
    const claimed = next && { ...next, attempts: next.attempts + 1 };
    if (claimed) await tx.store.put(claimed);
    await tx.done;
    return claimed;
  }

  private async settle(item: Waiting, receipt: Receipt): Promise<void> {
    const { seq, key, message } = item;
    const sent: Sent = { key, seq, message, id: receipt.id, sentAtMs: this.nowMs() };
    const tx = (await this.db).transaction(['waiting', 'sent'], 'readwrite');
    const waiting = tx.objectStore('waiting');
    await waiting.delete(seq);
    for (const undo of await waiting.getAll()) {
      if (undo.undoes === key)
        await waiting.put({ ...undo, undoes: null, message: releasedBy(undo.message, receipt.id) });
    }
    await tx.objectStore('sent').put(sent);
    const keys = await tx.objectStore('sent').index('seq').getAllKeys();
    for (const old of keys.slice(0, Math.max(0, keys.length - SENT_KEPT))) await tx.objectStore('sent').delete(old);
    await tx.done;
    await this.readStore();
    this.channel?.postMessage(sent);
    for (const listener of this.sentListeners) listener(sent);
  }

  private async refuse(item: Waiting, refusal: Refusal): Promise<void> {
    const tx = (await this.db).transaction('waiting', 'readwrite');
    const undo = (await tx.store.getAll()).find((each) => each.undoes === item.key);
    if (undo) {
      // It was to be undone and never happened: both are done with.
      await tx.store.delete(undo.seq);
      await tx.store.delete(item.seq);
    } else {
      await tx.store.put({ ...item, refusal });
    }
    await tx.done;
    await this.changed();
  }

  private async put(item: Omit<Waiting, 'seq'>): Promise<void> {
    // The store gives the number; the type cannot say that it is left out here.
    await (await this.db).add('waiting', item as Waiting);
    await this.changed();
  }

  private async changed(): Promise<void> {
    await this.readStore();
    this.channel?.postMessage(null);
  }

  private heard(sent: Sent | null): void {
    void this.readStore();
    if (sent) for (const listener of this.sentListeners) listener(sent);
  }

  private async readStore(): Promise<void> {
    const db = await this.db;
    const [waiting, sent] = await Promise.all([db.getAll('waiting'), db.getAllFromIndex('sent', 'seq')]);
    this.show({ read: true, waiting, sent: sent.reverse() });
  }

  private async locked<T>(work: () => Promise<T>): Promise<T> {
    // Waits for its turn: with `ifAvailable` a reload during a pass left entries lying.
    if (typeof navigator !== 'undefined' && 'locks' in navigator) return navigator.locks.request('outbox', work);
    const turn = this.lastInPage.then(work);
    this.lastInPage = turn.catch(() => undefined);
    return turn;
  }

  private show(change: Partial<OutboxView>): void {
    this.view = { ...this.view, ...change };
    for (const changed of this.changedListeners) changed();
  }
}

function refusalOf({ status, kind, detail, title, members }: Problem): Refusal {
  return { status, kind, detail: detail || title, members };
}
