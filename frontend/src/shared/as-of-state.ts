import type { Instant } from './api-types';
import { isDate } from './weeks';
import { instantOf } from './zoned-time';

/** Looking back: the moment that an address names, and the one that a reader types. */

/** The moment in `asOf=`, or undefined when there is none, when it is none, or when it is still to come. */
export function asOfIn(params: URLSearchParams, nowMs: number): Instant | undefined {
  const text = params.get('asOf');
  if (!text || !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(text)) return undefined;
  const ms = Date.parse(text);
  return Number.isNaN(ms) || ms > nowMs ? undefined : new Date(ms).toISOString();
}

export function withAsOf(before: URLSearchParams, asOf: Instant | undefined): URLSearchParams {
  const params = new URLSearchParams(before);
  if (asOf === undefined) params.delete('asOf');
  // Seconds say nothing here and make a link longer.
  else params.set('asOf', asOf.replace(/:\d{2}(\.\d+)?Z$/, 'Z'));
  return params;
}

export type AsOfFault = 'noDay' | 'noTime' | 'toCome';

/** The moment that a day and a time of the site mean, or what is wrong with them. */
export function momentTyped(
  timeZone: string | undefined,
  date: string,
  time: string,
  nowMs: number,
): { readonly asOf: Instant } | { readonly fault: AsOfFault } {
  if (!isDate(date)) return { fault: 'noDay' };
  const asOf = instantOf(timeZone, date, clockTyped(time));
  if (asOf === undefined) return { fault: 'noTime' };
  return Date.parse(asOf) > nowMs ? { fault: 'toCome' } : { asOf };
}

/** 9:30 and 930 mean 09:30. */
export function clockTyped(text: string): string {
  const found = /^\s*(\d{1,2})[:.]?(\d{2})\s*$/.exec(text);
  return found ? `${found[1]?.padStart(2, '0')}:${found[2]}` : text.trim();
}
