/** Shapes of climate, recipes, rounds, warnings and treatments. Values in °C, %, µmol/m²/s, kPa, level 1-5, mS/cm. */
import type { Code, HourSource, Instant, LocalDate } from './api-types';

export type MeasuredQuantity =
  'medium-temperature' | 'air-temperature' | 'relative-humidity' | 'light' | 'medium-moisture' | 'ec';
export type DerivedQuantity = 'vapour-pressure-deficit' | 'dew-point' | 'daily-light-integral';
export type ClimateQuantity = MeasuredQuantity | DerivedQuantity;

export interface ClimateHour {
  readonly at: Instant;
  readonly value: number;
  readonly source: HourSource;
}

export type FlagKind = 'range' | 'spike' | 'step' | 'flat-line' | 'disagreement' | 'late' | 'duplicate' | 'clock-skew';

/** A reading that a rule found doubtful; one line may stand for `count` of them in a row. */
export interface ClimateFlag {
  /** Null: nothing to override. */
  readonly id: string | null;
  readonly at: Instant;
  readonly until: Instant;
  readonly kind: FlagKind;
  readonly reason: string;
  readonly sensor: Code | null;
  readonly quantity: ClimateQuantity;
  readonly value: number | null;
  /** Left out of the hour's value. */
  readonly leftOut: boolean;
  readonly overridden: boolean;
  readonly overrideReason: string | null;
  readonly count: number;
}

export interface ClimateSeries {
  readonly house: Code;
  readonly quantity: ClimateQuantity;
  readonly unit: string;
  readonly hours: readonly ClimateHour[];
  readonly flags?: readonly ClimateFlag[];
}

export interface ClimateNow {
  readonly house: Code;
  readonly quantities: readonly {
    readonly quantity: ClimateQuantity;
    readonly value?: number;
    readonly valueC?: number | null;
    readonly unit?: string;
    readonly at: Instant;
    readonly sensor?: Code | null;
  }[];
}

export interface Sensor {
  readonly code: Code;
  readonly house: Code;
  readonly quantity: MeasuredQuantity;
  readonly unit: string;
  readonly topic: string | null;
  readonly offset?: number;
  readonly lightSource?: string;
  /** Of a moisture probe that shows no level: what it shows at levels 1 to 5. */
  readonly levels?: readonly number[] | null;
}

/** When a sensor was last heard; the value with its offset, in the quantity's own unit. */
export interface SensorHealth {
  readonly sensor: Code;
  readonly quantity: MeasuredQuantity;
  readonly lastAt: Instant | null;
  readonly lastValue: number | null;
}

/** As it came, and in the quantity's own unit with the offset. */
export interface SensorReading {
  readonly at: Instant;
  readonly value: number;
  readonly sent: number;
  readonly unit: string;
}

export interface PlannedSetpoint {
  readonly mediumC: number | null;
  readonly from: Instant;
  readonly recordedAt: Instant;
}

// --- Recipes -------------------------------------------------------------------------------------------------------

export const PHASES = ['STICKING', 'CALLUSING', 'ROOTING', 'FILLING', 'TONING'] as const;
export type Phase = (typeof PHASES)[number];
export type MistRegime = 'RUNNING' | 'WEANING' | 'NIGHT_OFF' | 'NONE';

/** Ends that are null are open. */
export interface Band {
  readonly least: number | null;
  readonly most: number | null;
}

export interface PhaseRecipe {
  readonly phase: Phase;
  readonly mediumC: Band;
  readonly dayAirC: Band;
  readonly nightAirC: Band;
  readonly humidityPercent: Band;
  readonly deficitKpa: Band;
  readonly lightUmol: Band;
  readonly moistureLevel: Band;
  readonly mist: MistRegime;
  readonly nitrogenPpm: Band;
}

export interface CropRecipe {
  readonly crop: Code;
  readonly version: number;
  readonly recordedAt: Instant | null;
  readonly mistNeed: string;
  readonly fullMistDays: number;
  readonly toneAfterDays: number;
  readonly lowLightMol: number;
  readonly lowLightMediumLeastC: number;
  readonly phases: readonly PhaseRecipe[];
  readonly note: string | null;
}

// --- Rounds --------------------------------------------------------------------------------------------------------

