import type { BoardRow, BoardWeek, IsoWeek } from '../shared/api-types';

/** What the shown rows hold today, in trays. */
export interface BoardToday {
  /**
   * In the running week; undefined where it is not shown. Of the promised trays so many were promised at lower odds than
   * the board's: they need not be among the ready ones, and what is ready without a promise may be more.
   */
  readonly thisWeek: { readonly open: number; readonly unpromised: number; readonly lessSure: number } | undefined;
  /** Promised trays at risk in any week that is shown, and in how many rows. */
  readonly atRisk: number;
  readonly rowsAtRisk: number;
}

export function boardToday(rows: readonly BoardRow[], weeks: readonly BoardWeek[], current: IsoWeek): BoardToday {
  const column = weeks.findIndex(({ week }) => week === current);
  let [open, unpromised, lessSure, atRisk, rowsAtRisk] = [0, 0, 0, 0, 0];
  for (const { cells } of rows) {
    const now = cells[column];
    open += now?.open ?? 0;
    unpromised += now ? Math.max(0, now.ready - now.promised) : 0;
    lessSure += now?.lessSure ?? 0;
    const risk = cells.reduce((sum, cell) => sum + cell.atRisk, 0);
    atRisk += risk;
    if (risk > 0) rowsAtRisk++;
  }
  return { thisWeek: column < 0 ? undefined : { open, unpromised, lessSure }, atRisk, rowsAtRisk };
}

/** What a crop's rows hold week by week, in trays. */
export interface CropTotal {
  readonly crop: string;
  readonly name: string;
  readonly rows: number;
  readonly weeks: readonly { readonly open: number; readonly atRisk: number }[];
}

/** By name. Trays of one week add up over rows; those of several weeks do not, as they may be the same trays. */
export function cropTotals(rows: readonly BoardRow[]): readonly CropTotal[] {
  const byCrop = new Map<string, BoardRow[]>();
  for (const row of rows) byCrop.set(row.crop, [...(byCrop.get(row.crop) ?? []), row]);
  return [...byCrop]
    .map(([crop, of]) => ({ crop, name: of[0]?.cropName ?? crop, rows: of.length, weeks: weekSums(of) }))
    .sort((a, b) => a.name.localeCompare(b.name));
}

export function weekSums(rows: readonly BoardRow[]): CropTotal['weeks'] {
  return (rows[0]?.cells ?? []).map((_, i) =>
    rows.reduce(
      (sum, { cells }) => ({ open: sum.open + (cells[i]?.open ?? 0), atRisk: sum.atRisk + (cells[i]?.atRisk ?? 0) }),
      { open: 0, atRisk: 0 },
    ),
  );
}
