/** A table of plain values, for the clipboard and for files. */
export interface PlainTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
  /** What a reader must know of the figures; below them, after an empty line, so that it is no row. */
  readonly note?: string;
}

/** Tab-separated, as spreadsheets and mail programs take it from the clipboard. */
export function tabSeparated({ head, rows, note }: PlainTable): string {
  return [head, ...rows, ...noted(note)]
    .map((row) => row.map((value) => harmless(value).replace(/[\t\r\n]+/g, ' ')).join('\t'))
    .join('\n');
}

/** RFC 4180: CRLF line ends, quotes only where needed. */
export function commaSeparated({ head, rows, note }: PlainTable): string {
  const field = (value: string | number) => {
    const text = harmless(value);
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return [head, ...rows, ...noted(note)].map((row) => row.map(field).join(',') + '\r\n').join('');
}

/** The lines of a note: an empty one and the note. */
export function noted(note: string | undefined): readonly (readonly string[])[] {
  return note === undefined ? [] : [[], [note]];
}

/** A spreadsheet runs a text that begins like a formula; a leading apostrophe makes it text again. */
function harmless(value: string | number): string {
  if (typeof value === 'number') return String(value);
  return /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
}
