import { Link, useLocation } from 'react-router';
import { useSensors } from '../climate/climate-api';
import { peopleMessages } from '../people/people-messages';
import { useMay } from '../people/signed-in';
import { useMessages } from '../shared/messages';
import { useCrops, useHouses, useSites, useTrayFormats, useVarieties } from '../shared/setup-lists';
import { LIST_WORDS, setupMessages } from './setup-messages';
import { LISTS } from './setup-state';

const ACCESS = ['people', 'keys', 'audit', 'changes'] as const;

/** The lists of Setup, and for owners who may use them. */
export function SetupNav({ current }: { current: string }) {
  const t = useMessages(setupMessages);
  const access = useMessages(peopleMessages);
  const { search } = useLocation();
  const mayGive = useMay('people');
  const counts = {
    sites: useSites().data?.length,
    houses: useHouses().data?.length,
    'tray-formats': useTrayFormats().data?.length,
    crops: useCrops().data?.length,
    varieties: useVarieties().data?.length,
    sensors: useSensors().data?.length,
  };
  return (
    <nav aria-label={t.lists} className="setup-lists">
      {LISTS.map((name) => (
        <Link key={name} to={`/setup/${name}${search}`} aria-current={name === current ? 'page' : undefined}>
          {t[LIST_WORDS[name].title]} <span className="rc-quiet">{counts[name]}</span>
        </Link>
      ))}
      {mayGive && (
        <>
          <hr />
          {ACCESS.map((name) => (
            <Link key={name} to={`/setup/${name}${search}`} aria-current={name === current ? 'page' : undefined}>
              {access[name]}
            </Link>
          ))}
        </>
      )}
    </nav>
  );
}
