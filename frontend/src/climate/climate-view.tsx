import { Link } from 'react-router';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { useSiteFilter } from '../shared/site-filter';
import { useGlances, useLiveClimate, useResidentBatches } from './climate-api';
import { climateMessages } from './climate-messages';
import { GLANCE, periodUntil } from './climate-state';
import { HouseGlance } from './house-glance';
import { ReadingsLinks } from './readings-links';
import './climate.css';

/** Every house at a glance: how it is now, and how long it has been outside its recipe. */
export function ClimateView() {
  const t = useMessages(climateMessages);
  useScreenTitle(t.title);
  useLiveClimate();
  const houses = useHouses();
  const sites = useSites().data ?? [];
  const [site] = useSiteFilter();
  const nowMs = useNow();
  const residents = useResidentBatches(site, nowMs);
  const glances = useGlances(site, GLANCE, periodUntil(nowMs, 1));
  if (houses.isPending) return <Loading />;
  if (!houses.data) return <Failed failure={houses.error} retry={() => void houses.refetch()} />;
  const shown = houses.data.filter((house) => site === undefined || house.site === site);
  if (shown.length === 0) {
    return (
      <Empty title={t.noHouses}>
        <p>{t.noHousesHelp}</p>
        <Link className="rc-link" to="/setup/houses">
          {t.toSetup}
        </Link>
      </Empty>
    );
  }
  const zoneOf = (code: string) => sites.find((each) => each.code === code)?.timeZone;
  const siteName = (code: string) => sites.find((each) => each.code === code)?.name ?? code;
  return (
    <div className="rc-screen climate">
      <p className="rc-quiet climate-legend">{t.legend}</p>
      <ReadingsLinks />
      <div className="glance-scroll rc-sheet" tabIndex={0} role="group" aria-label={t.houses}>
        <table className="rc-table glance">
          <thead>
            <tr>
              <th scope="col">{t.house}</th>
              {GLANCE.map((quantity) => (
                <th key={quantity} scope="col" title={t[quantity]}>
                  {t[`short-${quantity}`]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((house) => (
              <HouseGlance
                key={house.code}
                house={house}
                siteName={site === undefined ? siteName(house.site) : undefined}
                timeZone={zoneOf(house.site)}
                residents={residents.get(house.code) ?? []}
                glance={glances.byHouse.get(house.code)}
                nowMs={nowMs}
              />
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
