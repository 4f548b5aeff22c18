/** A table as text: its cells, and what can be told of it by looking. */

/** A request holds so much; line ends and quotes of the table grow when it is sent. */
export const LARGEST_BYTES = 4_194_304;

/** For judging what a table is by more than its first lines: 13/01 may stand far down. */
export const JUDGED_LINES = 5_000;

/** In the order in which they are tried: a comma is often no separator but a decimal sign. */
export const SEPARATORS = ['\t', ';', '|', ','] as const;

const LOOKED_AT = 50;

/** Bytes of a file as text: UTF-8 or UTF-16 if they are that, else as older programs on Windows write. */
export function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** The first `most` lines that are not empty, each as its trimmed cells; quotes as in RFC 4180. */
export function rowsOf(text: string, separator: string, most = LOOKED_AT): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endCell = () => {
    row.push(cell.trim());
    cell = '';
  };
  const endRow = () => {
    endCell();
    if (row.length > 1 || row[0] !== '') rows.push(row);
    row = [];
  };
  for (let i = text.startsWith('\uFEFF') ? 1 : 0; i < text.length && rows.length < most; i++) {
    const sign = text.charAt(i);
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (text[i + 1] === '"') cell += text.charAt(++i);
      else quoted = false;
    } else if (sign === '"' && cell.trim() === '') quoted = true;
    else if (sign === separator) endCell();
    else if (sign === '\n') endRow();
    else if (sign !== '\r') cell += sign;
  }
  if (rows.length < most && (cell !== '' || row.length > 0)) endRow();
  return rows;
}

/** The separator that gives every line as many cells as the header; else the one that gives the most columns. */
export function separatorOf(text: string): string {
  const tried = SEPARATORS.map((separator) => ({ separator, rows: rowsOf(text, separator) }));
  const wide = tried.filter(({ rows }) => (rows[0]?.length ?? 0) > 1);
  const even = wide.find(({ rows }) => rows.every((row) => row.length === rows[0]?.length));
  const widest = [...wide].sort((a, b) => (b.rows[0]?.length ?? 0) - (a.rows[0]?.length ?? 0))[0];
  return (even ?? widest)?.separator ?? ',';
}

/** Names of the columns, each once. */
export function headerOf(rows: readonly (readonly string[])[]): string[] {
  return [...new Set(rows[0]?.filter((name) => name !== ''))];
}

/** What a line says in `column`. */
export function cellOf(rows: readonly (readonly string[])[], row: number, column: string): string {
  return rows[row]?.[rows[0]?.indexOf(column) ?? -1] ?? '';
}

/** What stands in a column below its name, without empty cells. */
export function cellsOf(rows: readonly (readonly string[])[], column: string): string[] {
  const at = rows[0]?.indexOf(column) ?? -1;
  return rows.slice(1).flatMap((row) => row[at] || []);
}

export function decimalOf(rows: readonly (readonly string[])[], separator: string): string {
  if (separator === ',') return '.';
  const cells = rows.slice(1).flat();
  const some = (shape: RegExp) => cells.some((cell) => shape.test(cell));
  return some(/^[+-]?\d+,\d+$/) && !some(/^[+-]?\d+\.\d+$/) ? ',' : '.';
}

// --- Times ---------------------------------------------------------------------------------------------------------

const CLOCK = String.raw`(?<hour>\d{1,2}):\d{2}(:\d{2})?`;
const YMD = (between: string) => String.raw`\d{4}${between}(?<month>\d{1,2})${between}(?<day>\d{1,2})`;
const DMY = (between: string) => String.raw`(?<day>\d{1,2})${between}(?<month>\d{1,2})${between}\d{4}`;
const MDY = (between: string) => String.raw`(?<month>\d{1,2})${between}(?<day>\d{1,2})${between}\d{4}`;

interface TimeFormat {
  /** The pattern that is sent; of the first two there is none. */
  readonly id: string;
  readonly example: string;
  readonly order?: 'dayFirst' | 'monthFirst';
  readonly shape: RegExp;
}

const format = (id: string, example: string, shape: string, order?: TimeFormat['order']): TimeFormat => ({
  id,
  example,
  shape: new RegExp(`^${shape}$`),
  ...(order ? { order } : {}),
});

