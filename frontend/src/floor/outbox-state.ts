import type { NewEntry, Position } from '../shared/api-types';

/**
 * What waits on the device until the server has it. An item keeps its key from the press of the button until it is
 * acknowledged, so that sending it twice records it once.
 */
export interface Waiting {
  /** Order of pressing. */
  readonly seq: number;
  readonly key: string;
  readonly batch: string;
  /** What the reader knows the batch by, when its list cannot be reached. */
  readonly batchName: string;
  readonly entry: NewEntry;
  /** For an undo pressed before the undone entry was acknowledged: its key. The entry's id is filled in then. */
  readonly undoes: string | null;
  /** Counted before each try: from 1 on the server may have it although no answer came. */
  readonly attempts: number;
  readonly refusal: Refusal | null;
  /** Who pressed it. It is sent under this name or under none; null if nobody was signed in then. */
  readonly by?: By | null;
}

/** A person as entries on this device remember one. */
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

/** An entry the server has acknowledged. */
export interface Sent {
  readonly key: string;
  readonly seq: number;
  readonly batch: string;
  readonly batchName: string;
  readonly entry: NewEntry;
  readonly id: string;
  readonly position: Position;
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

/**
 * The first item that may be sent while `who` is signed in: oldest first, so that a batch's entries arrive in the order
 * they were pressed. What somebody else pressed is passed over.
 */
export function nextToSend(
  waiting: readonly Waiting[],
  heldBatches: ReadonlySet<string>,
  who: string,
): Waiting | undefined {
  return [...waiting]
    .sort((a, b) => a.seq - b.seq)
    .find(
      (item) => item.refusal === null && item.undoes === null && !heldBatches.has(item.batch) && item.by?.name === who,
    );
}

export type Outcome =
  /** The server will not take it as it is. */
  | 'refused'
  /** This entry met a fault of the server; others may pass. */
  | 'hold-batch'
  /** Nothing gets through at the moment. */
  | 'stop';

/** What a failed try means. Only an answer that says the entry itself is wrong takes it out of the queue. */
export function outcomeOf(status: number | undefined): Outcome {
  if (status === undefined || status === 401 || status === 408 || status === 425 || status === 429) return 'stop';
  if (status === 500) return 'hold-batch';
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

export function waitingFor(view: OutboxView, batch: string): readonly Waiting[] {
  return view.waiting.filter((item) => item.batch === batch);
}
