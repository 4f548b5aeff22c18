import {
  LOSS_CAUSES,
  type BatchStage,
  type BatchView,
  type EntryView,
  type House,
  type LossCause,
  type NewEntry,
  type OrderView,
  type ReachableStage,
  type TrayFormat,
} from '../shared/api-types';

/** What the floor may ask, offer and say about a batch. Decides only; the server has the last word on every entry. */

export const ACTIONS = ['count', 'loss', 'look', 'stage', 'move', 'ship'] as const;
export type Action = (typeof ACTIONS)[number];

const STAGES: readonly BatchStage[] = ['STICK', 'CALLUS', 'ROOT', 'READY', 'SHIP'];
const REACHABLE: readonly ReachableStage[] = ['CALLUS', 'ROOT', 'READY'];

/** The stages that can still be reached, the next one first. */
export function stagesAhead(stage: BatchStage): readonly ReachableStage[] {
  return REACHABLE.filter((each) => STAGES.indexOf(each) > STAGES.indexOf(stage));
}

/** Where the batch may be carried: every other house of its site. */
export function housesToMoveTo(batch: Pick<BatchView, 'site' | 'house'>, houses: readonly House[]): readonly House[] {
  return houses.filter((house) => house.site === batch.site && house.code !== batch.house);
}

export function isFinished(batch: Pick<BatchView, 'plants'>): boolean {
  return batch.plants.alive === 0;
}

/** What can be recorded now. A finished batch can still be counted: that is how a wrong last entry is put right. */
export function actionsFor(batch: BatchView, houses: readonly House[]): readonly Action[] {
  return ACTIONS.filter((action) => {
    if (action === 'count') return true;
    if (isFinished(batch)) return false;
    if (action === 'stage' || action === 'look') return stagesAhead(batch.stage).length > 0;
    if (action === 'move') return housesToMoveTo(batch, houses).length > 0;
    if (action === 'ship') return STAGES.indexOf(batch.stage) >= STAGES.indexOf('ROOT');
    return true;
  });
}

export function actionIn(text: string | null): Action | undefined {
  return ACTIONS.find((each) => each === text);
}

// --- Amounts -----------------------------------------------------------------------------------------------------

/** More digits than this are a slip of the finger; the field then stops taking them, visibly. */
const MOST_DIGITS = 7;

export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | 'back' | 'clear';

export function afterKey(text: string, key: PadKey): string {
  if (key === 'clear') return '';
  if (key === 'back') return text.slice(0, -1);
  if (text === '0') return key;
  return text.length >= MOST_DIGITS ? text : text + key;
}

/** One more or less; from nothing typed it begins at `start`. It never goes below zero. */
export function afterStep(text: string, by: 1 | -1, start: number): string {
  const from = text === '' ? start : Number(text);
  return Number.isFinite(from) ? String(Math.max(0, from + by)) : text;
}

/** A whole number as typed; undefined when it is not one. */
export function wholeTyped(text: string): number | undefined {
  const plain = text.replace(/\s/g, '');
  return /^\d{1,9}$/.test(plain) ? Number(plain) : undefined;
}

// --- A count of part of a batch ------------------------------------------------------------------------------------

export interface Sample {
  readonly trays: number;
  /** Cells looked at in those trays. */
  readonly cells: number;
  /** Cells of those without a living plant. */
  readonly blanks: number;
}

export type SampleFault = 'no-trays' | 'too-many-trays' | 'no-cells' | 'too-many-cells' | 'too-many-blanks';

/** What is wrong with a sample as such, the first thing first; undefined when it can stand for the batch. */
export function sampleFault(
  sample: Sample,
  batch: Pick<BatchView, 'trays'>,
  cellsPerTray: number,
): SampleFault | undefined {
  if (sample.trays < 1) return 'no-trays';
  if (sample.trays > batch.trays) return 'too-many-trays';
  if (sample.cells < 1) return 'no-cells';
  if (sample.cells > sample.trays * cellsPerTray) return 'too-many-cells';
  return sample.blanks > sample.cells ? 'too-many-blanks' : undefined;
}

/** Plants that can be alive at most: cells on the bench, and no more than were stuck and have not left. */
export function places(batch: Pick<BatchView, 'trays' | 'plants'>, cellsPerTray: number): number {
  return Math.min(batch.trays * cellsPerTray, batch.plants.stuck - batch.plants.shipped);
}

/** What the ledger will make of the sample: its share of living cells, in all places, to the nearest plant. */
export function aliveBySample({ cells, blanks }: Sample, inPlaces: number): number {
  return Math.round((inPlaces * (cells - blanks)) / cells);
}

// --- A look ------------------------------------------------------------------------------------------------------

export type LookFault = 'no-look-cells' | 'more-than-batch-cells' | 'more-than-looked-reached';

/** What is wrong with a look as typed so far; undefined while nothing is. */
export function lookFault(
  { cells, reached }: { readonly cells: number | undefined; readonly reached: number | undefined },
  inPlaces: number | undefined,
): LookFault | undefined {
  if (cells === 0) return 'no-look-cells';
  if (cells !== undefined && inPlaces !== undefined && cells > inPlaces) return 'more-than-batch-cells';
  if (cells !== undefined && reached !== undefined && reached > cells) return 'more-than-looked-reached';
  return undefined;
}

// --- Finding -----------------------------------------------------------------------------------------------------

const NO_MATCH = 9;

