import { Link } from 'react-router';
import { useFormats } from '../shared/formats';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { Part } from '../shared/part';
import type { ResidentBatch } from './climate-api';
import { climateMessages } from './climate-messages';
import { bandAt, GLANCE } from './climate-state';
import { useQuantityWords } from './climate-words';

/** Says where no setting suits every batch of a house; nothing when one does. */
export function ClashNote({ residents, site }: { residents: readonly ResidentBatch[]; site: string }) {
  const t = useMessages(climateMessages);
  const phases = residents.flatMap(({ phase }) => phase ?? []);
  const clashing = GLANCE.filter((quantity) => bandAt(phases, quantity, false)?.clash).map((quantity) => t[quantity]);
  const mists = new Set(phases.map(({ mist }) => mist));
  const clashes = [...clashing, ...(mists.has('RUNNING') && mists.has('NONE') ? [t.mist] : [])];
  if (clashes.length === 0) return null;
  return (
    <p className="rc-warning">
      ▲ <strong>{t.clashTitle}.</strong> {t.clashHelp(clashes.join(', '))}{' '}
      <Link className="rc-link" to={`/rounds?site=${encodeURIComponent(site)}`}>
        {t.toRounds}
      </Link>
    </p>
  );
}

/** The batches of a house and what the phase of each asks for. */
export function ResidentBatchesTable({ residents }: { residents: readonly ResidentBatch[] }) {
  const t = useMessages(climateMessages);
  const format = useFormats();
  const words = useQuantityWords();
  if (residents.length === 0) return null;
  return (
    <Part title={t.residentBatches}>
      <div className="climate-scroll rc-sheet" tabIndex={0} role="group" aria-label={t.residentBatches}>
        <table className="rc-table">
          <HeadRow heads={[t.batches, t.phase, t['medium-temperature'], t['relative-humidity'], t.mist, t.nitrogen]} />
          <tbody>
            {residents.map(({ batch, phase }) => (
              <tr key={batch.id}>
                <th scope="row">
                  <Link className="rc-link" to={`/batches/${encodeURIComponent(batch.id)}`}>
                    {batch.id}
                  </Link>{' '}
                  <span className="rc-quiet">{batch.varietyName}</span>
                </th>
                <td>{phase ? t[phase.phase] : '…'}</td>
                <td>{phase && words.band('medium-temperature', phase.mediumC)}</td>
                <td>{phase && words.band('relative-humidity', phase.humidityPercent)}</td>
                <td>{phase && t[phase.mist]}</td>
                <td>
                  {phase &&
                    [phase.nitrogenPpm.least, phase.nitrogenPpm.most]
                      .flatMap((end) => (end === null ? [] : [format.integer(end)]))
                      .join(' – ')}
                  {phase && ' ppm'}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Part>
  );
}
