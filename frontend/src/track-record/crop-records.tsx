import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import type { Coverage, TrackRecord } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { TakeTable } from '../shared/take-table';
import { trackRecordMessages } from './track-record-messages';
import { leanOf } from './track-record-state';

const STATED = ['0.5', '0.8', '0.9'] as const;

/** The score crop by crop; a crop's name narrows the screen to it. */
export function CropRecords({ record, pick }: { record: TrackRecord; pick: (crop: string) => void }) {
  const t = useMessages(trackRecordMessages);
  const format = useFormats();
  const share = (coverage: Coverage, stated: (typeof STATED)[number]) => {
    const held = coverage[stated];
    return typeof held === 'number' ? format.percent(held) : '–';
  };
  // Ready later than predicted is predicted too early.
  const bias = (days: number) => {
    const said = format.decimal(Math.abs(days), 1);
    return { later: t.tooEarly(said), earlier: t.tooLate(said), level: t.neither }[leanOf(days)];
  };
  const head = [t.crop, t.batches, t.colOff, t.colLean, ...STATED.map((s) => t.colHeld(format.percent(Number(s))))];
  const table = () => ({
    head,
    rows: record.byCrop.map((crop) => [
      crop.cropName,
      crop.n,
      crop.maeDays ?? '',
      crop.biasDays ?? '',
      ...STATED.map((stated) => crop.coverage[stated] ?? ''),
    ]),
  });
  return (
    <section aria-label={t.byCrop}>
      <div className="rc-row rc-spread">
        <h2>{t.byCrop}</h2>
        <TakeTable table={table} fileName={`rootcast-track-record-${record.leadDays}d`} label={t.byCrop} print />
      </div>
      <div className="record-scroll rc-sheet rc-cards-room" tabIndex={0} role="group" aria-label={t.byCrop}>
        <table className="rc-table rc-cards">
          <HeadRow heads={head.map((name, i) => (i > 0 ? figure(name) : name))} />
          <tbody>
            {record.byCrop.map((crop) => (
              <tr key={crop.crop}>
                <th scope="row">
                  <button type="button" className="rc-link" onClick={() => pick(crop.crop)}>
                    {crop.cropName}
                  </button>
                </th>
                <td className="rc-number" data-label={t.batches}>
                  {format.integer(crop.n)}
                </td>
                <td className="rc-number" data-label={t.colOff}>
                  {crop.maeDays === null ? '–' : format.decimal(crop.maeDays, 1)}
                </td>
                <td className="rc-number" data-label={t.colLean}>
                  {crop.biasDays === null ? '–' : bias(crop.biasDays)}
                </td>
                {STATED.map((stated) => (
                  <td key={stated} className="rc-number" data-label={t.colHeld(format.percent(Number(stated)))}>
                    {share(crop.coverage, stated)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
