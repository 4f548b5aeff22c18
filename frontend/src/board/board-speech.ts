import { useCallback, useMemo } from 'react';
import type { BoardCell } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { sharedMessages } from '../shared/shared-messages';
import { dateIn, weekNumber, weekOf } from '../shared/weeks';
import type { Sort } from './board-filter-state';
import type { GridSpeech } from './board-grid-types';
import { boardMessages } from './board-messages';
import type { BoardState } from './board-state';
import { shipDays } from './ship-days';

/** The columns before the weeks, as they are sorted by. */
export const SORTS = ['variety', 'format', 'site'] as const;

/** Says of a cell how many of its promised trays rest on lower odds than `confidence`; nothing of one that has none. */
export function useLessSure(confidence: number): (cell: Pick<BoardCell, 'lessSure' | 'promised'>) => string {
  const t = useMessages(boardMessages);
  const format = useFormats();
  return useCallback(
    ({ lessSure, promised }) =>
      lessSure === 0 ? '' : t.lessSure(lessSure, promised, format.integer(lessSure), format.percent(confidence, 2)),
    [t, format, confidence],
  );
}

/** How the table says things, in the reader's language. */
export function useSpeech(
  sort: Sort,
  state: BoardState,
  siteName: (code: string) => string,
  cellSays: (cell: BoardCell) => string,
  lessSure: (cell: BoardCell) => string,
): GridSpeech {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const shared = useMessages(sharedMessages);
  const { weeks, rows } = state;
  // As a text, so that an event that moves no day makes no new speech: that would draw every row again.
  const days = useMemo(() => JSON.stringify(shipDays(rows.values())), [rows]);
  return useMemo(() => {
    const daysOf = JSON.parse(days) as ReturnType<typeof shipDays>;
    const current = weekOf(dateIn(undefined, Date.now()));
    return {
      label: t.gridLabel,
      heads: [t.variety, t.format, t.site],
      week: ({ week, monday }) => {
        const ship = daysOf[weeks.findIndex((each) => each.week === week)] ?? [monday];
        return {
          short: t.weekShort(weekNumber(week)),
          day: format.days(ship),
          long: `${t.week(weekNumber(week))}, ${ship.map(format.date).join(', ')}${week === current ? `, ${t.thisWeek}` : ''}`,
          now: week === current,
        };
      },
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
      lessSure,
    };
  }, [t, shared, format, weeks, days, sort, siteName, cellSays, lessSure]);
}
