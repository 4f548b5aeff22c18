import type { Quantiles } from '../shared/api-types';
import { clockTyped } from '../shared/as-of-state';
import type { BatchMove, SetpointChange, WhatIfAnswer, WhatIfWish } from '../shared/learning-types';
import { celsiusTyped, numberTyped, round, temperatureShown, type TemperatureUnit } from '../shared/units';
import { isDate } from '../shared/weeks';
import { instantOf, wallClock } from '../shared/zoned-time';

/** What is being tried: in the address once asked, as texts while it is typed. */

const SIGN = '~';
const DAY_MS = 86_400_000;

export interface WhatIfScope {
  readonly confidence: number;
  readonly weeks: number;
}

export function scopeIn(params: URLSearchParams): WhatIfScope {
  const confidence = Number(params.get('confidence'));
  const weeks = Number(params.get('weeks'));
  return {
    confidence: confidence > 0 && confidence < 1 ? confidence : 0.9,
    weeks: Number.isInteger(weeks) && weeks >= 1 && weeks <= 52 ? weeks : 12,
  };
}

export function isNothing({ setpoints, moves }: WhatIfWish): boolean {
  return setpoints.length + moves.length === 0;
}

/** What the address asks for; a line it cannot read is not asked. */
export function wishIn(params: URLSearchParams): WhatIfWish {
  return {
    setpoints: params.getAll('set').flatMap((text): SetpointChange[] => {
      const [house, medium = '', from] = text.split(SIGN);
      const mediumC = numberTyped(medium);
      return house && from && mediumC !== undefined && !Number.isNaN(Date.parse(from))
        ? [{ house, mediumC, from }]
        : [];
    }),
    moves: params.getAll('move').flatMap((text): BatchMove[] => {
      const [batch, house, from] = text.split(SIGN);
      return batch && house && from && !Number.isNaN(Date.parse(from)) ? [{ batch, house, from }] : [];
    }),
  };
}

export function withWish(before: URLSearchParams, { setpoints, moves }: WhatIfWish): URLSearchParams {
  const params = new URLSearchParams(before);
  for (const name of ['set', 'move', 'batch', 'house']) params.delete(name);
  for (const { house, mediumC, from } of setpoints) params.append('set', [house, mediumC, from].join(SIGN));
  for (const { batch, house, from } of moves) params.append('move', [batch, house, from].join(SIGN));
  return params;
}

// --- While it is typed ---------------------------------------------------------------------------------------------

export interface SetpointDraft {
  readonly key: number;
  readonly house: string;
  readonly medium: string;
  readonly date: string;
  readonly time: string;
}

export interface MoveDraft {
  readonly key: number;
  readonly batch: string;
  readonly house: string;
  readonly date: string;
  readonly time: string;
}

export interface WishDraft {
  readonly setpoints: readonly SetpointDraft[];
  readonly moves: readonly MoveDraft[];
}

export type DraftField = 'house' | 'medium' | 'batch' | 'date' | 'time';
export type DraftFault = 'choose' | 'number' | 'noNow' | 'noDate' | 'noTime';
/** By `setpoints.0.house`. */
export type DraftFaults = ReadonlyMap<string, DraftFault>;

export type ZoneOf = (house: string) => string | undefined;
/** °C that a house's medium is set to; undefined where nothing is known. */
export type SetpointOf = (house: string) => number | undefined;

/**
 * A medium as typed, in °C: `22`, or from the house's own `+2` and `-1.5`, which no medium could mean by themselves.
 */
export function mediumTyped(
  text: string,
  nowC: number | undefined,
  unit: TemperatureUnit,
): { readonly mediumC: number } | { readonly fault: 'number' | 'noNow' } {
  const value = numberTyped(text);
  if (value === undefined) return { fault: 'number' };
  if (!/^\s*[-+−]/.test(text)) return { mediumC: celsiusTyped(value, unit) };
  if (nowC === undefined) return { fault: 'noNow' };
  // In the reader's own degrees: two degrees more are two of theirs.
  return { mediumC: celsiusTyped(round(temperatureShown(nowC, unit), 2) + value, unit) };
}

/** What the recipes of batches ask of the medium, °C, and how many of them a temperature would not suit. */
export interface RecipeLimits {
  readonly least: number | null;
  readonly most: number | null;
  readonly batches: number;
  readonly tooCold: number;
  readonly tooWarm: number;
}

export interface MediumBand {
  readonly least: number | null;
  readonly most: number | null;
}

/** From the lowest to the highest that any of them asks for; undefined where none asks for anything. */
export function recipeLimits(bands: readonly MediumBand[], mediumC: number): RecipeLimits | undefined {
  const leasts = bands.flatMap(({ least }) => least ?? []);
  const mosts = bands.flatMap(({ most }) => most ?? []);
  if (leasts.length + mosts.length === 0) return undefined;
  return {
    least: leasts.length === 0 ? null : Math.min(...leasts),
    most: mosts.length === 0 ? null : Math.max(...mosts),
    batches: bands.length,
    tooCold: leasts.filter((least) => mediumC < least).length,
    tooWarm: mosts.filter((most) => mediumC > most).length,
  };
}

/** The wish as typed lines in the reader's unit and the clocks of each house's site. */
export function draftOf(wish: WhatIfWish, zoneOf: ZoneOf, unit: TemperatureUnit): WishDraft {
  const when = (house: string, from: string) => {
    const [date = '', time = ''] = wallClock(zoneOf(house), Date.parse(from)).split('T');
    return { date, time };
  };
  return {
    setpoints: wish.setpoints.map(({ house, mediumC, from }, key) => ({
      key,
      house,
      medium: String(round(temperatureShown(mediumC, unit), 2)),
      ...when(house, from),
    })),
    moves: wish.moves.map(({ batch, house, from }, i) => ({
      key: wish.setpoints.length + i,
      batch,
      house,
      ...when(house, from),
    })),
  };
}

