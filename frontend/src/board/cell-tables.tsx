import { Link } from 'react-router';
import type { CellExplanation } from '../shared/api-types';
import { useAsOf } from '../shared/as-of';
import { withAsOf } from '../shared/as-of-state';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useHouseNames, useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { boardMessages } from './board-messages';

/** Batches that this cell would count on if they could be computed. */
export function CellFaulty({ data }: { data: CellExplanation }) {
  const shared = useMessages(sharedMessages);
  if (data.faulty.length === 0) return null;
  return (
    <section className="cell-wide rc-problem" aria-labelledby="cell-faulty">
      <h3 id="cell-faulty">✕ {shared.notComputed(data.faulty.length)}</h3>
      <ul>
        {data.faulty.map(({ batch }) => (
          <li key={batch}>
            <Link className="rc-link" to={`/batches/${encodeURIComponent(batch)}`}>
              {batch}
            </Link>
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
  const houseNames = useHouseNames();
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
                  <td>{houseNames.get(lot.house) ?? lot.house}</td>
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
