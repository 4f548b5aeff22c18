import { useEffect, useRef, useState } from 'react';
import { Link } from 'react-router';
import type { BoardCell, BoardRow } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { VarietyName } from '../shared/variety-name-view';
import { sharedMessages } from '../shared/shared-messages';
import { weekNumber } from '../shared/weeks';
import { boardMessages } from './board-messages';
import { cellKey, isBlank, MARK_MS, readyAndPromised, rowKey, type BoardState, type RowKey } from './board-state';
import './board-list.css';

interface BoardListProps {
  readonly order: readonly RowKey[];
  readonly state: BoardState;
  readonly siteName: (code: string) => string;
  readonly batchesPath: (row: BoardRow) => string;
  readonly openCell: (row: BoardRow, cell: BoardCell) => void;
  readonly cellSays: (cell: BoardCell) => string;
}

const PORTION = 40;

/** The board on a phone: items with their next weeks. Grows as the reader goes down. */
export function BoardList({ order, state, siteName, batchesPath, openCell, cellSays }: BoardListProps) {
  const t = useMessages(boardMessages);
  const shared = useMessages(sharedMessages);
  const [portions, setPortions] = useState(1);
  const end = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!end.current) return;
    const near = new IntersectionObserver(
      (seen) => {
        if (seen.some((each) => each.isIntersecting)) setPortions((n) => n + 1);
      },
      { rootMargin: '600px' },
    );
    near.observe(end.current);
    return () => near.disconnect();
  }, [portions]);
  const shown = order.slice(0, portions * PORTION);
  return (
    <>
      <ul className="board-list rc-no-print" aria-label={t.gridLabel}>
        {shown.map((key) => {
          const row = state.rows.get(key);
          return (
            row && (
              <li key={key} className="rc-sheet">
                <Link to={batchesPath(row)} className="item-name">
                  <VarietyName name={row.varietyName} />
                </Link>
                <p className="rc-quiet">
                  {row.trayFormat} · {siteName(row.site)}
                </p>
                {row.faulty.length > 0 && (
                  <p className="rc-broken" title={row.faulty.map(({ batch }) => batch).join('\n')}>
                    ✕ {shared.notComputed(row.faulty.length)}
                  </p>
                )}
                {row.cells.every(isBlank) && <p className="rc-quiet">{t.nothing}</p>}
                <div className="item-weeks">
                  {row.cells.map((cell) =>
                    isBlank(cell) ? null : (
                      <WeekButton
                        key={cell.week}
                        cell={cell}
                        changedMs={state.changedMs.get(cellKey(rowKey(row), cell.week))}
                        says={cellSays(cell)}
                        open={() => openCell(row, cell)}
                      />
                    ),
                  )}
                </div>
              </li>
            )
          );
        })}
      </ul>
      {shown.length < order.length && <div ref={end} style={{ height: 1 }} />}
    </>
  );
}

interface WeekButtonProps {
  readonly cell: BoardCell;
  readonly changedMs: number | undefined;
  readonly says: string;
  readonly open: () => void;
}

function WeekButton({ cell, changedMs, says, open }: WeekButtonProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const name = t.weekShort(weekNumber(cell.week));
  return (
    <button
      type="button"
      // A new key restarts the mark.
      key={changedMs}
      className={`item-week${cell.atRisk > 0 ? ' item-risk' : ''}${cell.open === 0 ? ' item-none' : ''}${isFresh(changedMs) ? ' bg-changed' : ''}`}
      aria-label={`${t.week(weekNumber(cell.week))}, ${says}`}
      onClick={open}
    >
      <span className="item-when">
        <b>{name}</b> {format.dayMonth(cell.date)}
      </span>
      <span className="item-open">{format.integer(cell.open)}</span>
      <span className="item-more">
        {cell.atRisk > 0 ? (
          <span className="rc-at-risk">
            ▲{format.integer(cell.atRisk)} {t.atRisk}
          </span>
        ) : cell.likely > cell.open ? (
          <i>
            {t.likely} {format.integer(cell.likely)}
          </i>
        ) : cell.promised > 0 ? (
          readyAndPromised(cell, format.integer)
        ) : (
          ' '
        )}
      </span>
    </button>
  );
}

function isFresh(changedMs: number | undefined): boolean {
  return changedMs !== undefined && Date.now() - changedMs < MARK_MS;
}
