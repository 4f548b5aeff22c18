import { describe, expect, it } from 'vitest';
import { commaSeparated, tabSeparated } from '../shared/plain-table';
import { sheetOf } from '../shared/table-xlsx';
import { customerTable, tableOf } from './board-table';

const table = (...rows: (string | number)[][]) => ({ head: ['a', 'b'], rows });

describe('CSV', () => {
  // RFC 4180 §2, rules 1, 5, 6 and 7.
  it('ends lines with CRLF and quotes only commas, quotes and line breaks', () => {
    expect(commaSeparated(table(['x', 1], ['a,b', 'say "hi"'], ['two\nlines', '']))).toBe(
      'a,b\r\nx,1\r\n"a,b","say ""hi"""\r\n"two\nlines",\r\n',
    );
  });

  it.each(['=1+1', '+1', '-1', '@cmd', '\tx'])('takes the power from "%s"', (text) => {
    expect(commaSeparated(table([text, 0])).split('\r\n')[1]).toBe(`'${text},0`);
  });

  it('leaves numbers alone, negative ones too', () => {
    expect(commaSeparated(table([-1, 2]))).toContain('-1,2');
  });
});

describe('what is said under a table', () => {
  const noted = { ...table(['x', 1]), note: 'Weeks, do not add up.' };
  it('is a line of its own at the end, in a file and in text', () => {
    expect(commaSeparated(noted)).toBe('a,b\r\nx,1\r\n\r\n"Weeks, do not add up."\r\n');
    expect(tabSeparated(noted)).toBe('a\tb\nx\t1\n\nWeeks, do not add up.');
  });
  it('is told in a workbook, too', () => {
    expect(sheetOf(noted).at(-1)).toEqual([{ value: 'Weeks, do not add up.', type: String }]);
    expect(sheetOf(table(['x', 1]))).toHaveLength(2);
  });
});

describe('text for the clipboard', () => {
  it('keeps one row to a line', () => {
    expect(tabSeparated(table(['x\ty\nz', 1]))).toBe('a\tb\nx y z\t1');
  });
});

describe('the table of the board', () => {
  const words = {
    variety: 'Variety',
    code: 'Code',
    crop: 'Crop',
    format: 'Tray',
    plantsPerTray: 'Plants',
    site: 'Site',
    weeksDoNotAdd: 'Weeks do not add up.',
    figure: (figure: string) => figure,
  };
  const plantsIn = (code: string) => (code === '72' ? 70 : undefined);
  const weeks = [{ week: '2026-W48', monday: '2026-11-23' }];
  const row = {
    variety: 'v',
    varietyName: 'V',
    crop: 'c',
    cropName: 'C',
    trayFormat: '72',
    site: 's',
    faulty: [],
    cells: [
      { week: '2026-W48', date: '2026-11-23', ready: 20, promised: 8, open: 12, likely: 15, atRisk: 1, lessSure: 0 },
    ],
  };

  it('heads a single figure with its week', () => {
    expect(tableOf([row], weeks, ['open'], words, plantsIn)).toEqual({
      head: ['Variety', 'Code', 'Crop', 'Tray', 'Plants', 'Site', '2026-W48 (2026-11-23)'],
      rows: [['V', 'v', 'C', '72', 70, 's', 12]],
      note: 'Weeks do not add up.',
    });
  });

  it('heads a week with the ship day of each site in it, not with its Monday', () => {
    const onDay = (site: string, date: string) => ({ ...row, site, cells: row.cells.map((c) => ({ ...c, date })) });
    const rows = [onDay('s', '2026-11-26'), onDay('t', '2026-11-24')];
    expect(tableOf(rows, weeks, ['open'], words, plantsIn).head.at(-1)).toBe('2026-W48 (2026-11-24, 2026-11-26)');
    expect(tableOf(rows.slice(0, 1), weeks, ['open', 'ready'], words, plantsIn).head.slice(6)).toEqual([
      '2026-W48 (2026-11-26) open',
      '2026-W48 (2026-11-26) ready',
    ]);
    const soldOut = { ...onDay('t', '2026-11-24'), cells: rows[1]?.cells.map((c) => ({ ...c, open: 0 })) ?? [] };
    const given = customerTable(rows.slice(0, 1).concat(soldOut), weeks, words, () => 70);
    expect(given.head.at(-1)).toBe('2026-W48 (2026-11-26)');
  });

  it('gives every figure its column', () => {
    const { head, rows } = tableOf([row], weeks, ['open', 'promised'], words, plantsIn);
    expect(head.slice(6)).toEqual(['2026-W48 (2026-11-23) open', '2026-W48 (2026-11-23) promised']);
    expect(rows[0]?.slice(6)).toEqual([12, 8]);
  });

  it('for customers holds what is open and nothing of what is promised to others', () => {
    const nothing = { ...row, variety: 'w', varietyName: 'W', cells: row.cells.map((cell) => ({ ...cell, open: 0 })) };
    const given = customerTable([row, nothing], weeks, words, plantsIn);
    expect(given).toEqual({
      head: ['Variety', 'Crop', 'Tray', 'Plants', 'Site', '2026-W48 (2026-11-23)'],
      rows: [['V', 'C', '72', 70, 's', 12]],
      note: 'Weeks do not add up.',
    });
  });
});
