import type { Instant, NewEntry } from '../shared/api-types';
import type { RoundDone } from '../shared/climate-types';

/**
 * What may wait on a device until the server has it: an entry of a batch, an answer to a check of the round, or what a
 * hand instrument showed in a house.
 */
export type Message = BatchMessage | RoundMessage | ReadingMessage;

export interface BatchMessage {
  readonly to: 'batch';
  readonly batch: string;
  /** What the reader knows the batch by, when its list cannot be reached. */
  readonly batchName: string;
  readonly entry: NewEntry;
}

export interface RoundMessage {
  readonly to: 'round';
  readonly site: string;
  readonly item: string;
  /** Where the item is of one: what is written of a batch arrives in the order in which it was pressed. */
  readonly batch: string | null;
  /** What the reader knows the check by. */
  readonly name: string;
  readonly answer: RoundAnswer;
}

export interface ReadingMessage {
  readonly to: 'reading';
  readonly site: string;
  /** What the reader knows the house by. */
  readonly houseName: string;
  readonly reading: HandReading;
}

/** A reading as the server takes it: of the house as such, which has no sensor to fall silent. */
export interface HandReading {
  readonly house: string;
  readonly quantity: 'air-temperature' | 'medium-temperature' | 'relative-humidity' | 'medium-moisture';
  readonly value: number;
  /** UCUM. */
  readonly unit: string;
  readonly at: Instant;
}

export type RoundAnswer =
  | { readonly verb: 'done'; readonly body: RoundDone }
  | { readonly verb: 'skipped'; readonly body: { readonly reason: string; readonly happenedAt: Instant } }
  | { readonly verb: 'undo'; readonly body: { readonly reason: string } };

/**
 * An item keeps its key from the press of the button until it is acknowledged, so that sending it twice records it
 * once.
 */
export interface Waiting {
  /** Order of pressing. */
  readonly seq: number;
  readonly key: string;
  readonly message: Message;
  /** For an undo pressed before the undone message was acknowledged: its key. The entry's id is filled in then. */
  readonly undoes: string | null;
  /** Counted before each try: from 1 on the server may have it although no answer came. */
  readonly attempts: number;
  readonly refusal: Refusal | null;
  /** Who pressed it. It is sent under this name or under none; null if nobody was signed in then. */
  readonly by?: By | null | undefined;
}

/** A person as what waits on this device remembers one. */
export interface By {
  readonly name: string;
  readonly displayName: string;
}

/** Why the server did not take it, as an RFC 9457 problem says. */
export interface Refusal {
  readonly status: number;
  readonly kind: string;
  readonly detail: string;
  readonly members: Readonly<Record<string, unknown>>;
}

/** A message the server has acknowledged. */
export interface Sent {
  readonly key: string;
  readonly seq: number;
  readonly message: Message;
  /** Of what was recorded. */
  readonly id: string;
  readonly sentAtMs: number;
}

export interface OutboxView {
  /** False until the device's store has been read: until then nobody may say that all is sent. */
  readonly read: boolean;
  readonly waiting: readonly Waiting[];
  /** Newest first. */
  readonly sent: readonly Sent[];
  readonly sending: boolean;
  /** When the next try is due, by the device's clock (ms); undefined when none is needed. */
  readonly nextTryMs: number | undefined;
  /** The store could not be opened: nothing can be recorded on this device. */
  readonly broken: string | undefined;
}

export const EMPTY_OUTBOX: OutboxView = {
  read: false,
  waiting: [],
  sent: [],
  sending: false,
  nextTryMs: undefined,
  broken: undefined,
};

/** Messages of one lane arrive in the order in which they were pressed, whatever becomes of the others. */
export function laneOf(message: Message): string {
  switch (message.to) {
    case 'batch':
      return message.batch;
    case 'round':
      return message.batch ?? message.item;
    case 'reading':
      return `${message.reading.quantity} of ${message.reading.house}`;
  }
}

/**
 * The first item that may be sent while `who` is signed in: oldest first. What somebody else pressed is passed over.
 */
