import type { ReactNode } from 'react';
import { Link } from 'react-router';
import type { Quantiles } from '../shared/api-types';
import { useBatchList } from '../shared/batch-queries';
import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import type { WhatIfAnswer } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { useHouses, useSites, useTrayFormats, useVarieties } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { useSiteFilter } from '../shared/site-filter';
import { TakeTable } from '../shared/take-table';
import { weekNumber } from '../shared/weeks';
import { signedDays } from '../batches/reason-state';
import { whatIfMessages } from './what-if-messages';
import { outcomeOf, type BatchOutcome, type Outcome } from './what-if-state';

/** What a trial would do: in a sentence, batch by batch, and week by week on the board. */
export function WhatIfOutcome({ answer }: { answer: WhatIfAnswer }) {
  const t = useMessages(whatIfMessages);
  const outcome = outcomeOf(answer);
  if (outcome.batches.length + outcome.cells.length + answer.promises.length === 0)
    return <p className="wish-said">{t.noEffect}</p>;
  return (
    <>
      <Said outcome={outcome} answer={answer} />
      <Promises title={t.broken} promises={outcome.broken} />
      <Promises title={t.rescued} promises={outcome.rescued} />
      {outcome.batches.length > 0 && <Batches outcome={outcome} />}
      {outcome.cells.length > 0 && <Cells outcome={outcome} />}
    </>
  );
}

function Said({ outcome, answer }: { outcome: Outcome; answer: WhatIfAnswer }) {
  const t = useMessages(whatIfMessages);
  const format = useFormats();
  const { broken, rescued, earlier, later, earliestDays, latestDays, risen, fallen, unchanged } = outcome;
  const days = (value: number) => format.decimal(value, 1);
  const n = format.integer;
  const confidence = format.percent(answer.confidence, 2);
  return (
    <p className="wish-said" role="status">
      {broken.length > 0 && <span className="rc-at-risk">▲ {t.saidBroken(broken.length, n(broken.length))} </span>}
      {rescued.length > 0 && `${t.saidRescued(rescued.length, n(rescued.length))} `}
      {earlier === 1 ? t.oneEarlier(days(earliestDays)) : earlier > 0 && t.earlier(n(earlier), days(earliestDays))}{' '}
      {later === 1 ? t.oneLater(days(latestDays)) : later > 0 && t.later(n(later), days(latestDays))}{' '}
      {risen + fallen > 0 ? t.open(confidence, n(risen), n(fallen)) : t.openSame(confidence)}{' '}
      <span className="rc-quiet">
        {unchanged > 0 && t.unchanged(unchanged, n(unchanged))} {t.asOf(format.dateTime(answer.asOf))}
      </span>
    </p>
  );
}

/** Promises that would fare otherwise: what a manager asks first. */
function Promises({ title, promises }: { title: string; promises: WhatIfAnswer['promises'] }) {
  const t = useMessages(whatIfMessages);
  const format = useFormats();
  const varieties = useVarieties().data ?? [];
  const sites = useSites().data ?? [];
  if (promises.length === 0) return null;
  const head = [t.customer, t.order, t.shipOn, t.variety, t.format, t.site, t.trays, t.short];
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <WideTable label={title} head={head} numbersFrom={6}>
        {promises.map((promise) => (
          <tr key={`${promise.orderNumber} ${promise.line}`}>
            <th scope="row">{promise.customer}</th>
            <td data-label={t.order}>{promise.orderNumber}</td>
            <td data-label={t.shipOn}>{format.date(promise.shipOn)}</td>
            <td>{varieties.find(({ code }) => code === promise.variety)?.name ?? promise.variety}</td>
            <td data-label={t.format}>{promise.trayFormat}</td>
            <td data-label={t.site}>{sites.find(({ code }) => code === promise.site)?.name ?? promise.site}</td>
            <td data-label={t.trays} className="rc-number">
              {format.integer(promise.trays)}
            </td>
            <td
              data-label={t.short}
              className={`rc-number ${promise.shortAfter > promise.shortBefore ? 'rc-at-risk' : ''}`}
            >
              {format.integer(promise.shortBefore)} → <strong>{format.integer(promise.shortAfter)}</strong>
            </td>
          </tr>
        ))}
      </WideTable>
    </section>
  );
}