/** The wish that the lines make, or what is wrong with them, by place. Limits are the server's to know. */
export function wishOf(
  draft: WishDraft,
  zoneOf: ZoneOf,
  unit: TemperatureUnit,
  setpointOf: SetpointOf,
): { readonly wish: WhatIfWish } | { readonly faults: DraftFaults } {
  const faults = new Map<string, DraftFault>();
  const fromOf = (at: string, { house, date, time }: { house: string; date: string; time: string }) => {
    if (!isDate(date)) {
      faults.set(`${at}.date`, 'noDate');
      return '';
    }
    const from = instantOf(zoneOf(house), date, clockTyped(time));
    if (from === undefined) faults.set(`${at}.time`, 'noTime');
    return from ?? '';
  };
  const setpoints = draft.setpoints.map((line, i) => {
    const at = `setpoints.${i}`;
    if (line.house === '') faults.set(`${at}.house`, 'choose');
    const medium = mediumTyped(line.medium, setpointOf(line.house), unit);
    // Of no house it cannot be said what it is set to.
    if ('fault' in medium && !(medium.fault === 'noNow' && line.house === '')) faults.set(`${at}.medium`, medium.fault);
    return { house: line.house, mediumC: 'fault' in medium ? 0 : medium.mediumC, from: fromOf(at, line) };
  });
  const moves = draft.moves.map((line, i) => {
    const at = `moves.${i}`;
    if (line.batch === '') faults.set(`${at}.batch`, 'choose');
    if (line.house === '') faults.set(`${at}.house`, 'choose');
    return { batch: line.batch, house: line.house, from: fromOf(at, line) };
  });
  return faults.size > 0 ? { faults } : { wish: { setpoints, moves } };
}

// --- What comes of it ------------------------------------------------------------------------------------------------

/** Days by which a date moves; null when it is out of sight before or after. */
export function shiftDays(before: Quantiles<string | null>, after: Quantiles<string | null>): number | null {
  if (before.p50 === null || after.p50 === null) return null;
  return (Date.parse(after.p50) - Date.parse(before.p50)) / DAY_MS;
}

export type BatchOutcome = WhatIfAnswer['batches'][number] & { readonly shift: number | null };

/** Less than an hour is no change. */
const NO_SHIFT_DAYS = 0.05;

function changes({ before, after, shift }: BatchOutcome): boolean {
  const gone = (before.readyAt.p50 === null) !== (after.readyAt.p50 === null);
  return (
    gone ||
    (shift !== null && Math.abs(shift) >= NO_SHIFT_DAYS) ||
    before.saleableTrays.p50 !== after.saleableTrays.p50 ||
    before.house !== after.house
  );
}

export interface Outcome {
  /** Those that change, the largest shift first. */
  readonly batches: readonly BatchOutcome[];
  readonly unchanged: number;
  readonly earlier: number;
  readonly later: number;
  readonly earliestDays: number;
  readonly latestDays: number;
  /** Promises that could be kept then, and those that could no longer; the largest first. */
  readonly rescued: WhatIfAnswer['promises'];
  readonly broken: WhatIfAnswer['promises'];
  /** Places of the board with more and with fewer open trays. The trays are not added up: weeks share them. */
  readonly risen: number;
  readonly fallen: number;
  readonly cells: WhatIfAnswer['cells'];
}

export function outcomeOf(answer: WhatIfAnswer): Outcome {
  const all = answer.batches.map((batch) => ({
    ...batch,
    shift: shiftDays(batch.before.readyAt, batch.after.readyAt),
  }));
  const changed = all.filter(changes);
  const size = ({ shift }: BatchOutcome) => (shift === null ? Infinity : Math.abs(shift));
  const shifts = changed.flatMap(({ shift }) => (shift !== null && Math.abs(shift) >= NO_SHIFT_DAYS ? [shift] : []));
  const cells = answer.cells.filter(({ openBefore, openAfter }) => openBefore !== openAfter);
  const worse = ({ shortBefore, shortAfter }: WhatIfAnswer['promises'][number]) => shortAfter - shortBefore;
  const byChange = [...answer.promises].sort((a, b) => worse(b) - worse(a) || a.orderNumber - b.orderNumber);
  return {
    batches: changed.sort((a, b) => size(b) - size(a) || a.id.localeCompare(b.id)),
    unchanged: all.length - changed.length,
    earlier: shifts.filter((shift) => shift < 0).length,
    later: shifts.filter((shift) => shift > 0).length,
    earliestDays: Math.max(0, ...shifts.map((shift) => -shift)),
    latestDays: Math.max(0, ...shifts),
    rescued: byChange.filter((promise) => worse(promise) < 0).reverse(),
    broken: byChange.filter((promise) => worse(promise) > 0),
    risen: cells.filter(({ openBefore, openAfter }) => openAfter > openBefore).length,
    fallen: cells.filter(({ openBefore, openAfter }) => openAfter < openBefore).length,
    cells: [...cells].sort(
      (a, b) =>
        a.variety.localeCompare(b.variety) ||
        a.trayFormat.localeCompare(b.trayFormat) ||
        a.site.localeCompare(b.site) ||
        a.week.localeCompare(b.week),
    ),
  };
}
