import type { Development, HourSource } from '../shared/api-types';

/** Hours of a batch as lines to draw: one per source, touching where the source changes. */
export type HourLines = Readonly<Record<HourSource, readonly (number | null)[]>>;

/**
 * Splits the hours by where their value comes from. At a change the new line begins at the last point of the old one:
 * otherwise a single filled hour between two measured ones would be a point, which no line shows.
 */
export function linesBySource(hours: Development['hours'], shown: (celsius: number) => number): HourLines {
  const lines: Record<HourSource, (number | null)[]> = {
    measured: Array<number | null>(hours.length).fill(null),
    filled: Array<number | null>(hours.length).fill(null),
    forecast: Array<number | null>(hours.length).fill(null),
  };
  hours.forEach(({ mediumC, source }, i) => {
    lines[source][i] = shown(mediumC);
    const before = hours[i - 1];
    if (before && before.source !== source) lines[source][i - 1] = shown(before.mediumC);
  });
  return lines;
}
