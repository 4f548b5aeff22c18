import type { BatchStage, Development, HourSource } from '../shared/api-types';

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

/** The expectation and the plan over the same times. */
export interface ProgressLines {
  readonly at: readonly string[];
  readonly p10: readonly (number | null)[];
  readonly p50: readonly (number | null)[];
  readonly p90: readonly (number | null)[];
  readonly plan: readonly (number | null)[] | undefined;
}

interface Point {
  readonly ms: number;
  readonly value: number;
}

/** Both lines at every time that either of them has; in between they are straight, as they are drawn. */
export function progressLines({ progress, plan }: Pick<Development, 'progress' | 'plan'>): ProgressLines {
  const times = [...new Set([...progress, ...(plan ?? [])].map(({ at }) => Date.parse(at)))].sort((a, b) => a - b);
  const through = (points: readonly Point[]) => times.map((ms) => interpolated(points, ms));
  const line = (quantile: 'p10' | 'p50' | 'p90') =>
    through(progress.map((point) => ({ ms: Date.parse(point.at), value: point[quantile] })));
  return {
    at: times.map((ms) => new Date(ms).toISOString()),
    p10: line('p10'),
    p50: line('p50'),
    p90: line('p90'),
    plan:
      plan === undefined || plan.length === 0
        ? undefined
        : through(plan.map((point) => ({ ms: Date.parse(point.at), value: point.progress }))),
  };
}

/** The value at `ms` on the line through `points`, which rise in time; null beyond their ends. */
export function interpolated(points: readonly Point[], ms: number): number | null {
  let low = 0;
  let high = points.length - 1;
  const [first, last] = [points[low], points[high]];
  if (!first || !last || ms < first.ms || ms > last.ms) return null;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((points[middle] as Point).ms <= ms) low = middle;
    else high = middle;
  }
  const [a, b] = [points[low] as Point, points[high] as Point];
  return b.ms === a.ms ? b.value : a.value + ((b.value - a.value) * (ms - a.ms)) / (b.ms - a.ms);
}

const LEVEL: Readonly<Record<BatchStage, number>> = { STICK: 0, CALLUS: 1, ROOT: 2, READY: 3, SHIP: 3 };
/** The share of living cells at which a stage counts as reached. */
const COMPLETE = 0.9;

/** Looks as marks at the stage they looked for. */
export function lookNotes(
  looks: Development['looks'],
  say: (reached: number, cells: number) => string,
): readonly { readonly at: string; readonly value: number; readonly label: string; readonly filled: boolean }[] {
  return looks.map(({ at, stage, cells, reached }) => ({
    at,
    value: LEVEL[stage],
    label: say(reached, cells),
    filled: cells > 0 && reached / cells >= COMPLETE,
  }));
}
