import { useSearchParams } from 'react-router';
import { ClosedHouseNote } from '../shared/closed-houses';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { TakeTable } from '../shared/take-table';
import { WarningItem } from './warning-item';
import { useWarnings } from './warnings-api';
import { warningsMessages } from './warnings-messages';
import { byHouse, filterFrom, paramsFor, shownWarnings, type WarningFilter } from './warnings-state';
import './warnings.css';

/** What is wrong in the houses now, and the log of what was. */
export function WarningsView() {
  const t = useMessages(warningsMessages);
  useScreenTitle(t.title);
  const format = useFormats();
  const [params, setParams] = useSearchParams();
  const filter = filterFrom(params);
  const change = (part: Partial<WarningFilter>) =>
    setParams((before) => paramsFor({ ...filterFrom(before), ...part }, before));
  const houses = (useHouses().data ?? []).filter(({ site }) => filter.site === undefined || site === filter.site);
  const sites = useSites().data ?? [];
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  const warnings = useWarnings({ site: filter.site, house: filter.house });
  const shown = shownWarnings(warnings.data ?? [], filter.scope);
  const table = () => ({
    head: [t.kind, t.house, t.colBatch, t.state, t.begin, t.end, t.worstHead, t.limitHead, t.unit],
    rows: shown.map((warning) => [
      t[warning.kind],
      houseName(warning.house),
      warning.batch ?? '',
      t[warning.state],
      warning.since,
      warning.until ?? '',
      warning.worst ?? '',
      warning.limit ?? '',
      warning.unit ?? '',
    ]),
  });
  const body = () => {
    if (warnings.isPending) return <Loading />;
    if (!warnings.data) return <Failed failure={warnings.error} retry={() => void warnings.refetch()} />;
    if (shown.length === 0) {
      return (
        <Empty title={`✓ ${t.none}`}>
          <p>{t.noneHelp}</p>
        </Empty>
      );
    }
    return (
      <>
        {byHouse(shown).map((group) => (
          <section key={group.house} className="warnings-house" aria-label={houseName(group.house)}>
            <h2>
              {houseName(group.house)} <small>{t.ofHouse(format.integer(group.warnings.length))}</small>
            </h2>
            <ClosedHouseNote house={group.house} />
            <ul className="warnings">
              {group.warnings.map((warning) => (
                <WarningItem
                  key={warning.id}
                  warning={warning}
                  houseName={houseName(warning.house)}
                  site={sites.find(({ code }) => code === warning.site)}
                />
              ))}
            </ul>
          </section>
        ))}
      </>
    );
  };
  return (
    <div className="rc-screen">
      <div className="rc-row rc-spread rc-no-print">
        <form className="rc-row" role="search" aria-label={t.filters} onSubmit={(event) => event.preventDefault()}>
          <label className="rc-row">
            <span className="rc-quiet">{t.scope}</span>
            <select
              className="rc-select"
              value={filter.scope}
              onChange={(event) => change({ scope: event.target.value === 'all' ? 'all' : 'open' })}
            >
              <option value="open">{t.open}</option>
              <option value="all">{t.all}</option>
            </select>
          </label>
          <label className="rc-row">
            <span className="rc-quiet">{t.house}</span>
            <select
              className="rc-select"
              value={filter.house ?? ''}
              onChange={(event) => change({ house: event.target.value || undefined })}
            >
              <option value="">{t.allHouses}</option>
              {houses.map(({ code, name }) => (
                <option key={code} value={code}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <span role="status">{warnings.data && t.rows(format.integer(shown.length))}</span>
        </form>
        {shown.length > 0 && <TakeTable table={table} fileName="rootcast-warnings" label={t.title} print />}
      </div>
      {warnings.isError && warnings.data && (
        <p className="rc-warning" role="status">
          ▲ {t.stale(format.time(new Date(warnings.dataUpdatedAt).toISOString()))}
        </p>
      )}
      {body()}
    </div>
  );
}
