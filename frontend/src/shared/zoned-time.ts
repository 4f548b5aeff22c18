import type { Instant, LocalDate } from './api-types';

/** Wall-clock times of a site: what people type, and the instant they mean. */

const clocks = new Map<string | undefined, Intl.DateTimeFormat>();

/** 2026-11-25T09:41 as the clocks show it in `timeZone`. */
export function wallClock(timeZone: string | undefined, instantMs: number): string {
  // Kept by zone: making one takes longer than asking it many times.
  const clock =
    clocks.get(timeZone) ??
    new Intl.DateTimeFormat('en-CA', {
      timeZone,
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
    });
  clocks.set(timeZone, clock);
  const parts = clock.formatToParts(instantMs);
  const part = (type: string) => parts.find((each) => each.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')}T${part('hour')}:${part('minute')}`;
}

/**
 * The instant at which the clocks of `timeZone` show `date` and `time` (HH:mm). A time that a clock change skips does
 * not exist and gives undefined; one that comes twice means the first.
 */
export function instantOf(timeZone: string | undefined, date: LocalDate, time: string): Instant | undefined {
  const wanted = `${date}T${time}`;
  const asUtcMs = Date.parse(`${wanted}:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(wanted) || Number.isNaN(asUtcMs)) return undefined;
  // Clocks are at most 14 h ahead and 12 h behind; the two offsets in force around the moment are the only candidates.
  const offsets = [-15, 15].map((hours) => offsetMs(timeZone, asUtcMs + hours * 3_600_000));
  const found = offsets
    .map((offset) => asUtcMs - offset)
    .sort((a, b) => a - b)
    .find((ms) => wallClock(timeZone, ms) === wanted);
  return found === undefined ? undefined : new Date(found).toISOString();
}

function offsetMs(timeZone: string | undefined, atMs: number): number {
  return Date.parse(`${wallClock(timeZone, atMs)}:00Z`) - Math.floor(atMs / 60_000) * 60_000;
}
