import { Link, useParams } from 'react-router';
import { useSensors } from '../climate/climate-api';
import type { Sensor } from '../shared/climate-types';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useCrops, useHouses, useSites, useTrayFormats, useVarieties } from '../shared/setup-lists';
import { SensorList } from './sensor-list';
import { SensorReadings } from './sensor-readings';
import { SetupList } from './setup-list';
import { LIST_WORDS, setupMessages } from './setup-messages';
import { SetupNav } from './setup-nav';
import { byList, firstSteps, isListName, STEPS, type Item, type ListName } from './setup-state';
import './setup-view.css';

const SetupForm = later(async () => (await import('./setup-form')).SetupForm);

/** What the business is made of: sites, houses, tray formats, crops with their profiles, varieties. */
export function SetupView() {
  const t = useMessages(setupMessages);
  useScreenTitle(t.title);
  const { list, code } = useParams();
  const queries = {
    sites: useSites(),
    houses: useHouses(),
    'tray-formats': useTrayFormats(),
    crops: useCrops(),
    varieties: useVarieties(),
    sensors: useSensors(),
  };
  const all = Object.values(queries);
  const failed = all.find((query) => query.isError && !query.data);
  if (failed) return <Failed failure={failed.error} retry={() => all.forEach((query) => void query.refetch())} />;
  if (all.some((query) => query.data === undefined)) return <Loading />;
  if (list !== undefined && !isListName(list)) return <Empty title={t.gone(list)} />;

  const items = byList((name) => (queries[name].data ?? []) as unknown as readonly Item[]);
  const counts = byList((name) => items[name].length);
  const current = list ?? firstSteps(counts).find(({ next }) => next)?.step ?? 'sites';
  const sensor = current === 'sensors' ? queries.sensors.data?.find((each) => each.code === code) : undefined;
  const siteOf = ({ house }: Sensor) => {
    const site = queries.houses.data?.find((each) => each.code === house)?.site;
    return queries.sites.data?.find((each) => each.code === site);
  };
  return (
    <div className="setup">
      <SetupNav current={current} />
      <div className="setup-content">
        {STEPS.some((name) => counts[name] === 0) && <FirstSteps counts={counts} />}
        {code === undefined && current === 'sensors' ? (
          <SensorList items={items} />
        ) : code === undefined ? (
          <SetupList key={current} list={current} items={items} />
        ) : (
          <SetupForm
            key={`${current} ${code}`}
            list={current}
            code={code === '~new' ? undefined : code}
            items={items}
          />
        )}
        {sensor && <SensorReadings key={sensor.code} sensor={sensor} timeZone={siteOf(sensor)?.timeZone} />}
      </div>
    </div>
  );
}

/** The order for a first run; gone once every list holds something. */
function FirstSteps({ counts }: { counts: Readonly<Record<ListName, number>> }) {
  const t = useMessages(setupMessages);
  return (
    <section className="rc-sheet setup-first" aria-labelledby="setup-first">
      <h2 id="setup-first">{t.firstTitle}</h2>
      <p className="rc-quiet">{t.firstHelp}</p>
      <p>
        <Link className="rc-link" to="/setup/first-day">
          {t.firstDay}
        </Link>
      </p>
      <ol>
        {firstSteps(counts).map(({ step, done, next }) => (
          <li key={step} aria-current={next ? 'step' : undefined}>
            <span className="setup-mark">{done ? '✓' : next ? '▸' : ''}</span>
            {next ? (
              <Link className="rc-link" to={`/setup/${step}/~new`}>
                {t[LIST_WORDS[step].step]}
              </Link>
            ) : (
              <span className={done ? '' : 'rc-quiet'}>{t[LIST_WORDS[step].step]}</span>
            )}
            {done && <span className="rc-hidden"> {t.done}</span>}
          </li>
        ))}
        <li>
          <span className="setup-mark" />
          <span className="rc-quiet">{t.stepStick}</span>
        </li>
      </ol>
    </section>
  );
}
