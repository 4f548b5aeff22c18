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
export type DraftFault = 'choose' | 'number' | 'noDate' | 'noTime';
/** By `setpoints.0.house`. */
export type DraftFaults = ReadonlyMap<string, DraftFault>;

export type ZoneOf = (house: string) => string | undefined;

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
    const medium = numberTyped(line.medium);
    if (medium === undefined) faults.set(`${at}.medium`, 'number');
    return { house: line.house, mediumC: celsiusTyped(medium ?? 0, unit), from: fromOf(at, line) };
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
  readonly more: number;
  readonly fewer: number;
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
  const sum = (sign: 1 | -1) =>
    cells.reduce((total, { openBefore, openAfter }) => total + Math.max(0, sign * (openAfter - openBefore)), 0);
  return {
    batches: changed.sort((a, b) => size(b) - size(a) || a.id.localeCompare(b.id)),
    unchanged: all.length - changed.length,
    earlier: shifts.filter((shift) => shift < 0).length,
    later: shifts.filter((shift) => shift > 0).length,
    earliestDays: Math.max(0, ...shifts.map((shift) => -shift)),
    latestDays: Math.max(0, ...shifts),
    more: sum(1),
    fewer: sum(-1),
    cells: [...cells].sort(
      (a, b) =>
        a.variety.localeCompare(b.variety) ||
        a.trayFormat.localeCompare(b.trayFormat) ||
        a.site.localeCompare(b.site) ||
        a.week.localeCompare(b.week),
    ),
  };
}
