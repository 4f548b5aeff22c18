import writeWorkbook, { type SheetData } from 'write-excel-file/universal';
import { noted, type PlainTable } from './plain-table';

/** A table as a workbook: one sheet, the head and the first `nameColumns` stay in sight. Loaded only when asked for. */
export function workbook(table: PlainTable, sheet: string, nameColumns: number): Promise<Blob> {
  return writeWorkbook(sheetOf(table), {
    sheet,
    stickyRowsCount: 1,
    stickyColumnsCount: nameColumns,
    orientation: 'landscape',
    columns: table.head.map((_, i) => ({ width: i === 0 ? 36 : i < nameColumns ? 16 : 12 })),
  }).toBlob();
}

/** The cells of the sheet. */
export function sheetOf({ head, rows, note }: PlainTable): SheetData {
  return [
    head.map((value) => ({ value, type: String, fontWeight: 'bold', wrap: true })),
    // Texts are written as texts, so that none can run as a formula.
    ...[...rows, ...noted(note)].map((row) =>
      row.map((value) => (typeof value === 'number' ? { value, type: Number } : { value, type: String })),
    ),
  ];
}
