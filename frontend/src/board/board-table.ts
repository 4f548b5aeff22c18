import type { BoardRow, BoardWeek } from '../shared/api-types';
import type { PlainTable } from '../shared/plain-table';
import type { Figure } from './board-state';

export interface TableWords {
  readonly variety: string;
  readonly code: string;
  readonly crop: string;
  readonly format: string;
  readonly site: string;
  readonly figure: (figure: Figure) => string;
}

/**
 * What a customer may have: what is open and nothing else, of rows that have something. What is ready, promised to others
 * or at risk is not theirs.
 */
export function customerTable(
  rows: readonly BoardRow[],
  weeks: readonly BoardWeek[],
  words: Pick<TableWords, 'variety' | 'crop' | 'format' | 'site'> & { readonly plantsPerTray: string },
  plantsIn: (trayFormat: string) => number | undefined,
): PlainTable {
  return {
    head: [
      words.variety,
      words.crop,
      words.format,
      words.plantsPerTray,
      words.site,
      ...weeks.map(({ week, monday }) => `${week} (${monday})`),
    ],
    rows: rows
      .filter(({ cells }) => cells.some(({ open }) => open > 0))
      .map((row) => [
        row.varietyName,
        row.cropName,
        row.trayFormat,
        plantsIn(row.trayFormat) ?? '',
        row.site,
        ...row.cells.map(({ open }) => open),
      ]),
  };
}

/** The board as a table of plain values. One column per week and figure; with a single figure the week alone heads it. */
export function tableOf(
  rows: readonly BoardRow[],
  weeks: readonly BoardWeek[],
  figures: readonly Figure[],
  words: TableWords,
): PlainTable {
  const weekHead = ({ week, monday }: BoardWeek) => `${week} (${monday})`;
  return {
    head: [
      words.variety,
      words.code,
      words.crop,
      words.format,
      words.site,
      ...weeks.flatMap((week) =>
        figures.map((figure) => (figures.length === 1 ? weekHead(week) : `${weekHead(week)} ${words.figure(figure)}`)),
      ),
    ],
    rows: rows.map((row) => [
      row.varietyName,
      row.variety,
      row.cropName,
      row.trayFormat,
      row.site,
      ...row.cells.flatMap((cell) => figures.map((figure) => cell[figure])),
    ]),
  };
}
