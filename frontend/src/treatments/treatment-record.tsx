import type { TreatmentView } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { treatmentsMessages } from './treatments-messages';
import { areaShown, areaUnitName } from '../shared/units';

interface TreatmentRecordProps {
  readonly title: string;
  readonly treatments: readonly TreatmentView[];
  readonly houseName: (code: string) => string;
  readonly timeZone: (site: string) => string | undefined;
}

/** The record of a house and month as an inspector reads it, oldest first, on screen and on paper alike. */
export function TreatmentRecord({ title, treatments, houseName, timeZone }: TreatmentRecordProps) {
  const t = useMessages(treatmentsMessages);
  const format = useFormats();
  const { length } = usePreferences();
  const area = (areaM2: number | null) =>
    areaM2 === null ? '' : `${format.decimal(areaShown(areaM2, length), 0)} ${areaUnitName(length)}`;
  return (
    <div className="treatment-scroll" tabIndex={0} role="group" aria-label={title}>
      <table className="rc-table">
        <caption>{title}</caption>
        <HeadRow
          heads={[
            t.when,
            t.house,
            t.product,
            t.registrationNumber,
            t.target,
            t.rate,
            t.totalUsed,
            t.area(areaUnitName(length)),
            t.by,
            t.licenceNumber,
            t.weather,
            t.reentry,
            t.note,
          ]}
        />
        <tbody>
          {[...treatments].reverse().map((each) => (
            <tr key={each.id}>
              <th scope="row">{format.dateTime(each.appliedAt, timeZone(each.site))}</th>
              <td>
                {houseName(each.house)}, {each.batch ?? t.wholeHouse}
              </td>
              <td>
                {each.product}, {t[each.purpose]}
              </td>
              <td>{each.registrationNumber}</td>
              <td>{each.target}</td>
              <td>{each.rate}</td>
              <td>{each.totalUsed}</td>
              <td>{area(each.areaM2)}</td>
              <td>{each.appliedBy}</td>
              <td>{each.licenceNumber}</td>
              <td>{each.weather}</td>
              <td>{format.dateTime(each.reentryAt, timeZone(each.site))}</td>
              <td>
                {each.note}
                {each.reversedAt !== null && ` ${t.reversed(each.reversalReason ?? '')}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
