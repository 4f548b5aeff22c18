import { useSearchParams } from 'react-router';
import { useMay } from '../people/signed-in';
import type { Site } from '../shared/api-types';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { useOutbox } from '../outbox/outbox';
import { useNow } from '../shared/now';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useSites } from '../shared/setup-lists';
import { useSiteFilter } from '../shared/site-filter';
import { dateIn, isDate } from '../shared/weeks';
import { RefusedChecks } from './refused-checks';
import { RoundHouse } from './round-house';
import { useRound, useWalk } from './rounds-api';
import { roundsMessages } from './rounds-messages';
import { asPressed, byHouse, NO_ROUND, progressOf } from './rounds-state';
import { WalkOrder } from './walk-order';
import '../floor/floor.css';
import './rounds.css';

const DateInput = later(async () => (await import('../shared/date-input')).DateInput);

/** What each house and batch of a site needs today, in the order in which people walk. */
export function RoundsView() {
  const t = useMessages(roundsMessages);
  useScreenTitle(t.title);
  const sites = useSites();
  const [chosen, choose] = useSiteFilter();
  if (sites.isPending) return <Loading />;
  if (!sites.data) return <Failed failure={sites.error} retry={() => void sites.refetch()} />;
  const site = sites.data.length === 1 ? sites.data[0] : sites.data.find(({ code }) => code === chosen);
  if (site) return <Round key={site.code} site={site} />;
  return (
    <div className="floor">
      <h2>{t.whichSite}</h2>
      <div className="choices tall">
        {sites.data.map(({ code, name }) => (
          <button key={code} type="button" className="floor-button" onClick={() => choose(code)}>
            {name}
          </button>
        ))}
      </div>
    </div>
  );
}

function Round({ site }: { site: Site }) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const [params, setParams] = useSearchParams();
  const today = dateIn(site.timeZone, useNow());
  const named = params.get('on') ?? '';
  const on = isDate(named) ? named : today;
  const only = params.get('house') ?? undefined;
  const round = useRound(site.code, on);
  const walk = useWalk(site.code);
  const maySetUp = useMay('set-up', site.code);
  const put = (name: string, value: string | undefined) =>
    setParams((before) => {
      const after = new URLSearchParams(before);
      if (value) after.set(name, value);
      else after.delete(name);
      return after;
    });
  const pressed = asPressed(round.data ?? NO_ROUND, useOutbox(), on);
  const houses = byHouse(pressed, walk.data ?? []);
  const shown = houses.filter(({ house }) => only === undefined || house === only);
  // Where the walk stands: on a phone its stop is open, the others are folded.
  const next = shown.find(({ open }) => open.length > 0);
  const { closed, all } = progressOf(shown.flatMap(({ open, closed: past }) => [...open, ...past]));
  const body = () => {
    if (round.isPending) return <Loading />;
    if (!round.data) return <Failed failure={round.error} retry={() => void round.refetch()} />;
    if (all === 0) {
      return (
        <Empty title={t.nothing}>
          <p>{t.nothingHelp}</p>
        </Empty>
      );
    }
    return (
      <>
        {closed === all && <p className="round-all-done">✓ {t.allDone}</p>}
        {shown.map((house) => (
          <RoundHouse key={house.house} house={house} site={site} on={on} next={house === next} />
        ))}
      </>
    );
  };
  return (
    <div className="floor rounds">
      <RefusedChecks site={site} />
      <div className="round-head rc-no-print">
        <div className="round-day">
          <DateInput label={t.day} value={on} onValue={(date) => put('on', date === today ? undefined : date)} />
        </div>
        <label>
          <span>{t.oneHouse}</span>
          <select className="rc-select" value={only ?? ''} onChange={(event) => put('house', event.target.value)}>
            <option value="">{t.allHouses}</option>
            {(walk.data ?? []).map(({ house, name }) => (
              <option key={house} value={house}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <Button theme="tertiary" onClick={() => print()}>
          {t.print}
        </Button>
      </div>
      <p className="round-paper-head">{t.printedOn(site.name, format.date(on))}</p>
      {all > 0 && (
        <div className="round-progress">
          <span role="status">{t.progress(format.integer(closed), format.integer(all))}</span>
          <span className="round-bar" aria-hidden="true">
            <span style={{ width: `${(100 * closed) / all}%` }} />
          </span>
        </div>
      )}
      {body()}
      {walk.data && walk.data.length > 1 && maySetUp && <WalkOrder site={site.code} walk={walk.data} />}
    </div>
  );
}
