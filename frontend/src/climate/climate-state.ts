import type { BatchView } from '../shared/api-types';
import type { Band, ClimateHour, ClimateQuantity, CropRecipe, Phase, PhaseRecipe } from '../shared/climate-types';
import { wallClock } from '../shared/zoned-time';

/** A house held against the recipes of the batches in it. */

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** What a glance shows of every house. */
export const GLANCE = [
  'medium-temperature',
  'air-temperature',
  'relative-humidity',
  'vapour-pressure-deficit',
  'light',
] as const satisfies readonly ClimateQuantity[];

/** What the page of one house draws, hour by hour. */
export const HOURLY = [...GLANCE, 'dew-point', 'medium-moisture', 'ec'] as const satisfies readonly ClimateQuantity[];

export const PERIODS = [1, 3, 7, 14, 30] as const;
const USUAL_DAYS = 3;

export function daysIn(params: URLSearchParams): number {
  const days = Number(params.get('days'));
  return PERIODS.find((each) => each === days) ?? USUAL_DAYS;
}

/** From the beginning of an hour, so that the same hour asks the same question. */
export function periodUntil(nowMs: number, days: number): { readonly from: string; readonly to: string } {
  const toMs = Math.ceil(nowMs / HOUR_MS) * HOUR_MS;
  return { from: new Date(toMs - days * DAY_MS).toISOString(), to: new Date(toMs).toISOString() };
}

// --- Recipes -------------------------------------------------------------------------------------------------------

/** The phase a batch is in by what was seen of it, never by a forecast. */
export function phaseOf(
  batch: Pick<BatchView, 'stage' | 'stageSince' | 'stuckAt'>,
  recipe: Pick<CropRecipe, 'fullMistDays' | 'toneAfterDays'>,
  atMs: number,
): Phase {
  const days = (since: string) => (atMs - Date.parse(since)) / DAY_MS;
  switch (batch.stage) {
    case 'STICK':
      return days(batch.stuckAt) < recipe.fullMistDays ? 'STICKING' : 'CALLUSING';
    case 'CALLUS':
      return 'ROOTING';
    case 'ROOT':
      return days(batch.stageSince) < recipe.toneAfterDays ? 'FILLING' : 'TONING';
    default:
      return 'TONING';
  }
}

/** Night as the warnings mean it: 20:00 to 06:00 by the clocks of the site. */
export function isNight(timeZone: string | undefined, atMs: number): boolean {
  const hour = Number(wallClock(timeZone, atMs).slice(11, 13));
  return hour >= 20 || hour < 6;
}

/** What a phase asks of a quantity; undefined where it asks nothing. */
export function bandOf(phase: PhaseRecipe, quantity: ClimateQuantity, night: boolean): Band | undefined {
  switch (quantity) {
    case 'medium-temperature':
      return phase.mediumC;
    case 'air-temperature':
      return night ? phase.nightAirC : phase.dayAirC;
    case 'relative-humidity':
      return phase.humidityPercent;
    case 'vapour-pressure-deficit':
      return phase.deficitKpa;
    case 'light':
      // Too little light at an hour means nothing: nights are dark.
      return { least: null, most: phase.lightUmol.most };
    case 'medium-moisture':
      return phase.moistureLevel;
    case 'ec':
      return phase.mediumEcMsPerCm;
    default:
      return undefined;
  }
}

export interface CommonBand extends Band {
  /** No value suits all of them. */
  readonly clash: boolean;
}

/** What suits all: the highest of the lower ends to the lowest of the upper ones. */
export function commonBand(bands: readonly Band[]): CommonBand | undefined {
  const ends = (pick: (band: Band) => number | null) =>
    bands.flatMap((band) => {
      const end = pick(band);
      return end === null ? [] : [end];
    });
  const [leasts, mosts] = [ends(({ least }) => least), ends(({ most }) => most)];
  if (leasts.length + mosts.length === 0) return undefined;
  const least = leasts.length === 0 ? null : Math.max(...leasts);
  const most = mosts.length === 0 ? null : Math.min(...mosts);
  return { least, most, clash: least !== null && most !== null && least > most };
}

/** The band of a house at an hour, from the phases of the batches in it. */
export function bandAt(
  phases: readonly PhaseRecipe[],
  quantity: ClimateQuantity,
  night: boolean,
): CommonBand | undefined {
  return commonBand(phases.flatMap((phase) => bandOf(phase, quantity, night) ?? []));
}

// --- Hours ---------------------------------------------------------------------------------------------------------

export interface Outside {
  readonly below: number;
  readonly above: number;
}

/** Hours below and above the band; where batches clash, hours that miss either of its ends count once. */
export function hoursOutside(
  hours: readonly ClimateHour[],
  bandOfHour: (atMs: number) => CommonBand | undefined,
): Outside {
  let [below, above] = [0, 0];
  for (const { at, value } of hours) {
    const band = bandOfHour(Date.parse(at));
    if (!band) continue;
    if (band.least !== null && value < band.least) below++;
    else if (band.most !== null && value > band.most) above++;
  }
  return { below, above };
}

export type Trend = 'rising' | 'falling' | 'steady' | 'unknown';

/** The least change of a mean of three hours that is worth an arrow. */
const WORTH: Partial<Record<ClimateQuantity, number>> = {
  'medium-temperature': 0.3,
  'air-temperature': 0.6,
  'dew-point': 0.5,
  'relative-humidity': 2,
  'vapour-pressure-deficit': 0.05,
  light: 20,
};

/** The last three hours against the three before them. */
export function trendOf(hours: readonly ClimateHour[], quantity: ClimateQuantity): Trend {
  if (hours.length < 6) return 'unknown';
  const mean = (part: readonly ClimateHour[]) => part.reduce((sum, { value }) => sum + value, 0) / part.length;
  const change = mean(hours.slice(-3)) - mean(hours.slice(-6, -3));
  if (Math.abs(change) < (WORTH[quantity] ?? 0)) return 'steady';
  return change > 0 ? 'rising' : 'falling';
}

export function rangeOf(hours: readonly ClimateHour[]): { readonly least: number; readonly most: number } | undefined {
  if (hours.length === 0) return undefined;
  const values = hours.map(({ value }) => value);
  return { least: Math.min(...values), most: Math.max(...values) };
}

/** A sensor that has said nothing for this long is called silent. */
const SILENT_AFTER_MS = 2 * HOUR_MS;

/** @param topic under which it reports by itself; what is read by hand has none and is never silent */
export function isSilent(at: string, nowMs: number, topic: string | null | undefined): boolean {
  return Boolean(topic) && nowMs - Date.parse(at) > SILENT_AFTER_MS;
}

/** Measured and filled hours as two lines that touch where one takes over from the other. */
export function linesOf(
  hours: readonly ClimateHour[],
  shown: (value: number) => number,
): { readonly measured: readonly (number | null)[]; readonly filled: readonly (number | null)[] } {
  const measured: (number | null)[] = Array<number | null>(hours.length).fill(null);
  const filled: (number | null)[] = Array<number | null>(hours.length).fill(null);
  hours.forEach(({ value, source }, i) => {
    const line = source === 'measured' ? measured : filled;
    line[i] = shown(value);
    const before = hours[i - 1];
    if (before && (before.source === 'measured') !== (source === 'measured')) line[i - 1] = shown(before.value);
  });
  return { measured, filled };
}
