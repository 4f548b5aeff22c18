import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import type { CropRecord, HeldShare, TrackRecord } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { trackRecordMessages } from './track-record-messages';
import { byRisingLead, doubtful, quarterOf, rangesOf, type DoubtfulCrop } from './track-record-state';

/** Which crops' dates can be trusted by their own record, what would mend the others, and how often ranges held where and when. */
export function TrustRoom({ record }: { record: TrackRecord }) {
  const t = useMessages(trackRecordMessages);
  const format = useFormats();
  const crops = doubtful(record.byCrop);
  const few = record.byCrop.filter(({ verdict }) => verdict === 'too-few');
  return (
    <section aria-label={t.trust}>
      <h2>{t.trust}</h2>
      {crops.length === 0 && few.length < record.byCrop.length && <p>{t.othersHold}</p>}
      {crops.length > 0 && (
        <ul className="record-trust">
          {crops.map((crop) => (
            <Doubt key={crop.crop} crop={crop} />
          ))}
        </ul>
      )}
      {few.length > 0 && (
        <p className="record-few">
          {t['too-few']} {few.map(({ cropName, n }) => t.cropSeen(cropName, format.integer(n))).join(', ')}.
        </p>
      )}
      <details className="record-more">
        <summary>{t.made}</summary>
        <ul className="record-trust">
          {record.byCrop.map((crop) => (
            <Made key={crop.crop} crop={crop} />
          ))}
        </ul>
      </details>
      <details className="record-more">
        <summary>{t.heldWhere}</summary>
        <HeldTable record={record} />
        <p className="rc-quiet rc-small">{t.spanHelp}</p>
      </details>
    </section>
  );
}

function Doubt({ crop }: { crop: DoubtfulCrop }) {
  const t = useMessages(trackRecordMessages);
  const format = useFormats();
  const { share, low, high } = crop.held;
  const known = share !== null && low !== null && high !== null;
  return (
    <li>
      <b>{crop.cropName}</b>: {t[crop.verdict]}{' '}
      {known &&
        t.heldOf(
          format.percent(share),
          format.integer(crop.n),
          format.percent(0.8),
          t.fromTo(format.percent(low), format.percent(high)),
        )}
      {crop.mends.length > 0 && (
        <>
          {' '}
          {t.wouldHelp} {crop.mends.map((mend) => t[mend]).join(' ')}
        </>
      )}
    </li>
  );
}

/** Nine in ten is what a stage's end means, and what is believed until counts show how the people call it. */
const COMPLETE_SHARE = 0.9;

function Made({ crop: { cropName, width, calledShare } }: { crop: CropRecord }) {
  const t = useMessages(trackRecordMessages);
  const format = useFormats();
  const ranges = { unheld: t.rangesUnheld, same: t.rangesAsModel, other: t.rangesBy(format.decimal(width ?? 1, 1)) };
  return (
    <li>
      <b>{cropName}</b>: {ranges[rangesOf(width)]}{' '}
      {calledShare === COMPLETE_SHARE
        ? t.calledUnseen
        : t.called(format.percent(calledShare), format.percent(COMPLETE_SHARE))}
    </li>
  );
}

function HeldTable({ record }: { record: TrackRecord }) {
  const t = useMessages(trackRecordMessages);
  const groups: readonly { title: string; rows: readonly { name: string; held: HeldShare }[] }[] = [
    {
      title: t.lead,
      rows: byRisingLead(record.byLead).map(({ leadDays, held }) => ({ name: t.days(leadDays), held })),
    },
    { title: t.site, rows: record.bySite.map(({ siteName, held }) => ({ name: siteName, held })) },
    {
      title: t.quarterReady,
      rows: record.byQuarter.map(({ from, held }) => ({ name: t.quarter(...quarterOf(from)), held })),
    },
  ];
  return (
    <table className="rc-table record-held">
      <HeadRow heads={[t.of, ...[t.batches, t.heldOf80, t.knownWithin].map(figure)]} />
      {groups.map(({ title, rows }) => (
        <tbody key={title}>
          <tr>
            <th scope="rowgroup" colSpan={4}>
              {title}
            </th>
          </tr>
          {rows.map(({ name, held }) => (
            <HeldRow key={name} name={name} held={held} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function HeldRow({ name, held: { n, share, low, high } }: { name: string; held: HeldShare }) {
  const t = useMessages(trackRecordMessages);
  const format = useFormats();
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="rc-number">{format.integer(n)}</td>
      <td className="rc-number">{share === null ? '–' : format.percent(share)}</td>
      <td className="rc-number">
        {low === null || high === null ? '–' : t.fromTo(format.percent(low), format.percent(high))}
      </td>
    </tr>
  );
}
