import type { BoardRow, BoardWeek } from '../shared/api-types';
import type { Figure } from './board-state';

/** The board as a table of plain values, for the clipboard and for files. */
export interface BoardTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

export interface TableWords {
  readonly variety: string;
  readonly code: string;
  readonly crop: string;
  readonly format: string;
  readonly site: string;
  readonly figure: (figure: Figure) => string;
}

/** One column per week and figure; with a single figure the week alone heads it. */
export function tableOf(
  rows: readonly BoardRow[],
  weeks: readonly BoardWeek[],
  figures: readonly Figure[],
  words: TableWords,
): BoardTable {
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

/** Tab-separated, as spreadsheets and mail programs take it from the clipboard. */
export function tabSeparated({ head, rows }: BoardTable): string {
  return [head, ...rows]
    .map((row) => row.map((value) => harmless(value).replace(/[\t\r\n]+/g, ' ')).join('\t'))
    .join('\n');
}

/** RFC 4180: CRLF line ends, quotes only where needed. */
export function commaSeparated({ head, rows }: BoardTable): string {
  const field = (value: string | number) => {
    const text = harmless(value);
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return [head, ...rows].map((row) => row.map(field).join(',') + '\r\n').join('');
}

/** A spreadsheet runs a text that begins like a formula; a leading apostrophe makes it text again. */
function harmless(value: string | number): string {
  if (typeof value === 'number') return String(value);
  return /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
}
