import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { Button } from '@vaadin/react-components/Button.js';
import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useEffect, useRef, useState } from 'react';
import { Link } from 'react-router';
import type { BoardKey, BoardRow, BoardWeek, CellExplanation } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { Failed, Loading, ProblemNote } from '../shared/screen-states';
import { useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { weekNumber } from '../shared/weeks';
import { loadCell, releaseOrder } from './board-api';
import { boardMessages } from './board-messages';
import type { RowKey } from './board-state';
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
  readonly siteName: (code: string) => string;
  readonly goTo: (week: string) => void;
  readonly close: () => void;
}

/** One figure of the board, opened: what it is made of, what limits it, and the form to promise from it. */
export function CellDialog({ cell, row, rows, weeks, confidence, siteName, goTo, close }: CellDialogProps) {
  const t = useMessages(boardMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const { data, error, refetch } = useQuery({
    queryKey: ['board', 'cell', cell, confidence],
    queryFn: ({ signal }) => loadCell({ ...cell, confidence }, signal),
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
        {data ? (
          <Explained data={data} rows={rows} close={close} />
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
  close,
}: {
  data: CellExplanation;
  rows: ReadonlyMap<RowKey, BoardRow>;
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
        <section aria-labelledby="cell-promise">
          <h3 id="cell-promise">{t.promiseTitle}</h3>
          <PromiseForm data={data} rows={rows} done={close} />
        </section>
      </div>
      <Lots data={data} />
      <Promises data={data} />
    </>
  );
}

function Figures({ data }: { data: CellExplanation }) {
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

function Lots({ data }: { data: CellExplanation }) {
  const t = useMessages(boardMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const zone = useSites().data?.find(({ code }) => code === data.site)?.timeZone;
  // A bare date is a day on the calendar; only an instant has a time zone.
  const day = (at: string | null) =>
    at === null ? shared.notInSight : at.length === 10 ? format.dayMonth(at) : format.dayOf(at, zone);
  return (
    <div className="cell-wide">
      <h3 id="cell-lots">{t.lots}</h3>
      {data.lots.length === 0 ? (
        <p className="rc-quiet">{t.noLots}</p>
      ) : (
        <div className="cell-scroll" tabIndex={0} role="region" aria-label={t.lots}>
          <table className="rc-table">
            <thead>
              <tr>
                <th scope="col">{t.batch}</th>
                <th scope="col">{t.house}</th>
                <th scope="col">{t.stage}</th>
                <th scope="col" className="rc-number">
                  {t.alive}
                </th>
                <th scope="col" className="rc-number">
                  {t.saleable} <span className="rc-small">{t.saleableHint}</span>
                </th>
                <th scope="col">
                  {t.readyOn} <span className="rc-small">{t.readyHint}</span>
                </th>
                <th scope="col" className="rc-number">
                  {t.chance}
                </th>
                <th scope="col">{t.usable}</th>
                <th scope="col" className="rc-number">
                  {t.counted}
                </th>
                <th scope="col" className="rc-number">
                  {t.promisedHere}
                </th>
              </tr>
            </thead>
            <tbody>
              {data.lots.map((lot) => (
                <tr key={lot.batch}>
                  <th scope="row" className="cell-code">
                    <Link className="rc-link" to={`/batches/${encodeURIComponent(lot.batch)}`}>
                      {lot.batch}
                    </Link>
                  </th>
                  <td>{lot.house}</td>
                  <td>{shared[`stage${lot.stage}`]}</td>
                  <td className="rc-number">{format.integer(lot.alive)}</td>
                  <td className="rc-number">
                    <span className="rc-quiet">{format.integer(lot.saleableTrays.p10)} / </span>
                    {format.integer(lot.saleableTrays.p50)}
                    <span className="rc-quiet"> / {format.integer(lot.saleableTrays.p90)}</span>
                  </td>
                  <td>
                    {day(lot.readyAt.p50)}{' '}
                    <span className="rc-quiet rc-small">
                      {day(lot.readyAt.p10)} … {day(lot.readyAt.p90)}
                    </span>
                  </td>
                  <td className="rc-number">{format.percent(lot.readyByDateProbability)}</td>
                  <td>{day(lot.usableUntil)}</td>
                  <td className="rc-number">
                    <strong>{format.integer(lot.traysAtConfidence)}</strong>
                  </td>
                  <td className="rc-number">{format.integer(lot.promisedHere)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </div>
  );
}

function Promises({ data }: { data: CellExplanation }) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  return (
    <div className="cell-wide">
      <h3 id="cell-promises">{t.promises}</h3>
      {data.promises.length === 0 ? (
        <p className="rc-quiet">{t.noPromises}</p>
      ) : (
        <div className="cell-scroll" tabIndex={0} role="region" aria-label={t.promises}>
          <table className="rc-table">
            <thead>
              <tr>
                <th scope="col">{t.customer}</th>
                <th scope="col">{t.order}</th>
                <th scope="col">{t.shipOn}</th>
                <th scope="col" className="rc-number">
                  {t.traysAsked}
                </th>
                <th scope="col" className="rc-number">
                  {t.confidence}
                </th>
                <th scope="col">{t.state}</th>
                <th scope="col">
                  <span className="rc-hidden">{t.release}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {data.promises.map((promise) => (
                <tr key={`${promise.order} ${promise.line}`}>
                  <th scope="row">{promise.customer}</th>
                  <td title={promise.order}>{orderName(promise.order)}</td>
                  <td>{format.date(promise.shipOn)}</td>
                  <td className="rc-number">{format.integer(promise.trays)}</td>
                  <td className="rc-number">{format.percent(promise.confidence, 2)}</td>
                  <td>
                    {promise.kept ? `✓ ${t.kept}` : <span className="rc-at-risk">▲ {t.notKept}</span>}
                    {promise.shipped > 0 && (
                      <span className="rc-quiet">
                        {' '}
                        {t.shippedOf(format.integer(promise.shipped), format.integer(promise.trays))}
                      </span>
                    )}
                  </td>
                  <td>
                    <Release order={promise.order} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </div>
  );
}

/** What people call an order: its id is made by the program and far too long to read. */
function orderName(id: string): string {
  return id.slice(0, 8);
}

/** Gives the trays of a whole order back. It cannot be taken back, so it asks once, in its own place. */
function Release({ order }: { order: string }) {
  const t = useMessages(boardMessages);
  const [asking, setAsking] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const release = async () => {
    setAsking(false);
    try {
      await releaseOrder(order);
      notice({ text: t.released(orderName(order)) });
    } catch (refused) {
      setFailure(refused);
    }
  };
  if (failure) return <ProblemNote failure={failure} />;
  if (!asking) {
    return (
      <button type="button" className="rc-link" onClick={() => setAsking(true)}>
        {t.release}
        <span className="rc-hidden"> {orderName(order)}</span>
      </button>
    );
  }
  return (
    <span className="rc-row" role="group" aria-label={t.releaseAll(orderName(order))}>
      <button type="button" className="rc-link" autoFocus onClick={() => void release()}>
        {t.releaseAll(orderName(order))}
      </button>
      <button type="button" className="rc-link" onClick={() => setAsking(false)}>
        {t.keep}
      </button>
    </span>
  );
}
