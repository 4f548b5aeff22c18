import { Link } from 'react-router';
import type { House } from '../shared/api-types';
import type { ClimateHour, HouseGlance as Glance } from '../shared/climate-types';
import { useClosedWords } from '../shared/closed-houses';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import type { ResidentBatch } from './climate-api';
import { climateMessages } from './climate-messages';
import { useSensors } from './climate-api';
import { bandAt, GLANCE, hoursOutside, isNight, isSilent, trendOf, type CommonBand, type Trend } from './climate-state';
import { useQuantityWords } from './climate-words';

interface HouseGlanceProps {
  readonly house: House;
  readonly siteName: string | undefined;
  readonly timeZone: string | undefined;
  readonly residents: readonly ResidentBatch[];
  /** Undefined while it is on its way. */
  readonly glance: Glance | undefined;
  readonly nowMs: number;
}

const ARROW: Readonly<Record<Trend, string>> = { rising: '↗', falling: '↘', steady: '→', unknown: '' };

/** One house of the overview. */
export function HouseGlance({ house, siteName, timeZone, residents, glance, nowMs }: HouseGlanceProps) {
  const t = useMessages(climateMessages);
  const format = useFormats();
  const closed = useClosedWords()(house.code, 'short');
  const phases = residents.flatMap(({ phase }) => phase ?? []);
  return (
    <tr>
      <th scope="row">
        <Link className="rc-link" to={`/climate/${encodeURIComponent(house.code)}`}>
          {house.name}
        </Link>
        <small>
          {siteName !== undefined && <>{siteName}, </>}
          {residents.length === 0 ? t.empty : t.batchesN(format.integer(residents.length))}
        </small>
        {closed !== undefined && <small className="rc-broken">✕ {closed}</small>}
      </th>
      {GLANCE.map((quantity) => {
        const band = (atMs: number) => bandAt(phases, quantity, isNight(timeZone, atMs));
        return (
          <td key={quantity} data-label={t[`short-${quantity}`]}>
            <Figure
              quantity={quantity}
              now={glance}
              hours={glance?.series.find((each) => each.quantity === quantity)?.hours}
              bandOfHour={band}
              nowMs={nowMs}
              timeZone={timeZone}
            />
          </td>
        );
      })}
    </tr>
  );
}

interface FigureProps {
  readonly quantity: (typeof GLANCE)[number];
  readonly now: Pick<Glance, 'quantities'> | undefined;
  readonly hours: readonly ClimateHour[] | undefined;
  readonly bandOfHour: (atMs: number) => CommonBand | undefined;
  readonly nowMs: number;
  readonly timeZone: string | undefined;
}

function Figure({ quantity, now, hours, bandOfHour, nowMs, timeZone }: FigureProps) {
  const t = useMessages(climateMessages);
  const format = useFormats();
  const words = useQuantityWords();
  const sensors = useSensors().data ?? [];
  if (!hours && !now) return <span className="rc-quiet">…</span>;
  // What is derived has no reading of its own; its last hour stands for now.
  const reading = now?.quantities.find((each) => each.quantity === quantity);
  const topic = sensors.find(({ code }) => code === reading?.sensor)?.topic;
  const value = reading ? (reading.value ?? reading.valueC ?? undefined) : hours?.at(-1)?.value;
  if (value === undefined || value === null) return <span className="rc-quiet">{t.noReading}</span>;
  const band = bandOfHour(nowMs);
  const outside = hours ? hoursOutside(hours, bandOfHour) : undefined;
  const trend = hours ? trendOf(hours, quantity) : 'unknown';
  return (
    <>
      <span className="glance-now">
        {words.value(quantity, value)}{' '}
        <span aria-hidden="true" className="glance-way">
          {ARROW[trend]}
        </span>
        <span className="rc-hidden">{t[trend]}</span>
      </span>
      {reading && isSilent(reading.at, nowMs, topic) && (
        <span className="rc-broken">✕ {t.silent(format.time(reading.at, timeZone))}</span>
      )}
      {outside && band && (outside.below > 0 || outside.above > 0) ? (
        <span className="rc-at-risk">
          ▲{' '}
          {[outside.below > 0 && t.below(String(outside.below)), outside.above > 0 && t.above(String(outside.above))]
            .filter(Boolean)
            .join(', ')}
        </span>
      ) : (
        <span className="rc-quiet">{band ? t.inRecipe : t.noRecipe}</span>
      )}
      {band && <small>{band.clash ? `▲ ${t.clash}` : words.band(quantity, band)}</small>}
    </>
  );
}
