import { useLiveClimate, useSensorReadings } from '../climate/climate-api';
import { periodUntil } from '../climate/climate-state';
import { useQuantityWords } from '../climate/climate-words';
import type { Sensor } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { unitName } from '../shared/reading-units';
import { Failed, Loading } from '../shared/screen-states';
import { setupMessages } from './setup-messages';

const SHOWN = 12;

/** What a sensor said of late, as it came and as it counts: whether topic, unit and offset are right shows here. */
export function SensorReadings({ sensor, timeZone }: { sensor: Sensor; timeZone: string | undefined }) {
  const t = useMessages(setupMessages);
  const format = useFormats();
  const words = useQuantityWords();
  useLiveClimate();
  const readings = useSensorReadings(sensor, periodUntil(useNow(), 1).from);
  const body = () => {
    if (readings.isPending) return <Loading />;
    if (!readings.data) return <Failed failure={readings.error} retry={() => void readings.refetch()} />;
    const shown = readings.data.readings.slice(-SHOWN).reverse();
    if (shown.length === 0) return <p className="rc-quiet">{t.noReadings}</p>;
    return (
      <table className="rc-table" aria-labelledby="sensor-readings">
        <HeadRow heads={[t.when, figure(t.asSent), figure(t.counts)]} />
        <tbody>
          {shown.map(({ at, sent, unit, value }) => (
            <tr key={at}>
              <th scope="row">{format.dateTime(at, timeZone)}</th>
              <td className="rc-number">{format.withUnit(String(sent), unitName(unit))}</td>
              <td className="rc-number">{words.value(sensor.quantity, value)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    );
  };
  return (
    <section className="sensor-readings" aria-labelledby="sensor-readings">
      <h2 id="sensor-readings">{t.lastReadings}</h2>
      {body()}
    </section>
  );
}