/**
 * The batches that `typed` may mean, best first: a whole id (what a scanner types), then beginnings of id, variety or
 * house, then anything inside. Every word must be found somewhere. With nothing typed: the last used first.
 */
export function batchesFor(
  typed: string,
  batches: readonly BatchView[],
  houses: readonly House[],
  lastUsed: readonly string[] = [],
): readonly BatchView[] {
  const words = folded(typed).split(/\s+/).filter(Boolean);
  const houseName = new Map(houses.map((house) => [house.code, house.name]));
  const usedRank = (batch: BatchView) => {
    const index = lastUsed.indexOf(batch.id);
    return index < 0 ? lastUsed.length : index;
  };
  return batches
    .map((batch) => ({ batch, rank: rankOf(words, batch, houseName.get(batch.house) ?? '') }))
    .filter(({ rank }) => rank < NO_MATCH)
    .sort(
      (a, b) =>
        a.rank - b.rank ||
        usedRank(a.batch) - usedRank(b.batch) ||
        byNumberInside(a.batch.house, b.batch.house) ||
        byNumberInside(a.batch.varietyName, b.batch.varietyName) ||
        byNumberInside(a.batch.id, b.batch.id),
    )
    .map(({ batch }) => batch);
}

function rankOf(words: readonly string[], batch: BatchView, houseName: string): number {
  const [first] = words;
  if (first === undefined) return 0;
  const id = folded(batch.id);
  if (words.length === 1 && id === first) return 0;
  const fields = [id, folded(batch.varietyName), folded(batch.variety), folded(batch.house), folded(houseName)];
  if (!words.every((word) => fields.some((field) => field.includes(word)))) return NO_MATCH;
  if (id.startsWith(first)) return 1;
  return fields.some((field) => field.split(/[\s'"‘’-]+/).some((part) => part.startsWith(first))) ? 2 : 3;
}

/** Without accents and case, so that "salvia" finds "Sálvia". */
export function folded(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim();
}

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** House 2 before house 10. */
export function byNumberInside(a: string, b: string): number {
  return collator.compare(a, b);
}

const MOST_REMEMBERED = 6;

export function remembering(lastUsed: readonly string[], id: string): readonly string[] {
  return [id, ...lastUsed.filter((each) => each !== id)].slice(0, MOST_REMEMBERED);
}

// --- Undoing -----------------------------------------------------------------------------------------------------

type Undoable = Pick<EntryView, 'kind' | 'reversedBy'>;

/** Reversals are not reversed, nothing is reversed twice, and sticking only while nothing else stands on the books. */
export function canBeUndone(entry: Undoable, all: readonly Undoable[]): boolean {
  if (entry.kind === 'reversal' || entry.reversedBy !== null) return false;
  return (
    entry.kind !== 'stick' ||
    all.every(({ kind, reversedBy }) => kind === 'stick' || kind === 'reversal' || reversedBy !== null)
  );
}

// --- Shipping ----------------------------------------------------------------------------------------------------

/** A promise that trays of a batch can fulfil. */
export interface OpenPromise {
  readonly order: string;
  readonly line: number;
  readonly customer: string;
  readonly shipOn: string;
  readonly traysLeft: number;
  /** The promise stands on this very batch. */
  readonly onThisBatch: boolean;
}

/** Promises of the batch's variety, format and site with trays still to ship; those that stand on it first, then by date. */
export function promisesFor(batch: BatchView, orders: readonly OrderView[]): readonly OpenPromise[] {
  return orders
    .filter((order) => !order.released)
    .flatMap((order) =>
      order.promises
        .filter(
          (p) =>
            p.variety === batch.variety &&
            p.trayFormat === batch.trayFormat &&
            p.site === batch.site &&
            p.trays > p.shipped,
        )
        .map((p) => ({
          order: order.id,
          line: p.line,
          customer: order.customer,
          shipOn: p.shipOn,
          traysLeft: p.trays - p.shipped,
          onThisBatch: p.lots.some((lot) => lot.batch === batch.id),
        })),
    )
    .sort((a, b) => Number(b.onThisBatch) - Number(a.onThisBatch) || a.shipOn.localeCompare(b.shipOn));
}

/** The promise that trays leaving now are most likely for: the first of those on this batch, else the nearest in time. */
export function likeliestPromise(promises: readonly OpenPromise[]): OpenPromise | undefined {
  return promises[0];
}

/** What fills a promise, as far as the living plants go. */
export function traysFor(promise: OpenPromise | undefined, filled: number | undefined): number | undefined {
  if (promise === undefined || filled === undefined) return undefined;
  return Math.min(promise.traysLeft, filled) || undefined;
}

/** Trays that the living plants fill to the sale count today. */
export function traysFilled(batch: Pick<BatchView, 'plants'>, format: Pick<TrayFormat, 'saleCount'>): number {
  return Math.floor(batch.plants.alive / format.saleCount);
}

// --- Entries from drafts --------------------------------------------------------------------------------------------

export function isLossCause(text: string): text is LossCause {
  return LOSS_CAUSES.some((each) => each === text);
}

/** The entry without its time; the time is the moment of the press. Who pressed it can be asked whether it is right. */
export type Draft = NewEntry extends infer E ? (E extends NewEntry ? Omit<E, 'happenedAt'> : never) : never;

export function pressed(draft: Draft, atMs: number): NewEntry {
  return { ...draft, happenedAt: new Date(atMs).toISOString(), confirmed: false } as NewEntry;
}
