/**
 * The shapes that cross the wire, by the names the screens use.
 * Instants are ISO 8601 in UTC, dates `YYYY-MM-DD`, weeks `YYYY-Www`, temperatures °C, lengths mm; a quantity's unit is
 * the last word of its name. The reader's units and language are put on only when something is drawn.
 */

export type Instant = string;
export type LocalDate = string;
export type IsoWeek = string;
export type Code = string;
/** Position in the ledger; grows with every recorded fact. */
export type Position = number;

// --- Setup -------------------------------------------------------------------------------------------------------

export type DayOfWeek = 'MONDAY' | 'TUESDAY' | 'WEDNESDAY' | 'THURSDAY' | 'FRIDAY' | 'SATURDAY' | 'SUNDAY';

export interface Site {
  readonly code: Code;
  readonly name: string;
  readonly timeZone: string;
  readonly shipDay?: DayOfWeek;
}

export interface House {
  readonly code: Code;
  readonly site: Code;
  readonly name: string;
  readonly mediumSetpointC?: number | null;
}

export interface TrayFormat {
  readonly code: Code;
  readonly cells: number;
  /** Good plants that a sold tray must hold. */
  readonly saleCount: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** The three stages in which a cutting develops. */
export type RootingStage = 'STICK' | 'CALLUS' | 'ROOT';
/** Where a batch stands. */
export type BatchStage = RootingStage | 'READY' | 'SHIP';

export interface StageProfile {
  readonly stage: RootingStage;
  readonly daysAtReference: number;
  readonly referenceC: number;
  readonly minC: number;
  readonly optimumC: number;
  readonly maxC: number;
  readonly survivalMean: number;
  /** How many plants' worth of evidence the survival mean stands on. */
  readonly survivalWeight: number;
  readonly form?: 'BETA' | 'LINEAR';
  readonly source?: string | null;
}

export interface CropProfile {
  readonly stages: readonly StageProfile[];
  /** Spread of the rate multiplier, as a standard deviation of its logarithm. */
  readonly rateSpread: number;
  /** Days a ready batch stays saleable. */
  readonly holdDays: number;
  readonly note?: string | null;
  readonly version?: number;
  /** Spread of pace between the cells of one batch, as a standard deviation of the logarithm. */
  readonly cellSpread?: number;
  /** Pace of single varieties and sites against the crop's; 1 where nothing is said. */
  readonly rates?: {
    readonly varieties: Readonly<Record<Code, number>>;
    readonly sites: Readonly<Record<Code, number>>;
  };
}

export interface Crop {
  readonly code: Code;
  readonly name: string;
  readonly profile: CropProfile;
}

export interface Variety {
  readonly code: Code;
  readonly crop: Code;
  readonly name: string;
}

// --- Readings ----------------------------------------------------------------------------------------------------

export type ReadingQuantity = 'medium-temperature' | 'air-temperature';
export type HourSource = 'measured' | 'filled' | 'forecast';

export interface HouseClimate {
  readonly house: Code;
  readonly quantity: ReadingQuantity;
  readonly unit: 'Cel';
  readonly hours: readonly { readonly at: Instant; readonly value: number; readonly source: HourSource }[];
}

export interface HouseNow {
  readonly house: Code;
  readonly quantities: readonly { readonly quantity: ReadingQuantity; readonly valueC: number; readonly at: Instant }[];
}

// --- Batches and entries -----------------------------------------------------------------------------------------

/** A distribution by three of its quantiles. */
export interface Quantiles<T> {
  readonly p10: T;
  readonly p50: T;
  readonly p90: T;
}

export interface Outlook {
  readonly asOf: Instant;
  /** Null where the stage is not in sight at the temperatures expected. */
  readonly callusedAt: Quantiles<Instant | null>;
  readonly rootedAt: Quantiles<Instant | null>;
  readonly readyAt: Quantiles<Instant | null>;
  readonly saleableTrays: Quantiles<number>;
  readonly usableUntil: LocalDate | Instant | null;
  readonly missingHours: number;
  readonly filledFrom: 'house pattern' | 'set-point' | 'reference temperature' | null;
}

export interface PlantCounts {
  readonly stuck: number;
  readonly alive: number;
  readonly lost: number;
  readonly shipped: number;
}

export interface BatchView {
  readonly id: string;
  readonly site: Code;
  readonly house: Code;
  readonly variety: Code;
  readonly varietyName: string;
  readonly crop: Code;
  readonly cropName: string;
  readonly trayFormat: Code;
  readonly stuckAt: Instant;
  readonly stage: BatchStage;
  readonly stageSince: Instant;
  /** Trays still on the bench. */
  readonly trays: number;
  readonly traysStuck: number;
  readonly plants: PlantCounts;
  readonly lostByCause: Readonly<Record<string, number>>;
  readonly lastCount: { readonly at: Instant; readonly alive: number; readonly sampledCells: number | null } | null;
  readonly outlook: Outlook | null;
  readonly position: Position;
}

export interface BatchList {
  readonly asOf: Instant;
  readonly position: Position;
  readonly batches: readonly BatchView[];
}

export interface NewBatch {
  readonly site: Code;
  readonly house: Code;
  readonly variety: Code;
  readonly trayFormat: Code;
  readonly stuckAt: Instant;
  readonly trays: number;
  /** Left out: trays × cells. */
  readonly plants?: number;
}

export interface Development {
  readonly batch: string;
  readonly house: Code;
  readonly hours: readonly { readonly at: Instant; readonly mediumC: number; readonly source: HourSource }[];
  /** In stages passed: 1 callused, 2 rooted, 3 ready. */
  readonly progress: readonly ({ readonly at: Instant } & Quantiles<number>)[];
  /** Stages that were seen reached. */
  readonly stages: readonly { readonly stage: BatchStage; readonly reachedAt: Instant }[];
  /** Of the cells looked at, how many had reached a stage. */
  readonly looks?: readonly (Look & { readonly at: Instant })[];
  /** Where the batch would be by the profile and temperatures it was stuck with. */
  readonly plan?: readonly { readonly at: Instant; readonly progress: number }[];
}

export type ReachableStage = 'CALLUS' | 'ROOT' | 'READY';

export interface Look {
  readonly stage: ReachableStage;
  readonly cells: number;
  readonly reached: number;
}

export const LOSS_CAUSES = [
  'dry-down',
  'rot',
  'botrytis',
  'damping-off',
  'no-root',
  'pest',
  'damage',
  'other',
] as const;
export type LossCause = (typeof LOSS_CAUSES)[number];

/** What a person can record about a batch. `happenedAt` is the device's time; the server adds its own. */
export type NewEntry = { readonly happenedAt: Instant } & (
  | { readonly kind: 'loss'; readonly plants: number; readonly cause: LossCause; readonly note?: string }
  | { readonly kind: 'stage'; readonly stage: ReachableStage }
  | ({ readonly kind: 'look' } & Look)
  | { readonly kind: 'count'; readonly plants: number }
  | { readonly kind: 'count'; readonly sampledTrays: number; readonly sampledCells: number; readonly blanks: number }
  | { readonly kind: 'move'; readonly house: Code }
  | {
      readonly kind: 'ship';
      readonly trays: number;
      readonly plants?: number;
      readonly order?: string;
      readonly line?: number;
    }
  | { readonly kind: 'reversal'; readonly entry: string; readonly reason: string }
);

export type EntryKind = NewEntry['kind'] | 'stick';

export interface Posting {
  readonly account: 'supplier' | 'alive' | 'lost' | 'shipped';
  readonly house: Code | null;
  readonly cause: LossCause | 'count-difference' | null;
  readonly plants: number;
  readonly effectiveAt: Instant;
}

/** One line of a batch's ledger; fields that do not concern the kind are null. */
export interface EntryView {
  readonly id: string;
  readonly position: Position;
  readonly kind: EntryKind;
  readonly happenedAt: Instant;
  readonly recordedAt: Instant;
  readonly recordedBy: string | null;
  readonly plants: number | null;
  readonly trays: number | null;
  readonly cause: LossCause | 'count-difference' | null;
  readonly note: string | null;
  readonly stage: BatchStage | null;
  readonly house: Code | null;
  readonly sampledTrays: number | null;
  readonly sampledCells: number | null;
  readonly blanks: number | null;
  /** Of a look: cells looked at, and those of them that had reached `stage`. */
  readonly cells?: number | null;
  readonly reached?: number | null;
  readonly reverses: string | null;
  readonly reversedBy: string | null;
  readonly reason: string | null;
  readonly order: string | null;
  readonly line: number | null;
  readonly aliveAfter: number;
  readonly postings: readonly Posting[];
}

export interface RecordedEntry {
  readonly id: string;
  readonly position: Position;
  readonly batch: BatchView;
}

// --- Board -------------------------------------------------------------------------------------------------------

export interface BoardWeek {
  readonly week: IsoWeek;
  readonly monday: LocalDate;
}

export interface BoardCell {
  readonly week: IsoWeek;
  /** The ship day this cell stands for. */
  readonly date: LocalDate;
  readonly ready: number;
  readonly promised: number;
  readonly open: number;
  /** Open at confidence 0.5; never below `open`. */
  readonly likely: number;
  /** Trays promised in this week that can no longer be kept at their confidence. */
  readonly atRisk: number;
}

export interface BoardRow {
  readonly variety: Code;
  readonly varietyName: string;
  readonly crop: Code;
  readonly cropName: string;
  readonly trayFormat: Code;
  readonly site: Code;
  readonly cells: readonly BoardCell[];
}

export type BoardKey = Pick<BoardRow, 'variety' | 'trayFormat' | 'site'>;

export interface BoardBody {
  readonly asOf: Instant;
  readonly position: Position;
  readonly confidence: number;
  readonly weeks: readonly BoardWeek[];
  readonly rows: readonly BoardRow[];
}

export interface CellLot {
  readonly batch: string;
  readonly house: Code;
  readonly stage: BatchStage;
  readonly alive: number;
  readonly saleableTrays: Quantiles<number>;
  readonly readyAt: Quantiles<Instant | null>;
  readonly readyByDateProbability: number;
  readonly usableFrom: LocalDate | Instant | null;
  readonly usableUntil: LocalDate | Instant | null;
  readonly traysAtConfidence: number;
  readonly promisedHere: number;
}

export interface CellPromise {
  readonly order: string;
  readonly line: number;
  readonly customer: string;
  readonly shipOn: LocalDate;
  readonly trays: number;
  readonly shipped: number;
  readonly confidence: number;
  readonly kept: boolean;
  readonly lots: readonly { readonly batch: string; readonly trays: number }[];
}

/** From stuck to open: plants up to `expectedAlive`, trays from `saleable` on. */
export interface CellSteps {
  readonly stuck: number;
  readonly lost: number;
  readonly alive: number;
  readonly shipped: number;
  readonly expectedAlive: number;
  readonly saleable: number;
  readonly ready: number;
  readonly promised: number;
  readonly open: number;
}

export interface CellExplanation extends BoardCell, BoardKey {
  readonly confidence: number;
  readonly asOf: Instant;
  readonly position: Position;
  readonly lots: readonly CellLot[];
  readonly promises: readonly CellPromise[];
  /** The ship dates whose slack is the open figure. */
  readonly limitedBy: {
    readonly dates: readonly LocalDate[];
    readonly capacity: number;
    readonly promised: number;
  } | null;
  readonly steps: CellSteps;
}

// --- Orders ------------------------------------------------------------------------------------------------------

export interface OrderLine extends BoardKey {
  readonly shipOn: LocalDate;
  readonly trays: number;
}

export interface NewOrder {
  readonly customer: string;
  readonly note?: string;
  readonly confidence?: number;
  readonly lines: readonly OrderLine[];
}

export interface OrderPromise extends OrderLine {
  readonly line: number;
  readonly shipped: number;
  readonly confidence: number;
  readonly kept: boolean;
  readonly lots: readonly { readonly batch: string; readonly trays: number }[];
}

export interface OrderView {
  readonly id: string;
  readonly customer: string;
  readonly note: string | null;
  readonly recordedAt: Instant;
  readonly confidence: number;
  readonly released: boolean;
  readonly position: Position;
  readonly promises: readonly OrderPromise[];
}

/** Extension of the 409 "/problems/not-enough-open": the lines that cannot be kept. */
export interface LineShortfall extends OrderLine {
  readonly line: number;
  readonly asked: number;
  readonly open: number;
  readonly nearestDate: LocalDate | null;
  readonly nearestOpen: number | null;
}

// --- Live --------------------------------------------------------------------------------------------------------

export interface LiveEvents {
  readonly hello: { readonly position: Position; readonly asOf: Instant };
  readonly board: { readonly position: Position; readonly asOf: Instant; readonly rows: readonly BoardRow[] };
  readonly removed: { readonly position: Position; readonly rows: readonly BoardKey[] };
  readonly batches: { readonly position: Position; readonly ids: readonly string[] };
  readonly orders: { readonly position: Position };
  readonly setup: { readonly position: Position };
  readonly snapshot: BoardBody;
  readonly beat: { readonly at: Instant };
  /** Readings of these houses were taken. */
  readonly climate: { readonly houses: readonly Code[] };
  readonly warnings: { readonly site: Code; readonly ids: readonly string[] };
}

export interface About {
  readonly version: string;
  readonly asOf: Instant;
  readonly position: Position;
  readonly demo: boolean;
}
