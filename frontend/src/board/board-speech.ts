import { useMemo } from 'react';
import type { BoardCell } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { sharedMessages } from '../shared/shared-messages';
import { dateIn, weekNumber, weekOf } from '../shared/weeks';
import type { Sort } from './board-filter-state';
import type { GridSpeech } from './board-grid-dom';
import { boardMessages } from './board-messages';
import type { BoardState } from './board-state';

/** The columns before the weeks, as they are sorted by. */
export const SORTS = ['variety', 'format', 'site'] as const;

/** How the table says things, in the reader's language. */
export function useSpeech(
  sort: Sort,
  state: BoardState,
  siteName: (code: string) => string,
  cellSays: (cell: BoardCell) => string,
): GridSpeech {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const shared = useMessages(sharedMessages);
  const { weeks } = state;
  return useMemo(() => {
    const current = weekOf(dateIn(undefined, Date.now()));
    return {
      label: t.gridLabel,
      heads: [t.variety, t.format, t.site],
      week: ({ week, monday }) => ({
        short: t.weekShort(weekNumber(week)),
        day: format.dayMonth(monday),
        long: `${t.week(weekNumber(week))}, ${format.date(monday)}${week === current ? `, ${t.thisWeek}` : ''}`,
        now: week === current,
      }),
      sortOf: (column) => {
        const by = SORTS[column] ?? weeks[column - SORTS.length]?.week;
        return by !== sort.by ? 'none' : sort.descending ? 'descending' : 'ascending';
      },
      // The site's own ship day stands beside its name; the running week may stand for a later day.
      site: ({ site, cells }) => {
        const last = cells.at(-1);
        return last ? `${siteName(site)}\n${format.weekday(last.date)}` : siteName(site);
      },
      count: format.integer,
      faulty: (batches) => shared.notComputed(batches.length),
      cell: cellSays,
    };
  }, [t, shared, format, weeks, sort, siteName, cellSays]);
}
