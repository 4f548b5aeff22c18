import writeWorkbook, { type SheetData } from 'write-excel-file/universal';
import type { BoardTable } from './board-table';

const NAME_COLUMNS = 5;

/** The board as a workbook: one sheet, head and names stay in sight. Loaded only when asked for. */
export function workbook({ head, rows }: BoardTable, sheet: string): Promise<Blob> {
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
    stickyColumnsCount: NAME_COLUMNS,
    orientation: 'landscape',
    columns: head.map((_, i) => ({ width: i === 0 ? 36 : i < NAME_COLUMNS ? 16 : 12 })),
  }).toBlob();
}
