import { memo, useEffect, useRef, useState, type KeyboardEvent } from 'react';
import { Link, useNavigate } from 'react-router';
import type { BatchView } from '../shared/api-types';
import { useWindowedRows } from '../shared/windowed-rows';
import { cellText, columnName, NUMERIC, type CellWords } from './batch-cells';
import { anchorOf, COLUMNS, placeAfter, sortedBy, type Column, type Place, type Sort } from './batches-state';

/**
 * The list as a grid of plain rows, of which only those in sight are drawn. The grid itself has the focus and names the
 * current cell, so that scrolling may throw rows away without losing it. Enter or a click opens what a figure is made of.
 */
interface BatchTableProps {
  readonly batches: readonly BatchView[];
  readonly words: CellWords;
  readonly sort: Sort;
  readonly onSort: (sort: Sort) => void;
  readonly label: string;
}

const ROW_PX = 40;

/** Their figures line up because each keeps room for a range, also when it has none. */
const RANGED: ReadonlySet<Column> = new Set(['ready', 'saleable']);

export function BatchTable({ batches, words, sort, onSort, label }: BatchTableProps) {
  const scroller = useRef<HTMLDivElement>(null);
  const navigate = useNavigate();
  const { fromInclusive, untilExclusive } = useWindowedRows(scroller, batches.length, ROW_PX);
  const [place, setPlace] = useState<Place>({ row: 0, column: 0 });
  const row = Math.min(place.row, batches.length - 1);

  useEffect(() => {
    const element = scroller.current;
    if (!element || document.activeElement !== element) return;
    const top = row * ROW_PX;
    const headPx = ROW_PX;
    if (top < element.scrollTop) element.scrollTop = top;
    else if (top + ROW_PX > element.scrollTop + element.clientHeight - headPx)
      element.scrollTop = top + ROW_PX - element.clientHeight + headPx;
  }, [row]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target !== scroller.current || event.altKey || event.metaKey) return;
    const batch = batches[row];
    if (event.key === 'Enter' && batch) {
      void navigate(pathOf(batch, COLUMNS[place.column] ?? 'id'));
      return;
    }
    const page = Math.floor((scroller.current.clientHeight - ROW_PX) / ROW_PX) - 1;
    const next = placeAfter(event.key, event.ctrlKey, { row, column: place.column }, batches.length, page);
    if (!next) return;
    event.preventDefault();
    setPlace(next);
  };
  const activeId = row >= fromInclusive && row < untilExclusive ? cellId(row, place.column) : undefined;
  return (
    <div
      ref={scroller}
      className="batch-grid rc-sheet"
      role="grid"
      tabIndex={0}
      aria-label={label}
      aria-rowcount={batches.length + 1}
      aria-colcount={COLUMNS.length}
      aria-activedescendant={activeId}
      onKeyDown={onKeyDown}
    >
      <div role="rowgroup" className="batch-grid-head">
        <div role="row" className="batch-row" aria-rowindex={1}>
          {COLUMNS.map((column, i) => {
            const sorted = sort.column === column;
            return (
              <div
                key={column}
                role="columnheader"
                aria-colindex={i + 1}
                aria-sort={sorted ? (sort.descending ? 'descending' : 'ascending') : 'none'}
                className={`col-${column} ${NUMERIC.has(column) ? 'rc-number' : ''}`}
              >
                <button type="button" onClick={() => onSort(sortedBy(column, sort))}>
                  <span>
                    {columnName(column, words.t)}
                    <span aria-hidden="true">{sorted ? (sort.descending ? ' ▼' : ' ▲') : ''}</span>
                  </span>
                </button>
              </div>
            );
          })}
        </div>
      </div>
      <div
        role="rowgroup"
        style={{ height: batches.length * ROW_PX, paddingTop: fromInclusive * ROW_PX }}
        className="batch-grid-body"
      >
        {batches.slice(fromInclusive, untilExclusive).map((batch, i) => (
          <BatchRow
            key={batch.id}
            batch={batch}
            index={fromInclusive + i}
            words={words}
            current={fromInclusive + i === row ? place.column : undefined}
            choose={setPlace}
          />
        ))}
      </div>
    </div>
  );
}

const BatchRow = memo(function BatchRow(props: {
  batch: BatchView;
  index: number;
  words: CellWords;
  current: number | undefined;
  choose: (place: Place) => void;
}) {
  const { batch, index, words, current, choose } = props;
  return (
    <div role="row" className="batch-row" aria-rowindex={index + 2}>
      {COLUMNS.map((column, i) => {
        const { main, range } = cellText(batch, column, words);
        return (
          <div
            key={column}
            id={cellId(index, i)}
            role="gridcell"
            aria-colindex={i + 1}
            className={`col-${column} ${NUMERIC.has(column) ? 'rc-number' : ''} ${current === i ? 'current' : ''}`}
          >
            <Link to={pathOf(batch, column)} tabIndex={-1} onMouseDown={() => choose({ row: index, column: i })}>
              <span>{main}</span>
              {(range !== undefined || RANGED.has(column)) && <small>{range}</small>}
            </Link>
          </div>
        );
      })}
    </div>
  );
});

function pathOf(batch: BatchView, column: Column): string {
  return `/batches/${encodeURIComponent(batch.id)}${anchorOf(column)}`;
}

function cellId(row: number, column: number): string {
  return `batch-cell-${row}-${column}`;
}
