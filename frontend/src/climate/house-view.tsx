import { Link, useParams, useSearchParams } from 'react-router';
import type { House } from '../shared/api-types';
import type { ClimateHour } from '../shared/climate-types';
import { ClosedHouseNote } from '../shared/closed-houses';
import { useMay } from '../people/signed-in';
import { handMessages } from '../floor/hand-messages';
import { byHandAt } from '../floor/hand-readings-state';
import { useFormats } from '../shared/formats';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { TakeTable } from '../shared/take-table';
import { wallClock } from '../shared/zoned-time';
import { useAllSeries, useClimateNow, useLiveClimate, useResidentBatches, type ResidentBatch } from './climate-api';
import { climateMessages } from './climate-messages';
import { bandAt, daysIn, HOURLY, hoursOutside, isNight, PERIODS, periodUntil } from './climate-state';
import { useQuantityWords } from './climate-words';
import { DailyLight, HourPlot } from './hour-plot';
import { ClashNote, ResidentBatchesTable } from './resident-batches-table';
import { SensorsTable } from './sensors-table';
import './climate.css';

const SetpointPlan = later(async () => (await import('./setpoint-plan')).SetpointPlan);
const FlagsTable = later(async () => (await import('./flags-table')).FlagsTable);

/** One house in depth: its hours against the recipes of the batches in it, its plan, its sensors. */
export function HouseClimateView() {
  const t = useMessages(climateMessages);
  const { house: code = '' } = useParams();
  const houses = useHouses();
  const sites = useSites().data;
  const house = houses.data?.find((each) => each.code === code);
  useScreenTitle(t.titleOf(house?.name ?? code));
  useLiveClimate();
  if (houses.isPending || !sites) return houses.isError ? <Failed failure={houses.error} /> : <Loading />;
  if (!house) {
    return (
      <Empty title={t.noHouses}>
        <Link className="rc-link" to="/climate">
          {t.allHouses}
        </Link>
      </Empty>
    );
  }
  return <HouseClimate house={house} timeZone={sites.find((site) => site.code === house.site)?.timeZone} />;
}

function HouseClimate({ house, timeZone }: { house: House; timeZone: string | undefined }) {
  const t = useMessages(climateMessages);
  const hand = useMessages(handMessages);
  const mayRecord = useMay('record', house.site);
  const format = useFormats();
  const [params, setParams] = useSearchParams();
  const days = daysIn(params);
  const nowMs = useNow();
  const period = periodUntil(nowMs, days);
  const residents = useResidentBatches(house.site, nowMs).get(house.code) ?? [];
  const all = useAllSeries(house.code, HOURLY, period);
  const phases = residents.flatMap(({ phase }) => phase ?? []);
  const failed = all.find((series) => series.isError && !series.data);
  const series = HOURLY.map((quantity, i) => ({ quantity, data: all[i]?.data }));
  const flags = series.flatMap(({ data }) => data?.flags ?? []);
  return (
    <div className="rc-screen climate">
      <div className="rc-row rc-spread">
        <span className="rc-row">
          <Link className="rc-link rc-no-print" to={`/climate?site=${encodeURIComponent(house.site)}`}>
            {t.allHouses}
          </Link>
          {mayRecord && (
            <Link className="rc-link rc-no-print" to={byHandAt(house.site, house.code)}>
              {hand.title}
            </Link>
          )}
          <label className="rc-row rc-no-print">
            <span className="rc-quiet">{t.period}</span>
            <select
              className="rc-select"
              value={days}
              onChange={(event) =>
                setParams((before) => {
                  const after = new URLSearchParams(before);
                  after.set('days', event.target.value);
                  return after;
                })
              }
            >
              {PERIODS.map((each) => (
                <option key={each} value={each}>
                  {t.lastDays(each)}
                </option>
              ))}
            </select>
          </label>
        </span>
        <HoursTake house={house} timeZone={timeZone} series={series} />
      </div>
      <ClosedHouseNote house={house.code} />
      {all.some((each) => each.isError && each.data) && (
        <p className="rc-warning" role="status">
          ▲ {t.stale(format.time(new Date(all[0]?.dataUpdatedAt ?? nowMs).toISOString()))}
        </p>
      )}
      <NowFigures house={house} residents={residents} timeZone={timeZone} nowMs={nowMs} series={series} />
      <ClashNote residents={residents} site={house.site} />
      {failed && <Failed failure={failed.error} retry={() => all.forEach((each) => void each.refetch())} />}
      <div className="climate-plots">
        {series.map(
          ({ quantity, data }) =>
            data &&
            data.hours.length > 0 && (
              <HourPlot key={quantity} series={data} phases={phases} house={house} timeZone={timeZone} nowMs={nowMs} />
            ),
        )}
        <DailyLight house={house.code} days={days} nowMs={nowMs} timeZone={timeZone} />
      </div>
      {all.every((each) => !each.isPending) && series.every(({ data }) => !data || data.hours.length === 0) && (
        <p className="rc-quiet">{t.noHours}</p>
      )}
      <ResidentBatchesTable residents={residents} />
      <div className="climate-columns">
        <SetpointPlan house={house} timeZone={timeZone} nowMs={nowMs} />
        <SensorsTable house={house} flags={flags} timeZone={timeZone} nowMs={nowMs} />
      </div>
      <FlagsTable flags={flags} timeZone={timeZone} />
    </div>
  );
}

