import { everyWord, type Needing, type Schemas } from './contract';

/** Climate, recipes, rounds, warnings and treatments, by the names the screens use. */

export type MeasuredQuantity = Schemas['MeasuredQuantity'];
export type ClimateQuantity = Schemas['ClimateQuantity'];
export type DerivedQuantity = Exclude<ClimateQuantity, MeasuredQuantity>;
export type ClimateHour = Schemas['Hour'];
export type FlagKind = Schemas['FlagKind'];
/** A reading that a rule found doubtful; one line may stand for `count` of them in a row. */
export type ClimateFlag = Schemas['Line'];
export type ClimateSeries = Schemas['ClimateWire'];
export type ClimateNow = Schemas['NowWire'];
/** How a house is now, with its last hours. */
export type HouseGlance = Schemas['HouseGlanceWire'];
export type Sensor = Schemas['SensorWire'];
/** When a sensor was last seen; the value with its offset, in the quantity's own unit. */
export type SensorHealth = Schemas['Health'];
/** As it came, and in the quantity's own unit with the offset. */
export type SensorReading = Schemas['RawWire'];
/** `mediumC` is null where the heat goes off. */
export type PlannedSetpoint = Schemas['SetpointWire'];

// --- Recipes -------------------------------------------------------------------------------------------------------

export type Phase = Schemas['Phase'];
export const PHASES = everyWord<Phase>()(['STICKING', 'CALLUSING', 'ROOTING', 'FILLING', 'TONING']);
export type MistRegime = Schemas['MistRegime'];
/** Ends that are null are open. */
export type Band = Required<Schemas['BandWire']>;
type PhaseWire = Schemas['PhaseWire'];
export type PhaseRecipe = {
  readonly [Name in keyof PhaseWire]-?: NonNullable<PhaseWire[Name]> extends Schemas['BandWire']
    ? Band
    : PhaseWire[Name];
};
type RecipeWire = Schemas['RecipeWire'];
/** As it is answered: what a new recipe may leave out is filled in. */
export type CropRecipe = Needing<RecipeWire, Filled> &
  Required<Pick<RecipeWire, 'mistNeed' | 'note' | 'recordedAt'>> & { readonly phases: readonly PhaseRecipe[] };
type Filled = 'crop' | 'version' | 'fullMistDays' | 'toneAfterDays' | 'lowLightMol' | 'lowLightMediumLeastC';

// --- Rounds --------------------------------------------------------------------------------------------------------

export type RoundTask = Schemas['RoundTask'];
export const TASKS = everyWord<RoundTask>()([
  'arrival-check',
  'wetting-agent',
  'draught-look',
  'look-callus',
  'look-root',
  'wean-mist',
  'night-mist-off',
  'mist-off',
  'feed-step',
  'moisture-check',
  'ec-check',
  'scouting',
  'prevention',
  'count',
  'move',
  'tone',
  'ready',
]);
export type RoundState = Schemas['RoundState'];
/** What a check may ask for, and the amounts that may be told unasked. */
export type RoundField =
  | Schemas['RoundField']
  | 'nitrogenPpm'
  | 'boxC'
  | 'standbyHours'
  | 'traps'
  | 'thrips'
  | 'aphids'
  | 'whiteflies'
  | 'mites'
  | 'otherPests';
export type BoxCondition = Schemas['BoxCondition'];
export const BOX_CONDITIONS = everyWord<BoxCondition>()(['fresh', 'wilted', 'damaged']);
export type RoundItem = Schemas['RoundItemView'];
export type HouseOnTheWalk = Schemas['HouseOnTheWalk'];
export type RoundDone = Schemas['DoneWire'];

// --- Warnings ------------------------------------------------------------------------------------------------------

export type WarningKind = Schemas['WarningKind'];
export const WARNING_KINDS = everyWord<WarningKind>()([
  'dry-down',
  'medium-dry',
  'over-misting',
  'medium-saturated',
  'medium-cold',
  'air-cold',
  'light-high',
  'air-wet',
  'night-mist-on',
  'mist-not-weaned',
  'leached',
  'no-feed',
  'scouting-missed',
  'prevention-missed',
  'no-readings',
]);
export type WarningState = Schemas['WarningState'];
export type WarningView = Schemas['WarningView'];

// --- Treatments ----------------------------------------------------------------------------------------------------

export type Purpose = Schemas['TreatmentPurpose'];
export const PURPOSES = everyWord<Purpose>()(['prevention', 'control', 'growth-regulation', 'other']);
export type NewTreatment = Schemas['TreatmentWire'];
export type TreatmentView = Schemas['TreatmentView'];
