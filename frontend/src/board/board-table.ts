import type { BoardRow, BoardWeek } from '../shared/api-types';
import type { PlainTable } from '../shared/plain-table';
import type { Figure } from './board-state';
import { shipDays } from './ship-days';

export interface TableWords {
  readonly variety: string;
  readonly code: string;
  readonly crop: string;
  readonly format: string;
  readonly plantsPerTray: string;
  readonly site: string;
  readonly weeksDoNotAdd: string;
  readonly figure: (figure: Figure) => string;
}

/** Each week with the days that these rows stand for in it: every site's own ship day, not the Monday. */
function weekHeads(rows: readonly BoardRow[], weeks: readonly BoardWeek[]): string[] {
  const days = shipDays(rows);
  return weeks.map(({ week, monday }, column) => `${week} (${(days[column] ?? [monday]).join(', ')})`);
}

/**
 * What a customer may have: what is open and nothing else, of rows that have something. What is ready, promised to others
 * or at risk is not theirs.
 */
export function customerTable(
  rows: readonly BoardRow[],
  weeks: readonly BoardWeek[],
  words: Pick<TableWords, 'variety' | 'crop' | 'format' | 'plantsPerTray' | 'site' | 'weeksDoNotAdd'>,
  plantsIn: (trayFormat: string) => number | undefined,
): PlainTable {
  const offered = rows.filter(({ cells }) => cells.some(({ open }) => open > 0));
  return {
    head: [words.variety, words.crop, words.format, words.plantsPerTray, words.site, ...weekHeads(offered, weeks)],
    rows: offered.map((row) => [
      row.varietyName,
      row.cropName,
      row.trayFormat,
      plantsIn(row.trayFormat) ?? '',
      row.site,
      ...row.cells.map(({ open }) => open),
    ]),
    note: words.weeksDoNotAdd,
  };
}

/** The board as a table of plain values. One column per week and figure; with a single figure the week alone heads it. */
export function tableOf(
  rows: readonly BoardRow[],
  weeks: readonly BoardWeek[],
  figures: readonly Figure[],
  words: TableWords,
  plantsIn: (trayFormat: string) => number | undefined,
): PlainTable {
  return {
    head: [
      words.variety,
      words.code,
      words.crop,
      words.format,
      words.plantsPerTray,
      words.site,
      ...weekHeads(rows, weeks).flatMap((week) =>
        figures.map((figure) => (figures.length === 1 ? week : `${week} ${words.figure(figure)}`)),
      ),
    ],
    rows: rows.map((row) => [
      row.varietyName,
      row.variety,
      row.cropName,
      row.trayFormat,
      plantsIn(row.trayFormat) ?? '',
      row.site,
      ...row.cells.flatMap((cell) => figures.map((figure) => cell[figure])),
    ]),
    note: words.weeksDoNotAdd,
  };
}