export const WITH_OFFSET = 'offset';
export const ISO_LOCAL = 'iso';
export const OWN_FORMAT = 'own';

/** The ways in which loggers and spreadsheets write a time. */
export const TIME_FORMATS: readonly TimeFormat[] = [
  format(
    WITH_OFFSET,
    '2026-03-09T08:05:00Z',
    String.raw`${YMD('-')}T(?<hour>\d{2}):\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})`,
  ),
  format(ISO_LOCAL, '2026-03-09T08:05', String.raw`${YMD('-')}T(?<hour>\d{2}):\d{2}(:\d{2}(\.\d+)?)?`),
  format('yyyy-M-d H:mm[:ss]', '2026-03-09 08:05', `${YMD('-')} ${CLOCK}`),
  format('yyyy/M/d H:mm[:ss]', '2026/03/09 08:05', `${YMD('/')} ${CLOCK}`),
  format('d/M/yyyy H:mm[:ss]', '09/03/2026 08:05', `${DMY('/')} ${CLOCK}`, 'dayFirst'),
  format('M/d/yyyy H:mm[:ss]', '03/09/2026 08:05', `${MDY('/')} ${CLOCK}`, 'monthFirst'),
  format('d.M.yyyy H:mm[:ss]', '09.03.2026 08:05', `${DMY(String.raw`\.`)} ${CLOCK}`, 'dayFirst'),
  format('M/d/yyyy h:mm[:ss] a', '03/09/2026 8:05 AM', `${MDY('/')} ${CLOCK} [AP]M`, 'monthFirst'),
  format('d/M/yyyy h:mm[:ss] a', '09/03/2026 8:05 AM', `${DMY('/')} ${CLOCK} [AP]M`, 'dayFirst'),
];

const SHORT_YEAR = (day: 'day' | 'month', month: 'day' | 'month') =>
  String.raw`(?<${day}>\d{1,2})/(?<${month}>\d{1,2})/\d{2}`;

/** The ways in which spreadsheets write a day. */
export const DAY_FORMATS: readonly TimeFormat[] = [
  format('yyyy-M-d', '2026-03-09', YMD('-')),
  format('yyyy/M/d', '2026/03/09', YMD('/')),
  format('d/M/yyyy', '09/03/2026', DMY('/'), 'dayFirst'),
  format('M/d/yyyy', '03/09/2026', MDY('/'), 'monthFirst'),
  format('d.M.yyyy', '09.03.2026', DMY(String.raw`\.`), 'dayFirst'),
  format('d-M-yyyy', '09-03-2026', DMY('-'), 'dayFirst'),
  format('d/M/yy', '09/03/26', SHORT_YEAR('day', 'month'), 'dayFirst'),
  format('M/d/yy', '03/09/26', SHORT_YEAR('month', 'day'), 'monthFirst'),
];

/** The ways in which a time of day stands in a column of its own. */
export const CLOCK_FORMATS: readonly TimeFormat[] = [
  format('H:mm[:ss]', '08:05', CLOCK),
  format('h:mm[:ss] a', '8:05 AM', `${CLOCK} [AP]M`),
  format('H:mm[:ss]XXX', '08:05+01:00', String.raw`${CLOCK}(Z|[+-]\d{2}:\d{2})`),
];

function fits({ shape }: TimeFormat, text: string): boolean {
  const found = shape.exec(text);
  const { month = 1, day = 1, hour = 0 } = found?.groups ?? {};
  return found !== null && Number(month) <= 12 && Number(day) <= 31 && Number(hour) <= 24;
}

/**
 * The formats that the most of `times` have, if that is more than half of them: a line that a logger broke off must not
 * hide what all the others say.
 */
export function formatsOf(times: readonly string[], formats = TIME_FORMATS): string[] {
  const counted = formats.map((each) => ({ id: each.id, count: times.filter((time) => fits(each, time)).length }));
  const most = Math.max(...counted.map(({ count }) => count));
  return most * 2 > times.length ? counted.filter(({ count }) => count === most).map(({ id }) => id) : [];
}
