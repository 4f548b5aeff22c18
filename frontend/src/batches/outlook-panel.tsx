import { OfferedLink } from '../people/offered-link';
import type { BatchView, Instant, Quantiles } from '../shared/api-types';
import { useDevelopment } from '../shared/batch-queries';
import { useFormats } from '../shared/formats';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { useHouses } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { Part } from '../shared/part';
import { reasonMessages } from './reason-messages';
import { storyMessages } from './story-messages';

/** What is expected of a batch, in dates of the site and in words, and what that rests on. */
export function OutlookPanel({
  batch,
  timeZone,
  asOf,
}: {
  batch: BatchView;
  timeZone: string | undefined;
  asOf: string | undefined;
}) {
  const t = useMessages(storyMessages);
  const reason = useMessages(reasonMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const seen = new Map(useDevelopment(batch.id, asOf).data?.stages.map(({ stage, reachedAt }) => [stage, reachedAt]));
  const { outlook } = batch;
  const houses = useHouses().data;
  const houseName = (code: string) => houses?.find((house) => house.code === code)?.name ?? code;
  const rows: readonly (readonly [string, Quantiles<Instant | null>, Instant | undefined])[] = outlook
    ? [
        [t.callused, outlook.callusedAt, seen.get('CALLUS')],
        [t.rooted, outlook.rootedAt, seen.get('ROOT')],
        [t.readyRow, outlook.readyAt, seen.get('READY')],
      ]
    : [];
  const when = (instant: Instant | null) => (instant === null ? shared.notInSight : format.dateTime(instant, timeZone));
  return (
    <Part
      id="outlook"
      className="story-part"
      title={t.outlook}
      aside={outlook && <small className="rc-quiet">{t.outlookAsOf(when(outlook.asOf))}</small>}
      first
    >
      {!outlook && <p className="rc-quiet">{t.noOutlook}</p>}
      {outlook && (
        <>
          <div className="rc-cards-room">
            <table className="rc-table rc-cards outlook-dates">
              <HeadRow heads={[t.date, t.early, t.middle, t.late, t.seen]} />
              <tbody>
                {rows.map(([name, at, seenAt]) => (
                  <tr key={name}>
                    <th scope="row">{name}</th>
                    <td className="rc-quiet" data-label={t.early}>
                      {at.p10 !== at.p90 && when(at.p10)}
                    </td>
                    <td data-label={t.middle}>
                      <strong>{when(at.p50)}</strong>
                    </td>
                    <td className="rc-quiet" data-label={t.late}>
                      {at.p10 !== at.p90 && when(at.p90)}
                    </td>
                    <td data-label={t.seen}>
                      {seenAt === undefined ? (
                        '–'
                      ) : (
                        <a className="rc-link" href="#story">
                          {when(seenAt)}
                        </a>
                      )}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <p>
            {t.saleableSaid(
              format.integer(outlook.saleableTrays.p10),
              format.integer(outlook.saleableTrays.p50),
              format.integer(outlook.saleableTrays.p90),
            )}{' '}
            {outlook.usableUntil !== null && t.usableUntil(dayOf(outlook.usableUntil, format, timeZone))}
          </p>
          {outlook.moves.map(({ house, at }) => (
            <p key={house}>
              {t.willMove(houseName(house), format.dayOf(at, timeZone))}{' '}
              <OfferedLink to={`/setup/houses/${encodeURIComponent(batch.house)}`}>{t.willMoveBecause}</OfferedLink>
            </p>
          ))}
          <p className={outlook.missingHours > 0 ? 'rc-warning' : undefined}>
            {outlook.missingHours > 0
              ? `▲ ${t.missing(format.integer(outlook.missingHours), outlook.filledFrom ? t[outlook.filledFrom] : t.unknownFill)}`
              : t.noneMissing}
          </p>
          <p className="rc-quiet">
            <a className="rc-link" href="#why">
              {reason.toWhy}
            </a>{' '}
            {t.madeOf}:{' '}
            <OfferedLink to={`/setup/crops/${encodeURIComponent(batch.crop)}`}>
              {t.madeOfProfile(batch.cropName)}
            </OfferedLink>
            ,{' '}
            <a className="rc-link" href="#readings">
              {t.madeOfReadings}
            </a>
            ,{' '}
            <a className="rc-link" href="#story">
              {t.madeOfEntries}
            </a>
            . {timeZone !== undefined && t.zone(timeZone)}
          </p>
        </>
      )}
    </Part>
  );
}

function dayOf(dateOrInstant: string, format: ReturnType<typeof useFormats>, timeZone: string | undefined): string {
  return dateOrInstant.length === 10 ? format.date(dateOrInstant) : format.dateTime(dateOrInstant, timeZone);
}
