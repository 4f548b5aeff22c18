import { OfferedLink } from '../people/offered-link';
import type { House } from '../shared/api-types';
import type { ClimateFlag } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { Part } from '../shared/part';
import { useSensorHealth, useSensors } from './climate-api';
import { climateMessages } from './climate-messages';
import { isSilent } from './climate-state';
import { ReadingsLinks } from './readings-links';

interface SensorsTableProps {
  readonly house: House;
  readonly flags: readonly ClimateFlag[];
  readonly timeZone: string | undefined;
  readonly nowMs: number;
}

/** The sensors of a house: when each spoke last, and how many of its readings are doubtful. */
export function SensorsTable({ house, flags, timeZone, nowMs }: SensorsTableProps) {
  const t = useMessages(climateMessages);
  const format = useFormats();
  const sensors = (useSensors().data ?? []).filter((sensor) => sensor.house === house.code);
  const health = useSensorHealth([house.code]);
  return (
    <Part title={t.sensors}>
      <ReadingsLinks />
      {sensors.length === 0 ? (
        <p className="rc-quiet">{t.noSensors}</p>
      ) : (
        <div className="climate-scroll rc-sheet rc-cards-room" tabIndex={0} role="group" aria-label={t.sensors}>
          <table className="rc-table rc-cards">
            <HeadRow heads={[t.sensor, t.quantity, t.lastReading, figure(t.doubtful), t.topic]} />
            <tbody>
              {sensors.map(({ code, quantity, topic }) => {
                const last = health.bySensor.get(code)?.lastAt ?? undefined;
                const doubtful = flags
                  .filter((flag) => flag.sensor === code)
                  .reduce((sum, { count }) => sum + count, 0);
                return (
                  <tr key={code}>
                    <th scope="row">
                      <OfferedLink to={`/setup/sensors/${encodeURIComponent(code)}`}>{code}</OfferedLink>
                    </th>
                    <td data-label={t.quantity}>{t[quantity]}</td>
                    <td data-label={t.lastReading}>
                      {last === undefined ? (
                        health.pending ? (
                          '…'
                        ) : (
                          t.noReading
                        )
                      ) : isSilent(last, nowMs, topic) ? (
                        <span className="rc-broken">✕ {t.silent(format.dateTime(last, timeZone))}</span>
                      ) : (
                        format.dateTime(last, timeZone)
                      )}
                    </td>
                    <td className={`rc-number ${doubtful > 0 ? 'rc-at-risk' : ''}`} data-label={t.doubtful}>
                      {doubtful > 0 && '▲ '}
                      {format.integer(doubtful)}
                    </td>
                    <td className="rc-quiet" data-label={t.topic}>
                      {topic ?? '–'}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
    </Part>
  );
}
