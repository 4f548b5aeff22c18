import { useState } from 'react';
import { Offered } from '../people/offered';
import type { CellExplanation, CellPromise } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { figure, HeadRow, spoken } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { ProblemNote } from '../shared/screen-states';
import { releaseOrder } from './board-api';
import { boardMessages } from './board-messages';
import { promiseLists } from './limit-state';

interface CellPromisesProps {
  readonly data: CellExplanation;
  /** Looking back: none can be released. */
  readonly then: boolean;
}

/** The promises that limit a cell's figure and those of its week, each list with its sum; one list where they agree. */
export function CellPromises({ data, then }: CellPromisesProps) {
  const t = useMessages(boardMessages);
  const { limiting, ofWeek, same } = promiseLists(data);
  return (
    <>
      {!same && limiting.length > 0 && (
        <PromiseTable title={t.limiting} promises={limiting} site={data.site} then={then} />
      )}
      <PromiseTable title={t.promises} promises={ofWeek} site={data.site} then={then} />
      <Together data={data} />
    </>
  );
}

/** One promise alone has its chance in its row; several together are less sure than each. */
function Together({ data: { promises, weekKept, allKept } }: { data: CellExplanation }) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const ofWeek = promises.filter(({ inWeek }) => inWeek).length;
  const week = ofWeek > 1 && weekKept !== null ? t.weekTogether(format.percent(weekKept)) : '';
  const row = promises.length > Math.max(1, ofWeek) && allKept !== null ? t.rowTogether(format.percent(allKept)) : '';
  return week || row ? <p className="cell-wide rc-quiet">{[week, row].filter(Boolean).join(' ')}</p> : null;
}

interface PromiseTableProps {
  readonly title: string;
  readonly promises: readonly CellPromise[];
  readonly site: string;
  readonly then: boolean;
}

function PromiseTable({ title, promises, site, then }: PromiseTableProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  return (
    <div className="cell-wide">
      <h3>{title}</h3>
      {promises.length === 0 ? (
        <p className="rc-quiet">{t.noPromises}</p>
      ) : (
        <div className="cell-scroll" tabIndex={0} role="region" aria-label={title}>
          <table className="rc-table">
            <HeadRow
              heads={[
                t.customer,
                figure(t.order),
                t.shipOn,
                figure(t.traysAsked),
                figure(t.confidence),
                figure(t.inFull),
                t.state,
                spoken(t.release),
              ]}
            />
            <tbody>
              {promises.map((promise) => (
                <tr key={`${promise.order} ${promise.line}`}>
                  <th scope="row">{promise.customer}</th>
                  <td className="rc-number">{promise.orderNumber}</td>
                  <td>{format.date(promise.shipOn)}</td>
                  <td className="rc-number">{format.integer(promise.trays)}</td>
                  <td className="rc-number">{format.percent(promise.confidence, 2)}</td>
                  <td className="rc-number">{format.percent(promise.chance)}</td>
                  <td>
                    {promise.kept ? t.kept : <span className="rc-at-risk">▲ {t.notKept}</span>}
                    {promise.shipped > 0 && (
                      <span className="rc-quiet">
                        {' · '}
                        {t.shippedAlready(promise.shipped, format.integer(promise.shipped))}
                      </span>
                    )}
                  </td>
                  <td>
                    {!then && (
                      <Offered right="sell" site={site}>
                        <Release order={promise.order} number={String(promise.orderNumber)} />
                      </Offered>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
            {promises.length > 1 && (
              <tfoot>
                <tr>
                  <th scope="row" colSpan={3}>
                    {t.inAll}
                  </th>
                  <td className="rc-number">{format.integer(promises.reduce((sum, { trays }) => sum + trays, 0))}</td>
                  <td colSpan={4} />
                </tr>
              </tfoot>
            )}
          </table>
        </div>
      )}
    </div>
  );
}

/** Gives the trays of a whole order back. It cannot be taken back, so it asks once, in its own place. */
function Release({ order, number }: { order: string; number: string }) {
  const t = useMessages(boardMessages);
  const [asking, setAsking] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const release = async () => {
    setAsking(false);
    try {
      await releaseOrder(order);
      notice({ text: t.released(number) });
    } catch (refused) {
      setFailure(refused);
    }
  };
  if (failure) return <ProblemNote failure={failure} />;
  if (!asking) {
    return (
      <button type="button" className="rc-link" onClick={() => setAsking(true)}>
        {t.release}
        <span className="rc-hidden"> {number}</span>
      </button>
    );
  }
  return (
    <span className="rc-row" role="group" aria-label={t.releaseAll(number)}>
      <button type="button" className="rc-link" autoFocus onClick={() => void release()}>
        {t.releaseAll(number)}
      </button>
      <button type="button" className="rc-link" onClick={() => setAsking(false)}>
        {t.keep}
      </button>
    </span>
  );
}
