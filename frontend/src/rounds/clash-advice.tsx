import { Fragment } from 'react';
import { Link } from 'react-router';
import { climateMessages } from '../climate/climate-messages';
import { useQuantityWords } from '../climate/climate-words';
import type { Site } from '../shared/api-types';
import type { ClimateQuantity } from '../shared/climate-types';
import type { Schemas } from '../shared/contract';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useCrops, useHouseNames } from '../shared/setup-lists';
import { clashMessages } from './clash-messages';
import { togetherByWay, type Clashes, type SameWay } from './rounds-state';

interface ClashAdviceProps extends Clashes {
  readonly house: string;
  readonly site: Site;
}

/** What no climate of the house suits, and what can be done: a move, a wait, or what would have to give way. */
export function ClashAdvice({ quantities, move, house, site }: ClashAdviceProps) {
  const t = useMessages(clashMessages);
  const spans = useSpanWords();
  return (
    <div className="rc-warning">
      <p>▲ {t.clash(quantities.map(spans.name).join(', '))}</p>
      <ul>
        {togetherByWay(move).map((each) => (
          <li key={each.batches.join()}>
            <Way same={each} house={house} site={site} spans={spans} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function Way({ same, house, site, spans }: { same: SameWay; house: string; site: Site; spans: SpanWords }) {
  const t = useMessages(clashMessages);
  const format = useFormats();
  const houseNames = useHouseNames();
  const grown = useCrops().data;
  const name = (code: string) => houseNames.get(code) ?? code;
  const cropName = (code: string) => grown?.find((each) => each.code === code)?.name ?? code;
  const { fits, later, nearest } = same.way;
  const n = same.batches.length;
  const batches = same.batches.join(', ');
  if (fits.length > 0) return t.moveTo(batches, format.anyOf(fits.map(name)));
  if (later.length > 0 || !nearest) {
    const when = later.map(({ house: to, until, product }) =>
      t.after(name(to), format.dateTime(until, site.timeZone), product),
    );
    return t.moveLater(n, batches, format.anyOf(when));
  }
  const gaps = nearest.gaps.map(({ quantity, asks, suits }) =>
    t.gap(n, spans.name(quantity), spans.span(quantity, asks), spans.span(quantity, suits)),
  );
  return (
    <>
      {nearest.house === house
        ? t.stays(n, batches, gaps.join('; '))
        : t.nearest(n, batches, name(nearest.house), gaps.join('; '))}{' '}
      {same.crops.map((crop) => (
        <Fragment key={crop}>
          <Link className="rc-link" to={`/setup/crops/${encodeURIComponent(crop)}/recipe`}>
            {t.toRecipe(cropName(crop))}
          </Link>{' '}
        </Fragment>
      ))}
      <Link className="rc-link" to={`/climate/${encodeURIComponent(nearest.house)}`}>
        {t.toHouse(name(nearest.house))}
      </Link>
    </>
  );
}

interface SpanWords {
  readonly name: (quantity: string) => string;
  readonly span: (quantity: string, span: Schemas['SpanView']) => string;
}

/** What recipes ask for is told in the words of what is measured, by day and by night. */
const SPOKEN_AS: Readonly<Record<string, ClimateQuantity>> = {
  'day-air-temperature': 'air-temperature',
  'night-air-temperature': 'air-temperature',
};

function useSpanWords(): SpanWords {
  const t = useMessages(clashMessages);
  const climate = useMessages(climateMessages);
  const words = useQuantityWords();
  return {
    name: (quantity) => {
      const own = quantity === 'day-air-temperature' || quantity === 'night-air-temperature' ? t[quantity] : undefined;
      const said = own ?? (quantity in climate ? climate[quantity as ClimateQuantity] : quantity);
      return said.charAt(0).toLowerCase() + said.slice(1);
    },
    span: (quantity, { least, most, mist }) =>
      mist.length > 0
        ? mist.map((regime) => climate[regime]).join(', ')
        : words.band(SPOKEN_AS[quantity] ?? (quantity as ClimateQuantity), { least, most }),
  };
}
