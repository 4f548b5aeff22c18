import { useCallback, useMemo, useRef } from 'react';
import { Link, useNavigate, useSearchParams } from 'react-router';
import { Offered } from '../people/offered';
import type { BoardCell, BoardRow } from '../shared/api-types';
import { AsOfBanner, AsOfControl, useAsOf } from '../shared/as-of';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { later } from '../shared/later';
import { found } from '../shared/loose-words';
import { useMessages } from '../shared/messages';
import { usePhone } from '../shared/phone';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useProblemWords } from '../shared/use-problem-words';
import { useScreenTitle } from '../shared/screen-title';
import { useSites } from '../shared/setup-lists';
import { NothingGrows } from './board-empty';
import { BoardFilters } from './board-filters';
import {
  DEFAULT_CONFIDENCE,
  DEFAULT_WEEKS,
  filterFrom,
  keptOrder,
  orderedKeys,
  paramsFor,
  sortedBy,
  wordsFor,
  type BoardFilter,
} from './board-filter-state';
import { BoardGrid, type BoardGridHandle } from './board-grid';
import { BoardList } from './board-list';
import { BoardLegend } from './board-legend';
import { boardMessages } from './board-messages';
import { BoardPaper } from './board-paper';
import { SORTS, useLessSure, useSpeech } from './board-speech';
import { cellKey, parseCellKey, rowKey, type BoardState, type RowKey } from './board-state';
import { useLiveBoard } from './board-stream';
import { BoardTake } from './board-take';
import { BoardTodayLine } from './board-today';
import { useFocusOnFound } from './found-focus';
import './board-view.css';

const CellDialog = later(async () => (await import('./cell-dialog')).CellDialog);
const BoardSince = later(async () => (await import('./board-since')).BoardSince);
const BoardTotals = later(async () => (await import('./board-totals')).BoardTotals);

/** Today's open trays: one row per variety, tray format and site, one cell per ship week. */
export function BoardView() {
  const t = useMessages(boardMessages);
  useScreenTitle(t.title);
  const [params, setParams] = useSearchParams();
  const filter = useMemo(() => filterFrom(params), [params]);
  const change = useCallback(
    (part: Partial<BoardFilter>) =>
      // Typing would otherwise leave a step in the history for every letter.
      setParams((before) => paramsFor({ ...filterFrom(before), ...part }, before), { replace: 'text' in part }),
    [setParams],
  );
  const { from, weeks, confidence, site, crop } = filter;
  const [asOf] = useAsOf();
  const request = useMemo(
    () => ({ from, weeks, confidence, site, crop, asOf }),
    [from, weeks, confidence, site, crop, asOf],
  );
  const phone = usePhone();
  const { data: state, error, isPlaceholderData, refetch } = useLiveBoard(request);
  const timeZone = useSites().data?.find(({ code }) => code === site)?.timeZone;
  if (!state) {
    return (
      <div className="board">
        <AsOfBanner timeZone={timeZone} />
        {error ? <Failed failure={error} retry={() => void refetch()} /> : <Loading />}
      </div>
    );
  }
  return (
    <div className="board">
      <BoardFilters filter={filter} change={change} weeks={state.weeks} phone={phone} />
      <AsOfBanner timeZone={timeZone}>
        <Button className="rc-no-print" aria-pressed={filter.since} onClick={() => change({ since: !filter.since })}>
          {filter.since ? t.sinceHide : t.since}
        </Button>
      </AsOfBanner>
      {error && <StillOld failure={error} />}
      <BoardBody state={state} filter={filter} change={change} old={isPlaceholderData} phone={phone} asOf={asOf} />
    </div>
  );
}

function StillOld({ failure }: { failure: unknown }) {
  const refusals = useProblemWords();
  const t = useMessages(boardMessages);
  return (
    <div className="rc-warning" role="alert">
      <p>
        ▲ {t.loadFailedStill} {refusals.of(failure)}
      </p>
    </div>
  );
}

interface BoardBodyProps {
  readonly state: BoardState;
  readonly filter: BoardFilter;
  readonly change: (part: Partial<BoardFilter>) => void;
  /** The figures are still those of the filter before. */
  readonly old: boolean;
  readonly phone: boolean;
  readonly asOf: string | undefined;
}

