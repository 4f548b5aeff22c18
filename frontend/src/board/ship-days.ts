import type { BoardRow, LocalDate } from '../shared/api-types';

/**
 * The days that a column of these rows stands for, rising: each site's own ship day, or a later one where that is past.
 * All rows of a site have the same.
 */
export function shipDays(rows: Iterable<BoardRow>): readonly (readonly LocalDate[])[] {
  const seen = new Set<string>();
  const columns: Set<LocalDate>[] = [];
  for (const { site, cells } of rows) {
    if (seen.has(site)) continue;
    seen.add(site);
    cells.forEach(({ date }, column) => (columns[column] ??= new Set()).add(date));
  }
  return columns.map((dates) => [...dates].sort());
}