export const TASKS = [
  'look-callus',
  'look-root',
  'wean-mist',
  'night-mist-off',
  'mist-off',
  'feed-step',
  'moisture-check',
  'scouting',
  'prevention',
  'count',
  'move',
  'tone',
  'ready',
] as const;
export type RoundTask = (typeof TASKS)[number];
export type RoundState = 'due' | 'carried-over' | 'blocked' | 'done' | 'skipped';
export type RoundField =
  'cells' | 'reached' | 'plants' | 'house' | 'level' | 'fungusGnats' | 'shoreFlies' | 'nitrogenPpm';

export interface RoundItem {
  readonly id: string;
  readonly house: Code;
  readonly houseName: string;
  readonly batch: string | null;
  readonly varietyName: string | null;
  readonly trays: number | null;
  readonly phase: Phase | null;
  readonly task: RoundTask;
  readonly dueOn: LocalDate;
  readonly state: RoundState;
  readonly why: string;
  readonly asks: readonly RoundField[];
  readonly blockedUntil: Instant | null;
  /** For a move: houses whose climate would suit. */
  readonly fits: readonly Code[];
}

export interface HouseOnTheWalk {
  readonly house: Code;
  readonly name: string;
  readonly batches: number;
  readonly blockedUntil: Instant | null;
  readonly clashes: readonly {
    readonly quantity: string;
    readonly least: number | null;
    readonly most: number | null;
    readonly mist: readonly MistRegime[];
    readonly stay: readonly string[];
    readonly move: readonly { readonly batch: string; readonly fits: readonly Code[] }[];
  }[];
}

export type RoundDone = { readonly happenedAt: Instant } & Partial<
  Readonly<Record<Exclude<RoundField, 'house'>, number>> & {
    readonly house: Code;
    readonly stageReached: boolean;
    readonly note: string;
  }
>;

// --- Warnings ------------------------------------------------------------------------------------------------------

export const WARNING_KINDS = [
  'dry-down',
  'medium-dry',
  'over-misting',
  'medium-saturated',
  'medium-cold',
  'air-cold',
  'light-high',
  'night-mist-on',
  'mist-not-weaned',
  'no-feed',
  'scouting-missed',
  'prevention-missed',
  'no-readings',
] as const;
export type WarningKind = (typeof WARNING_KINDS)[number];
export type WarningState = 'lasting' | 'acknowledged' | 'ended';

export interface WarningView {
  readonly id: string;
  readonly kind: WarningKind;
  readonly site: Code;
  readonly house: Code;
  readonly batch: string | null;
  readonly quantity: string | null;
  readonly state: WarningState;
  readonly since: Instant;
  readonly raisedAt: Instant;
  readonly until: Instant | null;
  readonly worst: number | null;
  readonly limit: number | null;
  readonly unit: string | null;
  readonly batches: readonly string[];
  readonly text: string;
  readonly acknowledgedAt: Instant | null;
  readonly acknowledgedBy: string | null;
  readonly acknowledgement: string | null;
  readonly deliveries: readonly {
    readonly channel: string;
    readonly dueAt: Instant;
    readonly attempts: number;
    readonly lastError: string | null;
    readonly deliveredAt: Instant | null;
  }[];
}

// --- Treatments ----------------------------------------------------------------------------------------------------

export const PURPOSES = ['prevention', 'control', 'growth-regulation', 'other'] as const;
export type Purpose = (typeof PURPOSES)[number];

export interface NewTreatment {
  readonly house: Code;
  readonly batch?: string;
  readonly purpose: Purpose;
  readonly product: string;
  readonly rate: string;
  readonly appliedBy: string;
  readonly appliedAt: Instant;
  readonly reentryHours: number;
  readonly note?: string;
}

export interface TreatmentView extends Omit<NewTreatment, 'batch' | 'note'> {
  readonly id: string;
  readonly site: Code;
  readonly batch: string | null;
  readonly note: string | null;
  readonly reentryAt: Instant;
  /** It keeps people out of the house now. */
  readonly closed: boolean;
  readonly recordedAt: Instant;
  readonly recordedBy: string;
  readonly reversedAt: Instant | null;
  readonly reversalReason: string | null;
  readonly cautions: readonly string[];
}
