import { useState } from 'react';
import { useSearchParams } from 'react-router';
import { Offered } from '../people/offered';
import { Button } from '../shared/button';
import type { TreatmentView } from '../shared/climate-types';
import { useClosedHouses } from '../shared/closed-houses';
import { useFormats } from '../shared/formats';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { useSiteFilter } from '../shared/site-filter';
import { TakeTable } from '../shared/take-table';
import { dateIn } from '../shared/weeks';
import { useTreatments } from './treatments-api';
import { treatmentsMessages } from './treatments-messages';
import { TreatmentRecord } from './treatment-record';
import { monthSpan, monthsUntil } from './treatments-state';
import './treatments.css';

const TreatmentDialog = later(async () => (await import('./treatment-dialog')).TreatmentDialog);
const ReverseDialog = later(async () => (await import('./reverse-dialog')).ReverseDialog);

const MONTHS_BACK = 24;

/** What was applied, where and by whom, and which houses must not be entered because of it. */
export function TreatmentsView() {
  const t = useMessages(treatmentsMessages);
  useScreenTitle(t.title);
  const format = useFormats();
  const [site] = useSiteFilter();
  const [params, setParams] = useSearchParams();
  const sites = useSites().data ?? [];
  const firstZone = sites.find(({ code }) => site === undefined || code === site)?.timeZone;
  const house = params.get('house') ?? undefined;
  const month = params.get('month') ?? undefined;
  const span = monthSpan(month, firstZone);
  const treatments = useTreatments({ site, house, ...span });
  const put = (name: string, value: string) =>
    setParams((before) => {
      const after = new URLSearchParams(before);
      if (value) after.set(name, value);
      else after.delete(name);
      return after;
    });
  const houses = useHouses().data ?? [];
  const nowMs = useNow();
  const monthName = (of: string | undefined) => (of === undefined ? '' : format.month(of));
  const [opened, setOpened] = useState(false);
  const [reversing, setReversing] = useState<TreatmentView>();
  const name = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  const zoneOf = (code: string) => sites.find((each) => each.code === code)?.timeZone;
  const zoneOfHouse = (code: string) => zoneOf(houses.find((house) => house.code === code)?.site ?? '');
  const all = treatments.data ?? [];
  const closedNow = useClosedHouses(site);
  const table = () => ({
    head: [
      ...[t.when, t.house, t.batch, t.purpose, t.product, t.rate, t.by, t.reentryHours, t.reentry, t.note, t.reverse],
      ...[t.target, t.totalUsed, t.area('m²'), t.registrationNumber, t.licenceNumber, t.weather],
    ],
    rows: all.map((each) => [
      each.appliedAt,
      name(each.house),
      each.batch ?? '',
      t[each.purpose],
      each.product,
      each.rate,
      each.appliedBy,
      each.reentryHours,
      each.reentryAt,
      each.note ?? '',
      each.reversedAt === null ? '' : `${each.reversedAt} ${each.reversalReason ?? ''}`,
      each.target ?? '',
      each.totalUsed ?? '',
      each.areaM2 ?? '',
      each.registrationNumber ?? '',
      each.licenceNumber ?? '',
      each.weather ?? '',
    ]),
  });
  const body = () => {
    if (treatments.isPending) return <Loading />;
    if (!treatments.data) return <Failed failure={treatments.error} retry={() => void treatments.refetch()} />;
    if (all.length === 0) {
      return (
        <Empty title={span ? t.noneInMonth : t.none}>
          <p>{t.noneHelp}</p>
        </Empty>
      );
    }
    if (span) {
      return (
        <TreatmentRecord
          title={t.recordOf(house === undefined ? t.allHouses : name(house), monthName(month))}
          treatments={all}
          houseName={name}
          timeZone={zoneOf}
        />
      );
    }
    return (
      <ul className="treatments">
        {all.map((each) => (
          <Applied
            key={each.id}
            treatment={each}
            houseName={name(each.house)}
            timeZone={zoneOf(each.site)}
            reverse={() => setReversing(each)}
          />
        ))}
      </ul>
    );
  };
  return (
    <div className="rc-screen treatments-screen">
      <p className="rc-warning">▲ {t.caution}</p>
      <div className="rc-row rc-spread">
        <Offered right="record" site={site}>
          <Button theme="primary" className="rc-no-print" onClick={() => setOpened(true)}>
            {t.record}
          </Button>
        </Offered>
        {all.length > 0 && <TakeTable table={table} fileName="rootcast-treatments" label={t.title} print />}
      </div>
      <form
        className="rc-row rc-no-print treatments-filters"
        role="search"
        aria-label={t.filters}
        onSubmit={(event) => event.preventDefault()}
      >
        <label className="rc-row">
          <span className="rc-quiet">{t.house}</span>
          <select className="rc-select" value={house ?? ''} onChange={(event) => put('house', event.target.value)}>
            <option value="">{t.allHouses}</option>
            {houses
              .filter((each) => site === undefined || each.site === site)
              .map((each) => (
                <option key={each.code} value={each.code}>
                  {each.name}
                </option>
              ))}
          </select>
        </label>
        <label className="rc-row">
          <span className="rc-quiet">{t.month}</span>
          <select className="rc-select" value={month ?? ''} onChange={(event) => put('month', event.target.value)}>
            <option value="">{t.lastDays}</option>
            {monthsUntil(dateIn(firstZone ?? 'UTC', nowMs), MONTHS_BACK).map((each) => (
              <option key={each} value={each}>
                {monthName(each)}
              </option>
            ))}
          </select>
        </label>
      </form>
      <section className="rc-no-print" aria-label={t.closedNow}>
        <h2>{t.closedNow}</h2>
        {closedNow.length === 0 && <p className="rc-quiet">✓ {t.noneClosed}</p>}
        {closedNow.map(({ house: closed, until, product }) => (
          <p key={closed} className="rc-problem">
            ✕ {t.closed(name(closed), format.dateTime(until, zoneOfHouse(closed)))} ({product})
          </p>
        ))}
      </section>
      {body()}
      {opened && <TreatmentDialog site={site} close={() => setOpened(false)} />}
      {reversing && <ReverseDialog treatment={reversing} close={() => setReversing(undefined)} />}
    </div>
  );
}

