import type { ReactNode } from 'react';
import { useLiveClimate, useSensorHealth } from '../climate/climate-api';
import { climateMessages } from '../climate/climate-messages';
import { isSilent } from '../climate/climate-state';
import { useQuantityWords } from '../climate/climate-words';
import { ReadingsLinks } from '../climate/readings-links';
import type { House, Site } from '../shared/api-types';
import type { Sensor } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { unitName } from '../shared/reading-units';
import { ListTable, type Column } from './setup-list';
import { setupMessages } from './setup-messages';
import { signed, type Item, type ListName } from './setup-state';

/** The sensor map: which topic is which sensor, where it hangs, what its numbers mean, and when it was last seen. */
export function SensorList({ items }: { items: Readonly<Record<ListName, readonly Item[]>> }) {
  const t = useMessages(setupMessages);
  const columns = useSensorColumns(items);
  return (
    <>
      {columns.failed && (
        <p className="rc-warning" role="status">
          ▲ {t.lastSeenFailed}
        </p>
      )}
      <ListTable list="sensors" items={items} columns={columns.columns} links={<ReadingsLinks />} />
    </>
  );
}

function useSensorColumns(items: Readonly<Record<ListName, readonly Item[]>>): {
  readonly columns: readonly Column[];
  readonly failed: boolean;
} {
  const t = useMessages(setupMessages);
  const climate = useMessages(climateMessages);
  const format = useFormats();
  const words = useQuantityWords();
  const nowMs = useNow();
  useLiveClimate();
  const sensors = items.sensors as unknown as readonly Sensor[];
  const houses = new Map((items.houses as unknown as readonly House[]).map((house) => [house.code, house]));
  const zones = new Map((items.sites as unknown as readonly Site[]).map((site) => [site.code, site.timeZone]));
  const health = useSensorHealth([...new Set(sensors.map(({ house }) => house))]);
  const as = (read: (sensor: Sensor) => ReactNode) => (item: Item) => read(item as unknown as Sensor);
  const tight = (text: string) => <span className="sensor-tight">{text}</span>;
  const columns = [
    { head: t.code, cell: as(({ code }) => code) },
    { head: t.house, cell: as(({ house }) => houses.get(house)?.name ?? house) },
    { head: t.quantity, cell: as(({ quantity }) => climate[quantity]) },
    { head: t.unit, cell: as(({ unit }) => unitName(unit)) },
    {
      head: t.offset,
      number: true,
      cell: as(({ offset, unit }) => tight(offset ? format.withUnit(signed(offset), unitName(unit)) : '–')),
    },
    { head: t.topic, cell: as(({ topic }) => <span className="sensor-topic">{topic ?? '–'}</span>) },
    {
      head: t.lastSeen,
      cell: as(({ code, house, topic }) => {
        const found = health.bySensor.get(code);
        if (!found) return health.pending ? '…' : '–';
        if (found.lastAt === null) return t.never;
        const when = format.dateTime(found.lastAt, zones.get(houses.get(house)?.site ?? ''));
        return isSilent(found.lastAt, nowMs, topic) ? (
          <span className="rc-broken">✕ {climate.silent(when)}</span>
        ) : (
          tight(when)
        );
      }),
    },
    {
      head: t.lastValue,
      number: true,
      cell: as(({ code, quantity }) => {
        const value = health.bySensor.get(code)?.lastValue ?? null;
        return value === null ? '–' : tight(words.value(quantity, value));
      }),
    },
  ];
  return { columns, failed: health.failed };
}
