import type { BoardCell, BoardRow, IsoWeek, LocalDate } from '../shared/api-types';
import { rowKey } from './board-state';

/** A place of the board that is otherwise now than it was then. */
export interface ChangeSince {
  readonly key: string;
  /** As it is now, or as it was where it has gone. */
  readonly row: BoardRow;
  readonly week: IsoWeek;
  /** The ship day of the row's site in that week. */
  readonly date: LocalDate | undefined;
  readonly before: Figures;
  readonly after: Figures;
}

type Figures = Readonly<Record<(typeof COMPARED)[number], number>>;

const COMPARED = ['open', 'promised', 'atRisk'] as const satisfies readonly (keyof BoardCell)[];
const NOTHING: Figures = { open: 0, promised: 0, atRisk: 0 };

/**
 * What changed since then, in the weeks from `current` on that both show: first where more is at risk, then where open
 * changed most. A row that came or went counts as having held nothing.
 */
export function changesSince(
  then: readonly BoardRow[],
  now: readonly BoardRow[],
  current: IsoWeek,
): readonly ChangeSince[] {
  const was = new Map(then.map((row) => [rowKey(row), row]));
  const is = new Map(now.map((row) => [rowKey(row), row]));
  const weeksOf = (rows: readonly BoardRow[]) => new Set(rows[0]?.cells.map(({ week }) => week));
  const [before, after] = [weeksOf(then), weeksOf(now)];
  const weeks = [...(before.size > 0 ? before : after)].filter(
    (week) => week >= current && (after.size === 0 || after.has(week)),
  );
  return [...new Set([...was.keys(), ...is.keys()])]
    .flatMap((key) => {
      const row = is.get(key) ?? was.get(key);
      if (!row) return [];
      return weeks.map((week) => ({
        key: `${key}~${week}`,
        row,
        week,
        date: [is, was].flatMap((rows) => rows.get(key)?.cells.find((cell) => cell.week === week)?.date ?? [])[0],
        before: figuresIn(was.get(key), week),
        after: figuresIn(is.get(key), week),
      }));
    })
    .filter(({ before, after }) => COMPARED.some((figure) => before[figure] !== after[figure]))
    .sort(
      (a, b) =>
        risen(b) - risen(a) ||
        Math.abs(b.after.open - b.before.open) - Math.abs(a.after.open - a.before.open) ||
        a.key.localeCompare(b.key),
    );
}

function risen({ before, after }: ChangeSince): number {
  return after.atRisk - before.atRisk;
}

function figuresIn(row: BoardRow | undefined, week: IsoWeek): Figures {
  return row?.cells.find((cell) => cell.week === week) ?? NOTHING;
}