export function nextToSend(
  waiting: readonly Waiting[],
  heldLanes: ReadonlySet<string>,
  who: string,
): Waiting | undefined {
  return [...waiting]
    .sort((a, b) => a.seq - b.seq)
    .find(
      (item) =>
        item.refusal === null && item.undoes === null && !heldLanes.has(laneOf(item.message)) && item.by?.name === who,
    );
}

/** What takes a message back; undefined of one that has no opposite. `id` is that of what was recorded, once it is known. */
export function oppositeOf(message: Message, reason: string, happenedAt: Instant, id = ''): Message | undefined {
  if (message.to === 'batch') {
    if (message.entry.kind === 'reversal') return undefined;
    return { ...message, entry: { kind: 'reversal', happenedAt, entry: id, reason } };
  }
  // A reading that is wrong is left out of the series where the house's readings are drawn.
  if (message.to === 'reading' || message.answer.verb === 'undo') return undefined;
  return { ...message, answer: { verb: 'undo', body: { reason } } };
}

/** An undo that waited for the answer to what it undoes: now the answer has come, with its id. */
export function releasedBy(undo: Message, id: string): Message {
  if (undo.to !== 'batch' || undo.entry.kind !== 'reversal') return undo;
  return { ...undo, entry: { ...undo.entry, entry: id } };
}

export type Outcome =
  /** The server will not take it as it is. */
  | 'refused'
  /** This message met a fault of the server; those of other lanes may pass. */
  | 'hold-lane'
  /** Nothing gets through at the moment. */
  | 'stop';

/**
 * What a failed try means. Only an answer that says the message itself is wrong takes it out of the queue: whoever is
 * not signed in (401) signs in, and what was pressed goes then.
 */
export function outcomeOf(status: number | undefined): Outcome {
  if (status === undefined || status === 401 || status === 408 || status === 425 || status === 429) return 'stop';
  if (status === 500) return 'hold-lane';
  return status > 500 ? 'stop' : 'refused';
}

const FIRST_WAIT_MS = 2_000;
const LONGEST_WAIT_MS = 60_000;

/** Doubles with every pass that failed in a row. */
export function waitMs(failedPasses: number): number {
  return Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.max(0, failedPasses - 1));
}

export function unsentCount(view: OutboxView): number {
  return view.waiting.filter((item) => item.refusal === null).length;
}

/** What `who` pressed and the server does not have yet. */
export function unsentOf(view: OutboxView, who: string | undefined): readonly Waiting[] {
  return view.waiting.filter((item) => item.refusal === null && item.by?.name === who);
}

/** What waits here for people other than `who`, by person; null is what was pressed while nobody was signed in. */
export function waitingOfOthers(
  view: OutboxView,
  who: string | undefined,
): readonly { readonly by: By | null; readonly items: readonly Waiting[] }[] {
  const groups = new Map<string | undefined, { by: By | null; items: Waiting[] }>();
  for (const item of view.waiting) {
    if (item.refusal !== null || (item.by && item.by.name === who)) continue;
    const group = groups.get(item.by?.name) ?? { by: item.by ?? null, items: [] };
    group.items.push(item);
    groups.set(item.by?.name, group);
  }
  return [...groups.values()];
}

export function refusedOnes(view: OutboxView): readonly Waiting[] {
  return view.waiting.filter((item) => item.refusal !== null);
}

export interface WaitingEntry extends Waiting {
  readonly message: BatchMessage;
}

export interface WaitingRound extends Waiting {
  readonly message: RoundMessage;
}

export interface WaitingReading extends Waiting {
  readonly message: ReadingMessage;
}

export function isReading(item: Waiting): item is WaitingReading {
  return item.message.to === 'reading';
}

export function isEntry(item: Waiting): item is WaitingEntry {
  return item.message.to === 'batch';
}

export function isRound(item: Waiting): item is WaitingRound {
  return item.message.to === 'round';
}

/** Entries of a batch that are still on the device. */
export function waitingFor(view: OutboxView, batch: string): readonly WaitingEntry[] {
  return view.waiting.filter(isEntry).filter((item) => item.message.batch === batch);
}
