import type { HouseOnTheWalk, RoundDone, RoundField, RoundItem, RoundTask } from '../shared/climate-types';
import type { OutboxView, RoundMessage } from '../outbox/outbox-state';
import { celsiusTyped, numberTyped, type TemperatureUnit } from '../shared/units';

/** The daily round: in which order it is walked, what is left, and what doing a check must say. */

export interface HouseRound {
  readonly house: string;
  readonly name: string;
  readonly blockedUntil: string | null;
  /** The product that closes it until then. */
  readonly blockedBy: string | null;
  readonly clashes: HouseOnTheWalk['clashes'];
  readonly open: readonly ShownItem[];
  readonly closed: readonly ShownItem[];
}

const CLOSED: ReadonlySet<RoundItem['state']> = new Set(['done', 'skipped']);

/** An item with what this device has pressed of it. */
export interface ShownItem extends RoundItem {
  /** The message that the server has not yet acknowledged; undefined where nothing waits. */
  readonly unsent?: string | undefined;
  /** Who pressed that message; only they take it back. */
  readonly unsentBy?: string | undefined;
}

/** A round as the server gave it. */
export interface RoundList {
  readonly items: readonly RoundItem[];
  /** When it was asked for, by the device's clock. */
  readonly askedAtMs: number;
}

/** Before it has come. */
export const NO_ROUND: RoundList = { items: [], askedAtMs: 0 };

/**
 * The round as this device left it: what was pressed counts at once, though the server may not have it yet, or its
 * list may be from before. What was refused counts for nothing.
 */
export function asPressed(
  { items, askedAtMs }: RoundList,
  { waiting, sent }: Pick<OutboxView, 'waiting' | 'sent'>,
  on: string,
): readonly ShownItem[] {
  const pressed = new Map<
    string,
    { readonly message: RoundMessage; readonly unsent?: string; readonly by?: string | undefined }
  >();
  for (const { message, sentAtMs } of [...sent].reverse()) {
    if (message.to === 'round' && sentAtMs >= askedAtMs) pressed.set(message.item, { message });
  }
  for (const { message, refusal, key, by } of waiting) {
    if (message.to === 'round' && refusal === null) pressed.set(message.item, { message, unsent: key, by: by?.name });
  }
  return items.map((item) => {
    const last = pressed.get(item.id);
    return last ? { ...item, state: stateAfter(last.message, item, on), unsent: last.unsent, unsentBy: last.by } : item;
  });
}

function stateAfter({ answer }: RoundMessage, item: RoundItem, on: string): RoundItem['state'] {
  if (answer.verb !== 'undo') return answer.verb;
  if (!isClosed(item)) return item.state;
  return item.dueOn < on ? 'carried-over' : 'due';
}

export function isClosed({ state }: Pick<RoundItem, 'state'>): boolean {
  return CLOSED.has(state);
}

/** House by house in walking order; houses that the walk does not name come last. Houses without work are left out. */
export function byHouse(items: readonly ShownItem[], walk: readonly HouseOnTheWalk[]): readonly HouseRound[] {
  const place = new Map(walk.map(({ house }, i) => [house, i]));
  const codes = [...new Set(items.map(({ house }) => house))];
  return codes
    .sort((a, b) => (place.get(a) ?? walk.length) - (place.get(b) ?? walk.length) || a.localeCompare(b))
    .map((house) => {
      const own = items.filter((item) => item.house === house);
      const stop = walk.find((each) => each.house === house);
      return {
        house,
        name: stop?.name ?? own[0]?.houseName ?? house,
        blockedUntil: stop?.blockedUntil ?? null,
        blockedBy: stop?.blockedBy ?? null,
        clashes: stop?.clashes ?? [],
        open: own.filter((item) => !isClosed(item)),
        closed: own.filter(isClosed),
      };
    });
}

/** What is to do where one stands: at the house itself, or at one of its batches. */
export interface Stop {
  /** Undefined for what is of the house as a whole. */
  readonly batch: string | undefined;
  readonly items: readonly [ShownItem, ...ShownItem[]];
}

/** Checks of one batch together, in the order in which the first of each came. */
export function byBatch(items: readonly ShownItem[]): readonly Stop[] {
  const stops = new Map<string | undefined, [ShownItem, ...ShownItem[]]>();
  for (const item of items) {
    const batch = item.batch ?? undefined;
    const stop = stops.get(batch);
    if (stop) stop.push(item);
    else stops.set(batch, [item]);
  }
  return [...stops].map(([batch, own]) => ({ batch, items: own }));
}

/** What is done to a house rather than to a batch: one press may close it for all that stand there. */
const ALIKE: ReadonlySet<RoundTask> = new Set([
  'wean-mist',
  'night-mist-off',
  'mist-off',
  'feed-step',
  'moisture-check',
  'prevention',
  'tone',
]);

/** Open checks of a house that are the same for several of its batches. */
export function alikeHere(open: readonly ShownItem[]): readonly (readonly [ShownItem, ...ShownItem[]])[] {
  const byTask = new Map<RoundTask, [ShownItem, ...ShownItem[]]>();
  for (const item of open) {
    if (!ALIKE.has(item.task) || item.state === 'blocked') continue;
    const others = byTask.get(item.task);
    if (others) others.push(item);
    else byTask.set(item.task, [item]);
  }
  return [...byTask.values()].filter(({ length }) => length > 1);
}

export interface Clashes {
  readonly quantities: readonly string[];
  readonly move: HouseOnTheWalk['clashes'][number]['move'];
}