type SeriesOf = readonly {
  readonly quantity: (typeof HOURLY)[number];
  readonly data: { readonly hours: readonly ClimateHour[] } | undefined;
}[];

interface NowFiguresProps {
  readonly house: House;
  readonly residents: readonly ResidentBatch[];
  readonly timeZone: string | undefined;
  readonly nowMs: number;
  readonly series: SeriesOf;
}

function NowFigures({ house, residents, timeZone, nowMs, series }: NowFiguresProps) {
  const t = useMessages(climateMessages);
  const format = useFormats();
  const words = useQuantityWords();
  const now = useClimateNow(house.code);
  const phases = residents.flatMap(({ phase }) => phase ?? []);
  return (
    <dl className="climate-now rc-sheet" aria-label={t.now}>
      {series.map(({ quantity, data }) => {
        const reading = now.data?.quantities.find((each) => each.quantity === quantity);
        const value = reading ? (reading.value ?? reading.valueC) : data?.hours.at(-1)?.value;
        if (value === undefined || value === null) return null;
        const band = bandAt(phases, quantity, isNight(timeZone, nowMs));
        const out =
          data && band
            ? hoursOutside(data.hours, (atMs) => bandAt(phases, quantity, isNight(timeZone, atMs)))
            : undefined;
        const outHours = out ? out.below + out.above : 0;
        return (
          <div key={quantity}>
            <dt>{t[quantity]}</dt>
            <dd>
              <b>{words.value(quantity, value)}</b>
              {band && <small>{band.clash ? t.clash : t.asks(words.band(quantity, band))}</small>}
              {out && data && (
                <small className={outHours > 0 ? 'rc-at-risk' : undefined}>
                  {outHours > 0
                    ? `▲ ${t.outside}: ${t.outsideOf(format.integer(outHours), format.integer(data.hours.length))}`
                    : t.inRecipe}
                </small>
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}

/** All hours of the period side by side, one line per hour. */
function HoursTake({ house, timeZone, series }: { house: House; timeZone: string | undefined; series: SeriesOf }) {
  const t = useMessages(climateMessages);
  const words = useQuantityWords();
  const table = () => {
    const filled = series.filter(({ data }) => data && data.hours.length > 0);
    const at = [...new Set(filled.flatMap(({ data }) => data?.hours.map((hour) => hour.at) ?? []))].sort();
    const columns = filled.map(({ quantity, data }) => ({
      quantity,
      byHour: new Map(data?.hours.map((hour) => [hour.at, hour])),
    }));
    return {
      head: [t.when, ...columns.map(({ quantity }) => `${t[quantity]}, ${words.unit(quantity)}`)],
      rows: at.map((hour) => [
        wallClock(timeZone, Date.parse(hour)).replace('T', ' '),
        ...columns.map(({ quantity, byHour }) => {
          const found = byHour.get(hour);
          return found ? Math.round(words.shown(quantity, found.value) * 1_000) / 1_000 : '';
        }),
      ]),
    };
  };
  return <TakeTable table={table} fileName={`rootcast-climate-${house.code}`} label={t.export} print />;
}
