import { useState } from 'react';
import { Link } from 'react-router';
import { Offered } from '../people/offered';
import type { CellExplanation } from '../shared/api-types';
import { useAsOf } from '../shared/as-of';
import { withAsOf } from '../shared/as-of-state';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { ProblemNote } from '../shared/screen-states';
import { useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { releaseOrder } from './board-api';
import { boardMessages } from './board-messages';

/** Batches that this cell would count on if they could be computed. */
export function CellFaulty({ data }: { data: CellExplanation }) {
  const shared = useMessages(sharedMessages);
  if (data.faulty.length === 0) return null;
  return (
    <section className="cell-wide rc-problem" aria-labelledby="cell-faulty">
      <h3 id="cell-faulty">✕ {shared.notComputed(data.faulty.length)}</h3>
      <ul>
        {data.faulty.map(({ batch, fault }) => (
          <li key={batch}>
            <Link className="rc-link" to={`/batches/${encodeURIComponent(batch)}`}>
              {batch}
            </Link>
            : <span lang="en">{fault}</span>
          </li>
        ))}
      </ul>
      <p>{shared.notComputedHelp}</p>
    </section>
  );
}

/** The batches a cell counts on. */
export function CellLots({ data }: { data: CellExplanation }) {
  const t = useMessages(boardMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const [asOf] = useAsOf();
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
                    <Link
                      className="rc-link"
                      to={`/batches/${encodeURIComponent(lot.batch)}${asOf ? `?${withAsOf(new URLSearchParams(), asOf)}` : ''}`}
                    >
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

/** The promises of a cell's week; while looking back none can be released. */
export function CellPromises({ data, then }: { data: CellExplanation; then: boolean }) {
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
                    {!then && (
                      <Offered right="sell" site={data.site}>
                        <Release order={promise.order} />
                      </Offered>
                    )}
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
