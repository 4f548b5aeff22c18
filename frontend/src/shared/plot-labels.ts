import type { Formats } from './formats';

/** Where the words in a plot go, so that none lies on another. */

export interface WordSpan {
  /** Both in the same unit, whatever it is. */
  readonly from: number;
  readonly until: number;
}

/**
 * The line that each word is written on: the first that is free where it stands. Where all are taken the word is left
 * out (undefined): it is in the table behind the plot, and two words on one another are none.
 */
export function linesFor(words: readonly WordSpan[], lines: number): readonly (number | undefined)[] {
  const taken: WordSpan[][] = Array.from({ length: lines }, () => []);
  return words.map((word) => {
    const line = taken.findIndex((there) => there.every(({ from, until }) => word.until <= from || word.from >= until));
    if (line < 0) return undefined;
    taken[line]?.push(word);
    return line;
  });
}

/** The place that a legend tells while no pointer is over the plot: the last figures up to `nowMs`, or the last of all. */
export function restingPlace(
  atMs: readonly number[],
  series: readonly (readonly (number | null)[])[],
  nowMs: number | undefined,
): number | undefined {
  const told = atMs.flatMap((_, i) => (series.some((values) => (values[i] ?? null) !== null) ? [i] : []));
  const past = nowMs === undefined ? [] : told.filter((i) => (atMs[i] ?? Infinity) <= nowMs);
  return past.at(-1) ?? told.at(-1);
}

const DAY_S = 86_400;

/** A place on the axis of time, `all` of them in seconds: its day where they are days apart or a day begins, else its hour. */
export function timeTick(
  s: number,
  all: readonly number[],
  format: Pick<Formats, 'dayOf' | 'time'>,
  timeZone?: string,
): string {
  const instant = new Date(s * 1000).toISOString();
  const apart = (all[1] ?? s + DAY_S) - (all[0] ?? s);
  const hour = format.time(instant, timeZone);
  return apart >= DAY_S || hour === '00:00' ? format.dayOf(instant, timeZone) : hour;
}