/** Clashes that the same moves would settle are told once. */
export function clashesTogether(clashes: HouseOnTheWalk['clashes']): readonly Clashes[] {
  const told = new Map<string, Clashes>();
  for (const { quantity, move } of clashes) {
    const key = JSON.stringify(move);
    told.set(key, { quantities: [...(told.get(key)?.quantities ?? []), quantity], move });
  }
  return [...told.values()];
}

export interface SameWay {
  readonly batches: readonly string[];
  readonly crops: readonly string[];
  readonly way: Omit<Clashes['move'][number], 'batch' | 'crop'>;
}

/** Batches for which the same can be done are named together: three times the same sentence is read as three things. */
export function togetherByWay(move: Clashes['move']): readonly SameWay[] {
  const told = new Map<string, SameWay>();
  for (const { batch, crop, ...way } of move) {
    const key = JSON.stringify(way);
    const { batches, crops } = told.get(key) ?? { batches: [], crops: [] };
    told.set(key, { batches: [...batches, batch], crops: [...new Set([...crops, crop])], way });
  }
  return [...told.values()];
}

export function progressOf(items: readonly RoundItem[]): { readonly closed: number; readonly all: number } {
  return { closed: items.filter(isClosed).length, all: items.length };
}

/** The order with one house carried one place up or down; at the end it stays. */
export function walkedEarlier(order: readonly string[], house: string, by: 1 | -1): readonly string[] {
  const from = order.indexOf(house);
  const to = from + by;
  if (from < 0 || to < 0 || to >= order.length) return order;
  const after = [...order];
  [after[from], after[to]] = [order[to] as string, house];
  return after;
}

// --- Doing a check -------------------------------------------------------------------------------------------------

/** What a form of the round holds, as typed. */
export type RoundDraft = Partial<Readonly<Record<RoundField, string>>> & {
  readonly stageReached?: boolean;
  readonly note?: string;
};

export type RoundFault = 'needed' | 'whole' | 'number' | 'moreThanCells' | 'noCells';

/** What a scout looks for; the first two are always asked for, the rest is told where it was counted. */
export const PESTS = [
  'fungusGnats',
  'shoreFlies',
  'thrips',
  'aphids',
  'whiteflies',
  'mites',
  'otherPests',
] as const satisfies readonly RoundField[];

const SCOUTED: readonly RoundField[] = ['traps', 'thrips', 'aphids', 'whiteflies', 'mites', 'otherPests'];

const WHOLE: ReadonlySet<RoundField> = new Set(['cells', 'reached', 'plants', 'level', 'traps', ...PESTS]);

/** Fields a task takes besides those it asks for. */
export function optionalFields(task: RoundTask): readonly RoundField[] {
  if (task === 'scouting') return SCOUTED;
  if (task === 'feed-step') return ['nitrogenPpm'];
  return task === 'arrival-check' ? ['boxC', 'standbyHours'] : [];
}

/** Where a product is put on: the label decides, and the screen says so. */
export function isByLabel(task: RoundTask): boolean {
  return task === 'wetting-agent' || task === 'prevention';
}

/** Whether a batch is to go where batches of its house go on to, and not out of a clash. */
export function isUsualMove({ why }: Pick<RoundItem, 'why'>): boolean {
  return why?.code === 'usual-move';
}

/** What a form holds when it opens: the house that batches usually go on to. */
export function startOf(item: Pick<RoundItem, 'why' | 'fits'>): RoundDraft {
  const [usual] = isUsualMove(item) ? item.fits : [];
  return usual === undefined ? {} : { house: usual };
}

/** Looks may say in the same breath that the stage is reached. */
export function mayReachStage(task: RoundTask): boolean {
  return task === 'look-callus' || task === 'look-root' || task === 'ready';
}

/** What to send, or what is wrong by field. Limits are the server's to know. */
export function doneOf(
  item: Pick<RoundItem, 'task' | 'asks'>,
  draft: RoundDraft,
  happenedAt: string,
  unit: TemperatureUnit = 'C',
): { readonly done: RoundDone } | { readonly faults: ReadonlyMap<RoundField, RoundFault> } {
  const faults = new Map<RoundField, RoundFault>();
  const values: Partial<Record<RoundField, number | string>> = {};
  for (const field of [...item.asks, ...optionalFields(item.task)]) {
    const text = (draft[field] ?? '').trim();
    if (text === '') {
      if ((item.asks as readonly RoundField[]).includes(field)) faults.set(field, 'needed');
      continue;
    }
    if (field === 'house' || field === 'condition') {
      values[field] = text;
      continue;
    }
    const value = numberTyped(text);
    if (value === undefined) faults.set(field, 'number');
    else if (WHOLE.has(field) && !Number.isInteger(value)) faults.set(field, 'whole');
    else values[field] = field === 'boxC' ? celsiusTyped(value, unit) : value;
  }
  const { cells, reached } = values;
  if (cells === 0) faults.set('cells', 'noCells');
  else if (typeof cells === 'number' && typeof reached === 'number' && reached > cells) {
    faults.set('reached', 'moreThanCells');
  }
  if (faults.size > 0) return { faults };
  const note = draft.note?.trim();
  return {
    done: {
      happenedAt,
      ...values,
      ...(draft.stageReached && mayReachStage(item.task) ? { stageReached: true } : {}),
      ...(note ? { note } : {}),
      confirmed: false,
    } as RoundDone,
  };
}