function BoardBody({ state, filter, change, old, phone, asOf }: BoardBodyProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const navigate = useNavigate();
  const [params, setParams] = useSearchParams();
  const sites = useSites().data;
  const grid = useRef<BoardGridHandle>(null);
  const order = useOrder(state, filter);
  const opened = parseCellKey(params.get('cell') ?? '');

  const timeZone = sites?.find(({ code }) => code === filter.site)?.timeZone;
  const siteName = useCallback((code: string) => sites?.find((each) => each.code === code)?.name ?? code, [sites]);
  const rows = () => order.flatMap((key) => state.rows.get(key) ?? []);
  const batchesPath = (row: BoardRow) =>
    `/batches?${new URLSearchParams({ text: row.variety, ...(filter.site ? { site: filter.site } : {}) })}`;
  const openCell = (row: BoardRow, cell: BoardCell) =>
    setParams((before) => withCell(before, cellKey(rowKey(row), cell.week)));
  const closeCell = () => {
    setParams((before) => withCell(before, undefined), { replace: true });
    if (opened) grid.current?.focusCell(rowKey(opened), opened.week);
  };
  const lessSure = useLessSure(state.confidence);
  const cellSays = useCallback(
    (cell: BoardCell) => {
      const figures = [cell.open, cell.likely, cell.ready, cell.promised].map(format.integer);
      const said =
        cell.ready + cell.promised + cell.open + cell.likely === 0
          ? t.nothing
          : t.cellSays(...(figures as [string, string, string, string]));
      const more = lessSure(cell);
      return `${said}${cell.atRisk > 0 ? t.atRiskSays(format.integer(cell.atRisk)) : ''}, ${format.date(cell.date)}${more && `. ${more}`}`;
    },
    [t, format, lessSure],
  );
  const { text } = filter;
  const shows = useCallback((row: BoardRow) => found([row], text, wordsFor).length > 0, [text]);
  useFocusOnFound(order.length, grid);
  const speech = useSpeech(filter.sort, state, siteName, cellSays, lessSure);
  const content = useMemo(
    () => ({ order, rows: state.rows, weeks: state.weeks, changedMs: state.changedMs }),
    [order, state.rows, state.weeks, state.changedMs],
  );

  if (state.rows.size === 0 && !old && filter.site === undefined && filter.crop === undefined) return <NothingGrows />;
  return (
    <>
      <div className="board-line">
        <span role="status">
          {order.length === state.rows.size
            ? t.rows(order.length, format.integer(order.length))
            : t.rowsOf(state.rows.size, format.integer(order.length), format.integer(state.rows.size))}
        </span>
        <BoardTodayLine
          rows={rows()}
          weeks={state.weeks}
          site={filter.site}
          timeZone={timeZone}
          riskOnly={filter.riskOnly}
          showRisk={(riskOnly) => change({ riskOnly })}
          then={asOf !== undefined}
        />
        <span className="board-tools">
          <Offered right="set-up">
            <Link className="rc-link rc-no-print board-what-if" to={whatIfPath(filter)}>
              {t.whatIf}
            </Link>
          </Offered>
          {!phone && <BoardLegend confidence={filter.confidence} />}
          <AsOfControl timeZone={timeZone} />
          <BoardTake rows={rows} weeks={state.weeks} siteName={siteName} />
        </span>
      </div>
      {order.length === 0 ? (
        <Empty title={t.emptyFilterTitle}>
          <Button
            onClick={() =>
              change({
                text: '',
                crop: undefined,
                site: undefined,
                openOnly: false,
                atLeast: undefined,
                riskOnly: false,
                weeks: DEFAULT_WEEKS,
                confidence: DEFAULT_CONFIDENCE,
              })
            }
          >
            {t.clearFilter}
          </Button>
        </Empty>
      ) : filter.since && asOf !== undefined ? (
        <BoardSince
          then={rows()}
          from={state.weeks[0]?.week}
          request={{ weeks: filter.weeks, confidence: filter.confidence, site: filter.site, crop: filter.crop }}
          timeZone={timeZone}
          siteName={siteName}
          shows={shows}
        />
      ) : filter.totals ? (
        <BoardTotals rows={rows()} weeks={state.weeks} openCrop={(crop) => change({ crop, totals: false })} />
      ) : phone ? (
        <BoardList
          order={order}
          state={state}
          siteName={siteName}
          batchesPath={batchesPath}
          openCell={openCell}
          cellSays={cellSays}
        />
      ) : (
        <div className={old ? 'board-table board-old' : 'board-table'}>
          <BoardGrid
            handle={grid}
            content={content}
            speech={speech}
            actions={{
              openCell,
              openRow: (row) => void navigate(batchesPath(row)),
              sort: (column) => {
                const by = SORTS[column] ?? state.weeks[column - SORTS.length]?.week;
                if (by) change({ sort: sortedBy(filter.sort, by) });
                grid.current?.scrollToTop();
              },
            }}
          />
        </div>
      )}
      <BoardPaper
        rows={rows}
        weeks={state.weeks}
        confidence={state.confidence}
        asOf={asOf ?? state.asOf}
        siteName={siteName}
      />
      {opened && (
        <CellDialog
          key={rowKey(opened)}
          cell={opened}
          row={state.rows.get(rowKey(opened))}
          rows={state.rows}
          weeks={state.weeks}
          confidence={filter.confidence}
          asOf={asOf}
          siteName={siteName}
          goTo={(week) => setParams((before) => withCell(before, cellKey(rowKey(opened), week)), { replace: true })}
          close={closeCell}
        />
      )}
    </>
  );
}

/** Sorted anew when the reader asks for something else; kept in place while only figures change. */
function useOrder(state: BoardState, filter: BoardFilter): readonly RowKey[] {
  const { text, sort, openOnly, atLeast, riskOnly } = filter;
  const asked = [text, sort.by, sort.descending, openOnly, atLeast, riskOnly].join(' ');
  const kept = useRef<{ asked: string; loaded: object; order: readonly RowKey[] } | undefined>(undefined);
  const { rows, loaded } = state;
  return useMemo(() => {
    const wanted = orderedKeys(state, filter);
    const before = kept.current?.asked === asked && kept.current.loaded === loaded ? kept.current.order : undefined;
    const order = before ? keptOrder(before, wanted) : wanted;
    kept.current = { asked, loaded, order };
    return order;
    // `asked` stands for the filter, and of the state only a load or other rows can change what is shown.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [asked, loaded, rows]);
}

/** A trial over the same site, weeks and confidence. */
function whatIfPath({ site, weeks, confidence }: BoardFilter): string {
  return `/what-if?${new URLSearchParams({ ...(site ? { site } : {}), weeks: String(weeks), confidence: String(confidence) })}`;
}

function withCell(before: URLSearchParams, cell: string | undefined): URLSearchParams {
  const params = new URLSearchParams(before);
  if (cell === undefined) params.delete('cell');
  else params.set('cell', cell);
  return params;
}
