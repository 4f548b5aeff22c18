import { useMemo, useState, type ReactNode } from 'react';
import { Link, useNavigate } from 'react-router';
import type { Crop, House, Site, TrayFormat, Variety } from '../shared/api-types';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { Empty } from '../shared/screen-states';
import { useSiteFilter } from '../shared/site-filter';
import { lengthShown, round } from '../shared/units';
import { LIST_WORDS, setupMessages } from './setup-messages';
import type { Item, ListName } from './setup-state';

interface SetupListProps {
  readonly list: ListName;
  readonly items: Readonly<Record<ListName, readonly Item[]>>;
}

export interface Column {
  readonly head: string;
  readonly number?: boolean;
  readonly cell: (item: Item) => ReactNode;
}

export function SetupList({ list, items }: SetupListProps) {
  return <ListTable list={list} items={items} columns={useColumns(list, items)} />;
}

interface ListTableProps extends SetupListProps {
  readonly columns: readonly Column[];
  /** Beside the heading: where else this list leads. */
  readonly links?: ReactNode;
}

/** One list as a table; the code opens the item. */
export function ListTable({ list, items, columns, links }: ListTableProps) {
  const t = useMessages(setupMessages);
  const navigate = useNavigate();
  const [site] = useSiteFilter();
  const [text, setText] = useState('');
  const shown = useMemo(() => {
    const houses = new Map(items.houses.map((house) => [house['code'], house]));
    const siteOf: Partial<Record<ListName, (item: Item) => unknown>> = {
      houses: (house) => house['site'],
      sensors: (sensor) => houses.get(sensor['house'])?.['site'],
    };
    const of = siteOf[list];
    const wanted = text.trim().toLowerCase();
    return items[list]
      .filter((item) => !of || site === undefined || of(item) === site)
      .filter((item) => {
        const house = houses.get(item['house'])?.['name'];
        return [item['code'], item['name'], item['topic'], house].join(' ').toLowerCase().includes(wanted);
      });
  }, [items, list, text, site]);
  const create = (
    <Button theme="primary" onClick={() => void navigate(`/setup/${list}/~new`)}>
      {t[LIST_WORDS[list].create]}
    </Button>
  );
  if (items[list].length === 0) {
    return (
      <Empty title={t.noneYet}>
        <p>{t[LIST_WORDS[list].step]}</p>
        {create} {links}
      </Empty>
    );
  }
  return (
    <div>
      <div className="rc-row rc-spread setup-head">
        <span className="rc-row setup-heading">
          <h2 id="setup-list">{t[LIST_WORDS[list].title]}</h2>
          {links}
        </span>
        <span className="rc-row">
          <input
            type="search"
            className="plain-select"
            aria-label={t.find}
            placeholder={t.find}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
          {create}
        </span>
      </div>
      <div className="setup-scroll rc-sheet rc-cards-room" tabIndex={0} role="region" aria-labelledby="setup-list">
        <table className="rc-table rc-cards">
          <HeadRow heads={columns.map(({ head, number }) => (number ? figure(head) : head))} />
          <tbody>
            {shown.map((item) => (
              <tr key={String(item['code'])}>
                {columns.map(({ head, number, cell }, i) =>
                  i === 0 ? (
                    <th key={head} scope="row">
                      <Link className="rc-link" to={`/setup/${list}/${encodeURIComponent(String(item['code']))}`}>
                        {cell(item)}
                      </Link>
                    </th>
                  ) : (
                    <td key={head} className={number ? 'rc-number' : undefined} data-label={head}>
                      {cell(item)}
                    </td>
                  ),
                )}
              </tr>
            ))}
          </tbody>
        </table>
        {shown.length === 0 && <p className="rc-quiet setup-none">{t.noneFits}</p>}
      </div>
    </div>
  );
}

function useColumns(list: ListName, items: SetupListProps['items']): readonly Column[] {
  const t = useMessages(setupMessages);
  const format = useFormats();
  const { length } = usePreferences();
  const nameIn = (name: ListName, code: unknown) => {
    const found = items[name].find((item) => item['code'] === code);
    return String(found?.['name'] ?? code);
  };
  const countIn = (name: ListName, key: string, code: unknown) =>
    format.integer(items[name].filter((item) => item[key] === code).length);
  const size = (mm: number) => format.decimal(lengthShown(mm, length), length === 'mm' ? 0 : 2);
  const code: Column = { head: t.code, cell: (item) => String(item['code']) };
  const name: Column = { head: t.name, cell: (item) => String(item['name']) };
  const as =
    <T,>(draw: (item: T) => ReactNode) =>
    (item: Item) =>
      draw(item as unknown as T);
  switch (list) {
    case 'sites':
      return [
        code,
        name,
        { head: t.timeZone, cell: as((site: Site) => site.timeZone) },
        { head: t.shipDay, cell: as((site: Site) => t[site.shipDay ?? 'MONDAY']) },
        { head: t.houses, number: true, cell: as((site: Site) => countIn('houses', 'site', site.code)) },
      ];
    case 'houses':
      return [
        code,
        name,
        { head: t.site, cell: as((house: House) => nameIn('sites', house.site)) },
        {
          head: t.mediumSetpointC,
          number: true,
          cell: as(({ mediumSetpointC: c }: House) => (c === null || c === undefined ? '–' : format.temperature(c))),
        },
        {
          head: t.nextHouse,
          cell: as(({ next }: House) =>
            next
              ? `${nameIn('houses', next.house)}, ${next.onceReached === 'ROOT' ? t.onceRooted : t.onceCallused}`
              : '–',
          ),
        },
      ];
    case 'tray-formats':
      return [
        code,
        { head: t.cells, number: true, cell: as((tray: TrayFormat) => format.integer(tray.cells)) },
        { head: t.saleCount, number: true, cell: as((tray: TrayFormat) => format.integer(tray.saleCount)) },
        {
          head: `${t.size} (${length})`,
          number: true,
          cell: as((tray: TrayFormat) => `${size(tray.lengthMm)} × ${size(tray.widthMm)}`),
        },
      ];
    case 'crops':
      return [
        code,
        name,
        {
          head: `${t.inSum} (${t.days})`,
          number: true,
          cell: as(({ profile }: Crop) => {
            const days = profile.stages.map((stage) => stage.daysAtReference);
            return `${days.map((each) => round(each, 1)).join(' + ')} = ${round(
              days.reduce((a, b) => a + b, 0),
              1,
            )}`;
          }),
        },
        {
          head: t.survivesInSum,
          number: true,
          cell: as(({ profile }: Crop) =>
            format.percent(profile.stages.reduce((all, stage) => all * stage.survivalMean, 1)),
          ),
        },
        { head: t.holdDays, number: true, cell: as(({ profile }: Crop) => format.integer(profile.holdDays)) },
        { head: t.varieties, number: true, cell: as((crop: Crop) => countIn('varieties', 'crop', crop.code)) },
        {
          head: t.profile,
          cell: as(({ code: crop, profile }: Crop) => (
            <Link className="rc-link" to={`/setup/crops/${encodeURIComponent(crop)}/profiles`}>
              {profile.version ? t.profileVersion(profile.version) : '–'}
            </Link>
          )),
        },
      ];
    case 'sensors':
      return [code];
    case 'varieties':
      return [code, name, { head: t.crop, cell: as((variety: Variety) => nameIn('crops', variety.crop)) }];
  }
}
