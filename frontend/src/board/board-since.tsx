import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import type { BoardRow, IsoWeek } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { keys } from '../shared/query-keys';
import { Failed, Loading } from '../shared/screen-states';
import { VarietyName } from '../shared/variety-name-view';
import { dateIn, weekNumber, weekOf } from '../shared/weeks';
import { loadBoard, type BoardRequest } from './board-api';
import { boardMessages } from './board-messages';
import { changesSince } from './board-since-state';

interface BoardSinceProps {
  /** The rows as they were, as the filter shows them. */
  readonly then: readonly BoardRow[];
  readonly from: IsoWeek | undefined;
  readonly request: Omit<BoardRequest, 'asOf' | 'from'>;
  readonly timeZone: string | undefined;
  readonly siteName: (code: string) => string;
  /** Whether the filter would show a row that there is now. */
  readonly shows: (row: BoardRow) => boolean;
}

/** What changed between the moment looked back to and now, in one list. */
export function BoardSince({ then, from, request, timeZone, siteName, shows }: BoardSinceProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const asked = { ...request, from, asOf: undefined };
  const now = useQuery({
    queryKey: keys.boardNow(asked),
    queryFn: ({ signal }) => loadBoard(asked, signal),
    staleTime: 0,
  });
  const current = weekOf(dateIn(timeZone, Date.now()));
  const changes = useMemo(
    () => changesSince(then, (now.data?.rows ?? []).filter(shows), current),
    [then, now.data, shows, current],
  );
  if (now.isPending) return <Loading />;
  if (!now.data) return <Failed failure={now.error} retry={() => void now.refetch()} />;
  if (changes.length === 0) return <p className="board-totals">{t.sinceNothing}</p>;
  const moved = (before: number, after: number) =>
    before === after ? (
      <span className="rc-quiet">{format.integer(after)}</span>
    ) : (
      <>
        {format.integer(before)} → <strong>{format.integer(after)}</strong>
      </>
    );
  return (
    <div className="board-totals" tabIndex={0} role="region" aria-label={t.since}>
      <table className="rc-table">
        <caption>{t.sinceHelp}</caption>
        <HeadRow heads={[t.item, t.format, t.site, t.weekWord, figure(t.open), figure(t.promised), figure(t.atRisk)]} />
        <tbody>
          {changes.map(({ key, row, week, date, before, after }) => (
            <tr key={key}>
              <th scope="row">
                <VarietyName name={row.varietyName} />
              </th>
              <td>{row.trayFormat}</td>
              <td>{siteName(row.site)}</td>
              <td>
                {t.weekShort(weekNumber(week))} {date && <span className="rc-quiet">{format.dayMonth(date)}</span>}
              </td>
              <td className="rc-number">{moved(before.open, after.open)}</td>
              <td className="rc-number">{moved(before.promised, after.promised)}</td>
              <td className={`rc-number ${after.atRisk > before.atRisk ? 'rc-at-risk' : ''}`}>
                {after.atRisk > before.atRisk && '▲ '}
                {moved(before.atRisk, after.atRisk)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
