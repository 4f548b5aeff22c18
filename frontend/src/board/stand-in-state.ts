import type { BoardRow, LineShortfall, LocalDate } from '../shared/api-types';
import { rowKey, type RowKey } from './board-state';

/** Another item that has as many trays open in the week that was asked for. */
export interface StandIn {
  readonly kind: 'site' | 'format' | 'variety';
  readonly row: BoardRow;
  readonly item: RowKey;
  /** That site's own ship day. */
  readonly shipOn: LocalDate;
  readonly open: number;
}

/** How many of one kind are worth reading on the telephone. */
const OF_A_KIND = 2;

/**
 * What could stand in for a line that is short: the same at another site, then in another tray format, then another
 * variety of the crop; of each kind those with the most open.
 *
 * @param rows the board of the week that was asked for, each row with that one cell
 */
export function standIns(rows: readonly BoardRow[], short: LineShortfall): readonly StandIn[] {
  const crop = rows.find(({ variety }) => variety === short.variety)?.crop;
  const found = rows.flatMap((row): StandIn[] => {
    const cell = row.cells[0];
    const kind = kindOf(row, short, crop);
    if (!kind || !cell || cell.open < short.asked) return [];
    return [{ kind, row, item: rowKey(row), shipOn: cell.date, open: cell.open }];
  });
  return (['site', 'format', 'variety'] as const).flatMap((kind) =>
    found
      .filter((each) => each.kind === kind)
      .sort((a, b) => b.open - a.open || a.item.localeCompare(b.item))
      .slice(0, OF_A_KIND),
  );
}

function kindOf(row: BoardRow, short: LineShortfall, crop: string | undefined): StandIn['kind'] | undefined {
  const sameVariety = row.variety === short.variety;
  const sameFormat = row.trayFormat === short.trayFormat;
  const sameSite = row.site === short.site;
  if (sameVariety && sameFormat) return sameSite ? undefined : 'site';
  if (!sameSite) return undefined;
  if (sameVariety) return 'format';
  return sameFormat && row.crop === crop ? 'variety' : undefined;
}