interface AppliedProps {
  readonly treatment: TreatmentView;
  readonly houseName: string;
  readonly timeZone: string | undefined;
  readonly reverse: () => void;
}

function Applied({ treatment, houseName, timeZone, reverse }: AppliedProps) {
  const t = useMessages(treatmentsMessages);
  const format = useFormats();
  const { reversedAt, closed } = treatment;
  const when = (instant: string) => format.dateTime(instant, timeZone);
  return (
    <li className={reversedAt === null ? undefined : 'reversed'}>
      <span className="rc-quiet">{when(treatment.appliedAt)}</span>
      <div>
        <p className="treatment-what">
          {houseName}, {treatment.batch ?? t.wholeHouse}: {treatment.product}, {treatment.rate}
        </p>
        <p className="rc-quiet">
          {t[treatment.purpose]}, {t.by.toLowerCase()} {treatment.appliedBy};{' '}
          {t.recordedOn(when(treatment.recordedAt), treatment.recordedBy)}
          {treatment.note !== null && <>. {treatment.note}</>}
        </p>
        {reversedAt !== null && <p>{t.reversed(treatment.reversalReason ?? '')}</p>}
      </div>
      <span className={closed && reversedAt === null ? 'rc-broken' : undefined}>
        {closed && reversedAt === null && `✕ ${t.isClosed}: `}
        {t.reentry.toLowerCase()} {when(treatment.reentryAt)}
        <small> ({t.hours(format.decimal(treatment.reentryHours, treatment.reentryHours % 1 === 0 ? 0 : 1))})</small>
      </span>
      {reversedAt === null ? (
        <Offered right="record" site={treatment.site}>
          <button type="button" className="rc-link rc-no-print" onClick={reverse}>
            {t.reverse}
            <span className="rc-hidden"> {treatment.product}</span>
          </button>
        </Offered>
      ) : (
        <span />
      )}
    </li>
  );
}
