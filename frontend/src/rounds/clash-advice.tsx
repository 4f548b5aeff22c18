import { Link } from 'react-router';
import { climateMessages } from '../climate/climate-messages';
import { useQuantityWords } from '../climate/climate-words';
import type { Site } from '../shared/api-types';
import type { ClimateQuantity } from '../shared/climate-types';
import type { Schemas } from '../shared/contract';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useHouses } from '../shared/setup-lists';
import { clashMessages } from './clash-messages';
import type { Clashes } from './rounds-state';

interface ClashAdviceProps extends Clashes {
  readonly house: string;
  readonly site: Site;
}

type Move = Clashes['move'][number];

/** What no climate of the house suits, and what can be done: a move, a wait, or what would have to give way. */
export function ClashAdvice({ quantities, move, house, site }: ClashAdviceProps) {
  const t = useMessages(clashMessages);
  const spans = useSpanWords();
  return (
    <div className="rc-warning">
      <p>▲ {t.clash(quantities.map(spans.name).join(', '))}</p>
      <ul>
        {move.map((each) => (
          <li key={each.batch}>
            <Way move={each} house={house} site={site} spans={spans} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function Way({ move, house, site, spans }: { move: Move; house: string; site: Site; spans: SpanWords }) {
  const t = useMessages(clashMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const name = (code: string) => houses.find((each) => each.code === code)?.name ?? code;
  const { batch, crop, fits, later, nearest } = move;
  if (fits.length > 0) return t.moveTo(batch, fits.map(name).join(', '));
  if (later.length > 0 || !nearest) {
    const when = later.map(({ house: to, until, product }) =>
      t.after(name(to), format.dateTime(until, site.timeZone), product),
    );
    return t.moveLater(batch, when.join(', '));
  }
  const gaps = nearest.gaps.map(({ quantity, asks, suits }) =>
    t.gap(spans.name(quantity), spans.span(quantity, asks), spans.span(quantity, suits)),
  );
  return (
    <>
      {nearest.house === house
        ? t.stays(batch, gaps.join('; '))
        : t.nearest(batch, name(nearest.house), gaps.join('; '))}{' '}
      <Link className="rc-link" to={`/setup/crops/${encodeURIComponent(crop)}/recipe`}>
        {t.toRecipe}
      </Link>{' '}
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
