import { Link } from 'react-router';
import type { BoardRow, BoardWeek } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { dateIn, weekOf } from '../shared/weeks';
import { useStandingWarnings } from '../warnings/warnings-api';
import { shownWarnings } from '../warnings/warnings-state';
import { boardMessages } from './board-messages';
import { boardToday } from './board-today-state';

interface BoardTodayProps {
  readonly rows: readonly BoardRow[];
  readonly weeks: readonly BoardWeek[];
  readonly site: string | undefined;
  readonly timeZone: string | undefined;
  readonly riskOnly: boolean;
  readonly showRisk: (only: boolean) => void;
  /** Looking back: what warns now is not of then. */
  readonly then: boolean;
}

/** The day in one line: open this week, ready without a promise, at risk, and the houses that warn. */
export function BoardTodayLine({ rows, weeks, site, timeZone, riskOnly, showRisk, then }: BoardTodayProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const warnings = useStandingWarnings(site).data;
  const { thisWeek, atRisk, rowsAtRisk } = boardToday(rows, weeks, weekOf(dateIn(timeZone, Date.now())));
  const houses = new Set(shownWarnings(warnings ?? [], 'open').map(({ house }) => house)).size;
  return (
    <ul className="board-today">
      {thisWeek && (
        <>
          <li>
            {t.openThisWeek} <b>{format.integer(thisWeek.open)}</b>
          </li>
          <li>
            {t.unpromised}{' '}
            <b title={thisWeek.lessSure > 0 ? t.unpromisedSome(format.integer(thisWeek.lessSure)) : undefined}>
              {thisWeek.lessSure > 0 && '~'}
              {format.integer(thisWeek.unpromised)}
            </b>
          </li>
        </>
      )}
      <li>
        {atRisk === 0 && !riskOnly ? (
          <>
            {t.riskOnly} <b>0</b>
          </>
        ) : (
          <button
            type="button"
            className="rc-link rc-at-risk"
            aria-pressed={riskOnly}
            onClick={() => showRisk(!riskOnly)}
          >
            ▲ {riskOnly ? t.showAll : t.atRiskIn(rowsAtRisk, format.integer(atRisk), format.integer(rowsAtRisk))}
          </button>
        )}
      </li>
      {!then && houses > 0 && (
        <li>
          <Link className="rc-link" to={`/warnings${site ? `?${new URLSearchParams({ site })}` : ''}`}>
            {t.housesWarn(houses, format.integer(houses))}
          </Link>
        </li>
      )}
    </ul>
  );
}
