import { everyWord, type Needing, type Schemas } from './contract';

/** Setup, batches, the board and orders, by the names the screens use. */

export type Instant = Schemas['Instant'];
export type LocalDate = Schemas['LocalDate'];
export type IsoWeek = Schemas['WeekWire']['week'];
export type Code = string;
/** Position in the ledger; grows with every recorded fact. */
export type Position = Schemas['About']['position'];
export type About = Schemas['About'];

// --- Setup -------------------------------------------------------------------------------------------------------

export type DayOfWeek = Schemas['DayOfWeek'];
export type Site = Schemas['SiteWire'];
export type House = Schemas['HouseWire'];
export type TrayFormat = Schemas['TrayFormatWire'];
export type Crop = Schemas['CropWire'];
/** A crop that comes with the application, with the source of every figure. */
export type SeededCrop = Schemas['SeededCropWire'];
export type Variety = Schemas['VarietyWire'];
export type CropProfile = Schemas['ProfileWire'];
export type StageProfile = Schemas['StageWire'];

/** Where a batch stands. */
export type BatchStage = Schemas['Stage'];
/** The three stages in which a cutting develops. */
export type RootingStage = Exclude<BatchStage, 'READY' | 'SHIP'>;
export type ReachableStage = Exclude<BatchStage, 'STICK' | 'SHIP'>;

// --- Batches and entries -----------------------------------------------------------------------------------------

/** A distribution by three of its quantiles. */
export interface Quantiles<T> {
  readonly p10: T;
  readonly p50: T;
  readonly p90: T;
}

export type HourSource = Schemas['HourSource'];
export type Outlook = Schemas['OutlookView'];
export type PlantCounts = Schemas['Plants'];
export type BatchView = Schemas['BatchView'];
export type BatchList = Schemas['BatchList'];
/** A batch that cannot be computed, and why; it is in no list but that of the faulty. */
export type FaultyBatch = Schemas['FaultyView'];
export type NewBatch = Schemas['BatchWire'];
/** A table of batches that stand on the benches already, and how it is to be read. */
export type BatchCsvQuestion = Schemas['BatchCsvWire'];
export type BatchCsvLine = Schemas['BatchCsvLine'];
/** What was, or in a dry run would be, made of it. */
export type BatchCsvReport = Schemas['BatchCsvReport'];
export type Development = Schemas['Development'];
export type EntryView = Schemas['EntryView'];
export type EntryKind = Schemas['EntryKind'];
export type Posting = Schemas['PostingView'];

export type LossCause = Schemas['LossCause'];
export const LOSS_CAUSES = everyWord<LossCause>()([
  'dry-down',
  'rot',
  'botrytis',
  'damping-off',
  'no-root',
  'pest',
  'damage',
  'other',
]);

export interface Look {
  readonly stage: ReachableStage;
  readonly cells: number;
  readonly reached: number;
}

type EntryWire = Schemas['EntryWire'];
type EntryOf<Kind extends EntryWire['kind'], Members extends keyof EntryWire> = { readonly kind: Kind } & Needing<
  EntryWire,
  Members
>;

/** What a person can record about a batch. `happenedAt` is the device's time; the server adds its own. */
export type NewEntry = Needing<EntryWire, 'happenedAt'> &
  Pick<EntryWire, 'confirmed'> &
  (
    | (EntryOf<'loss', 'plants' | 'cause'> & { readonly note?: string })
    | (EntryOf<'stage', never> & { readonly stage: ReachableStage })
    | (EntryOf<'look', 'cells' | 'reached'> & { readonly stage: ReachableStage })
    | EntryOf<'count', 'plants'>
    | EntryOf<'count', 'sampledTrays' | 'sampledCells' | 'blanks'>
    | EntryOf<'move', 'house'>
    | (EntryOf<'ship', 'trays'> & { readonly plants?: number; readonly order?: string; readonly line?: number })
    | EntryOf<'reversal', 'entry' | 'reason'>
  );

// --- Board -------------------------------------------------------------------------------------------------------

export type BoardWeek = Schemas['WeekWire'];
export type BoardCell = Schemas['CellWire'];
export type BoardRow = Schemas['RowWire'];
export type BoardKey = Pick<BoardRow, 'variety' | 'trayFormat' | 'site'>;
/** A batch of the row that cannot be computed, and why. */
export type FaultyOfRow = Schemas['FaultyWire'];
export type BoardBody = Schemas['BoardWire'];
export type CellExplanation = Schemas['CellExplained'];
export type CellLot = Schemas['LotWire'];
export type CellPromise = Schemas['PromiseWire'];
/** From stuck to open: plants up to `expectedAlive`, trays from `saleable` on. */
export type CellSteps = Schemas['Steps'];

// --- Orders ------------------------------------------------------------------------------------------------------

export type OrderLine = Schemas['LineWire'];
export type NewOrder = Schemas['OrderWire'];
export type OrderPromise = Schemas['PromiseView'];
export type OrderView = Schemas['OrderView'];

/** Extension of the 409 "/problems/not-enough-open": the lines that cannot be kept. Problems are not in the document. */
export interface LineShortfall extends OrderLine {
  readonly line: number;
  readonly asked: number;
  readonly open: number;
  readonly nearestDate: LocalDate | null;
  readonly nearestOpen: number | null;
  readonly earlierDate: LocalDate | null;
  readonly earlierOpen: number | null;
  readonly laterDate: LocalDate | null;
  readonly laterOpen: number | null;
}

// --- Live --------------------------------------------------------------------------------------------------------

/** What the stream tells, by the name of the event; the document knows only that there is a stream. */
export interface LiveEvents {
  readonly hello: { readonly position: Position; readonly asOf: Instant };
  readonly board: { readonly position: Position; readonly asOf: Instant; readonly rows: readonly BoardRow[] };
  readonly removed: { readonly position: Position; readonly rows: readonly BoardKey[] };
  readonly batches: { readonly position: Position; readonly ids: readonly string[] };
  readonly orders: { readonly position: Position };
  readonly setup: { readonly position: Position };
  readonly snapshot: BoardBody;
  /** When the server says so, and of when its figures are. */
  readonly beat: { readonly at: Instant; readonly asOf: Instant };
  /** Readings of these houses were taken. */
  readonly climate: { readonly houses: readonly Code[] };
  readonly warnings: { readonly site: Code; readonly ids: readonly string[] };
}