function Batches({ outcome: { batches } }: { outcome: Outcome }) {
  const t = useMessages(whatIfMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const [site] = useSiteFilter();
  const known = new Map(useBatchList({ site, state: 'live' }).data?.batches.map((batch) => [batch.id, batch]));
  const houses = useHouses().data ?? [];
  const sites = useSites().data ?? [];
  const zoneOf = (id: string) => sites.find(({ code }) => code === known.get(id)?.site)?.timeZone;
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  const day = (id: string, at: string | null) => (at === null ? shared.notInSight : format.dayOf(at, zoneOf(id)));
  const days = ({ shift }: BatchOutcome) => (shift === null ? '–' : signedDays(shift, format.decimal));
  const trays = (q: Quantiles<number>) => format.integer(q.p50);
  const head = [t.batch, t.variety, t.house, t.readyBefore, t.readyAfter, t.days, t.saleable];
  const table = () => ({
    head: [t.batch, t.variety, t.house, t.toHouse, t.readyBefore, t.readyAfter, t.days, t.before, t.after],
    rows: batches.map((batch) => [
      batch.id,
      known.get(batch.id)?.varietyName ?? '',
      houseName(batch.before.house),
      houseName(batch.after.house),
      batch.before.readyAt.p50 ?? '',
      batch.after.readyAt.p50 ?? '',
      batch.shift === null ? '' : Math.round(batch.shift * 100) / 100,
      batch.before.saleableTrays.p50,
      batch.after.saleableTrays.p50,
    ]),
  });
  return (
    <section aria-label={t.batches}>
      <div className="rc-row rc-spread">
        <h2>{t.batches}</h2>
        <TakeTable table={table} fileName="rootcast-what-if-batches" label={t.batches} nameColumns={2} />
      </div>
      <WideTable label={t.batches} head={head} numbersFrom={5}>
        {batches.map((batch) => {
          const { id, before, after } = batch;
          return (
            <tr key={id}>
              <th scope="row">
                <Link className="rc-link" to={`/batches/${encodeURIComponent(id)}`}>
                  {id}
                </Link>
              </th>
              <td>{known.get(id)?.varietyName ?? '–'}</td>
              <td data-label={t.house}>
                {houseName(before.house)}
                {after.house !== before.house && (
                  <>
                    {' → '}
                    <strong>{houseName(after.house)}</strong>
                  </>
                )}
              </td>
              <td data-label={t.readyBefore}>
                {day(id, before.readyAt.p50)} <Range day={(at) => day(id, at)} of={before.readyAt} />
              </td>
              <td data-label={t.readyAfter}>
                <strong>{day(id, after.readyAt.p50)}</strong> <Range day={(at) => day(id, at)} of={after.readyAt} />
              </td>
              <td data-label={t.days} className="rc-number">
                {days(batch)}
              </td>
              <td data-label={t.saleable} className="rc-number">
                {trays(before.saleableTrays)}
                {trays(before.saleableTrays) !== trays(after.saleableTrays) && (
                  <>
                    {' → '}
                    <strong>{trays(after.saleableTrays)}</strong>
                  </>
                )}
              </td>
            </tr>
          );
        })}
      </WideTable>
    </section>
  );
}

function Range({ day, of }: { day: (at: string | null) => string; of: Quantiles<string | null> }) {
  if (of.p10 === of.p90) return null;
  return (
    <span className="rc-quiet rc-small">
      {day(of.p10)} … {day(of.p90)}
    </span>
  );
}

function Cells({ outcome: { cells } }: { outcome: Outcome }) {
  const t = useMessages(whatIfMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const varieties = useVarieties().data ?? [];
  const sites = useSites().data ?? [];
  const varietyName = (code: string) => varieties.find((each) => each.code === code)?.name ?? code;
  const siteName = (code: string) => sites.find((each) => each.code === code)?.name ?? code;
  const formats = useTrayFormats().data ?? [];
  const plantsIn = (code: string) => formats.find((each) => each.code === code)?.saleCount;
  const head = [t.variety, t.format, shared.plantsPerTray, t.site, t.week, t.before, t.after, t.difference];
  const table = () => ({
    head,
    note: shared.weeksDoNotAdd,
    rows: cells.map(({ variety, trayFormat, site, week, date, openBefore, openAfter }) => [
      varietyName(variety),
      trayFormat,
      plantsIn(trayFormat) ?? '',
      siteName(site),
      `${week} (${date})`,
      openBefore,
      openAfter,
      openAfter - openBefore,
    ]),
  });
  return (
    <section aria-label={t.cells}>
      <div className="rc-row rc-spread">
        <h2>{t.cells}</h2>
        <TakeTable table={table} fileName="rootcast-what-if-open" label={t.cells} nameColumns={5} />
      </div>
      <p className="rc-quiet">{shared.weeksDoNotAdd}</p>
      <div className="wish-scroll rc-sheet" tabIndex={0} role="group" aria-label={t.cells}>
        <table className="rc-table">
          <HeadRow heads={head.map((name, i) => (i === 2 || i >= 5 ? figure(name) : name))} />
          <tbody>
            {cells.map(({ variety, trayFormat, site, week, date, openBefore, openAfter }) => (
              <tr key={[variety, trayFormat, site, week].join(' ')}>
                <th scope="row">{varietyName(variety)}</th>
                <td data-label={t.format}>{trayFormat}</td>
                <td data-label={shared.plantsPerTray} className="rc-number">
                  {plantsIn(trayFormat) ?? '–'}
                </td>
                <td data-label={t.site}>{siteName(site)}</td>
                <td data-label={t.week}>{t.weekShort(weekNumber(week), format.dayMonth(date))}</td>
                <td data-label={t.before} className="rc-number">
                  {format.integer(openBefore)}
                </td>
                <td data-label={t.after} className="rc-number">
                  <strong>{format.integer(openAfter)}</strong>
                </td>
                <td data-label={t.difference} className={`rc-number ${openAfter < openBefore ? 'rc-at-risk' : ''}`}>
                  {openAfter < openBefore ? '▼ −' : '▲ +'}
                  {format.integer(Math.abs(openAfter - openBefore))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

interface WideTableProps {
  readonly label: string;
  readonly head: readonly string[];
  /** The first column of figures. */
  readonly numbersFrom: number;
  readonly children: ReactNode;
}

/** A table that scrolls sideways by itself where the page is too narrow for it. */
function WideTable({ label, head, numbersFrom, children }: WideTableProps) {
  return (
    <div className="wish-scroll rc-sheet" tabIndex={0} role="group" aria-label={label}>
      <table className="rc-table">
        <HeadRow heads={head.map((name, i) => (i >= numbersFrom ? figure(name) : name))} />
        <tbody>{children}</tbody>
      </table>
    </div>
  );
}
