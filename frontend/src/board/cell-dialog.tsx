import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { Button } from '@vaadin/react-components/Button.js';
import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useEffect, useRef } from 'react';
import { Offered } from '../people/offered';
import type { BoardCell, BoardKey, BoardRow, BoardWeek, CellExplanation } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { keys } from '../shared/query-keys';
import { Failed, Loading } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { weekNumber } from '../shared/weeks';
import { loadCell } from './board-api';
import { boardMessages } from './board-messages';
import type { RowKey } from './board-state';
import { CellFaulty, CellLots, CellPromises } from './cell-tables';
import { CellPicture } from './cell-picture';
import { PromiseForm } from './promise-form';
import './cell-dialog.css';

interface CellDialogProps {
  readonly cell: BoardKey & { readonly week: string };
  /** The row as the board shows it; a change of it means that this cell has changed too. */
  readonly row: BoardRow | undefined;
  readonly rows: ReadonlyMap<RowKey, BoardRow>;
  readonly weeks: readonly BoardWeek[];
  readonly confidence: number;
  /** The moment looked back to; undefined is now. */
  readonly asOf: string | undefined;
  readonly siteName: (code: string) => string;
  readonly goTo: (week: string) => void;
  readonly close: () => void;
}

/** An answer this much after the moment asked for is not of that moment. */
const SAME_MOMENT_MS = 60_000;

/** One figure of the board, opened: what it is made of, what limits it, and the form to promise from it. */
export function CellDialog({ cell, row, rows, weeks, confidence, asOf, siteName, goTo, close }: CellDialogProps) {
  const t = useMessages(boardMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const { data, error, refetch } = useQuery({
    queryKey: keys.boardCell(cell, confidence, asOf),
    queryFn: ({ signal }) => loadCell({ ...cell, confidence, asOf }, signal),
    placeholderData: keepPreviousData,
    staleTime: 0,
  });
  const seen = useRef(row);
  useEffect(() => {
    if (seen.current !== row) void refetch();
    seen.current = row;
  }, [row, refetch]);

  const index = weeks.findIndex(({ week }) => week === cell.week);
  const before = weeks[index - 1]?.week;
  const after = index < 0 ? undefined : weeks[index + 1]?.week;
  const title = `${row?.varietyName ?? cell.variety} · ${cell.trayFormat} · ${siteName(cell.site)}`;
  return (
    <Dialog
      opened
      className="cell-dialog"
      aria-label={title}
      headerTitle={title}
      header={
        <Button theme="tertiary" aria-label={shared.close} onClick={close}>
          ✕
        </Button>
      }
      onClosed={close}
      theme="no-padding"
    >
      <div className="cell">
        <div className="cell-week">
          <Button
            theme="tertiary"
            disabled={before === undefined}
            aria-label={t.previousCell}
            onClick={() => before && goTo(before)}
          >
            ◂
          </Button>
          <strong>{t.week(weekNumber(cell.week))}</strong>
          <span>{data && format.date(data.date)}</span>
          <Button
            theme="tertiary"
            disabled={after === undefined}
            aria-label={t.nextCell}
            onClick={() => after && goTo(after)}
          >
            ▸
          </Button>
          <span className="rc-quiet">
            {t.confidence} {format.percent(confidence, 2)}
          </span>
        </div>
        {data && asOf !== undefined && Date.parse(data.asOf) - Date.parse(asOf) > SAME_MOMENT_MS ? (
          // The explanation is of now: what is shown beside it must not be taken for that of then.
          <Then cell={row?.cells.find(({ week }) => week === cell.week)} />
        ) : data ? (
          <Explained data={data} rows={rows} then={asOf !== undefined} close={close} />
        ) : error ? (
          <Failed failure={error} retry={() => void refetch()} />
        ) : (
          <Loading />
        )}
      </div>
    </Dialog>
  );
}

function Explained({
  data,
  rows,
  then,
  close,
}: {
  data: CellExplanation;
  rows: ReadonlyMap<RowKey, BoardRow>;
  /** Looking back: nothing can be promised or released. */
  then: boolean;
  close: () => void;
}) {
  const t = useMessages(boardMessages);
  return (
    <>
      <Figures data={data} />
      <div className="cell-columns">
        <section aria-labelledby="cell-made-of">
          <h3 id="cell-made-of">{t.madeOf}</h3>
          <CellPicture steps={data.steps} />
          <p className="cell-limit">{useLimit(data)}</p>
        </section>
        {!then && (
          <Offered right="sell" site={data.site}>
            <section aria-labelledby="cell-promise">
              <h3 id="cell-promise">{t.promiseTitle}</h3>
              <PromiseForm data={data} rows={rows} done={close} />
            </section>
          </Offered>
        )}
      </div>
      <CellFaulty data={data} />
      <CellLots data={data} />
      <CellPromises data={data} then={then} />
    </>
  );
}

/** Only the figures of then, where what they were made of cannot be told any more. */
function Then({ cell }: { cell: BoardCell | undefined }) {
  const t = useMessages(boardMessages);
  return (
    <>
      {cell && <Figures data={cell} />}
      <p className="rc-warning">▲ {t.onlyNow}</p>
    </>
  );
}

function Figures({ data }: { data: BoardCell }) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  return (
    <dl className="cell-figures">
      {(['open', 'likely', 'ready', 'promised'] as const).map((figure) => (
        <div key={figure} className={`figure-${figure}`}>
          <dt>{t[figure]}</dt>
          <dd>{format.integer(data[figure])}</dd>
        </div>
      ))}
      {data.atRisk > 0 && (
        <div className="rc-at-risk">
          <dt>{t.atRisk}</dt>
          <dd>▲ {format.integer(data.atRisk)}</dd>
        </div>
      )}
    </dl>
  );
}

/** The limiting set of ship dates, in words. */
function useLimit({ limitedBy, open, ready, date }: CellExplanation): string {
  const t = useMessages(boardMessages);
  const format = useFormats();
  if (!limitedBy || limitedBy.dates.length === 0 || (ready === 0 && limitedBy.capacity === 0)) return t.limitedNothing;
  const figures = [limitedBy.capacity, limitedBy.promised, open].map(format.integer) as [string, string, string];
  if (limitedBy.dates.length === 1 && limitedBy.dates[0] === date) return t.limitedSelf(...figures);
  return t.limitedBy(limitedBy.dates.map(format.dayMonth).join(', '), ...figures);
}
