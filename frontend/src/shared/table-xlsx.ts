import writeWorkbook, { type SheetData } from 'write-excel-file/universal';
import type { PlainTable } from './plain-table';

/** A table as a workbook: one sheet, the head and the first `nameColumns` stay in sight. Loaded only when asked for. */
export function workbook({ head, rows }: PlainTable, sheet: string, nameColumns: number): Promise<Blob> {
  const data: SheetData = [
    head.map((value) => ({ value, type: String, fontWeight: 'bold', wrap: true })),
    // Texts are written as texts, so that none can run as a formula.
    ...rows.map((row) =>
      row.map((value) => (typeof value === 'number' ? { value, type: Number } : { value, type: String })),
    ),
  ];
  return writeWorkbook(data, {
    sheet,
    stickyRowsCount: 1,
    stickyColumnsCount: nameColumns,
    orientation: 'landscape',
    columns: head.map((_, i) => ({ width: i === 0 ? 36 : i < nameColumns ? 16 : 12 })),
  }).toBlob();
}
