import type { House, Site } from '../shared/api-types';
import type { Sensor } from '../shared/climate-types';
import { useMessages } from '../shared/messages';
import { TextInput } from '../shared/text-input';
import { LabelledSelect } from '../tables/labelled-select';
import { TableColumns } from './csv-columns';
import { csvMessages } from './csv-messages';
import { withSeparator, withTimeColumn, type TablePlan } from './csv-state';
import { OWN_FORMAT, TIME_FORMATS, WITH_OFFSET } from '../tables/table-text-state';
import { tablesMessages } from '../tables/tables-messages';

interface TablePlanFormProps {
  readonly text: string;
  readonly plan: TablePlan;
  readonly put: (plan: TablePlan) => void;
  readonly faultOf: (path: string) => string | undefined;
  readonly sensors: readonly Sensor[];
  readonly houses: readonly House[];
  readonly sites: readonly Site[];
}

/** How the table is to be read, and what each of its columns is. */
export function TablePlanForm({ text, plan, put, faultOf, sensors, houses, sites }: TablePlanFormProps) {
  const t = useMessages(csvMessages);
  const table = useMessages(tablesMessages);
  const separators = { ',': table.comma, ';': table.semicolon, '\t': table.tab, '|': table.bar };
  const formatWord = ({ id, example, order }: (typeof TIME_FORMATS)[number]) =>
    [example, order ? `(${t[order]})` : id === WITH_OFFSET ? `(${t.withOffset})` : ''].join(' ').trim();
  const ownZones = [...new Set(sites.map(({ timeZone }) => timeZone))];
  const sitesIn = (zone: string) =>
    sites
      .filter(({ timeZone }) => timeZone === zone)
      .map(({ name }) => name)
      .join(', ');
  return (
    <section className="rc-sheet table-part" aria-labelledby="table-plan">
      <h2 id="table-plan">{t.planTitle}</h2>
      <p className="rc-quiet">{t.planHelp}</p>
      <div className="table-fields">
        <LabelledSelect
          label={table.separator}
          value={plan.separator}
          fault={faultOf('separator')}
          onValue={(separator) => put(withSeparator(plan, text, sensors, separator))}
        >
          {Object.entries(separators).map(([sign, word]) => (
            <option key={sign} value={sign}>
              {word}
            </option>
          ))}
        </LabelledSelect>
        <LabelledSelect
          label={t.decimal}
          value={plan.decimal}
          fault={faultOf('decimal')}
          onValue={(decimal) => put({ ...plan, decimal })}
        >
          <option value=".">{t.decimalPoint}</option>
          <option value=",">{t.decimalComma}</option>
        </LabelledSelect>
        <LabelledSelect
          label={t.timeColumn}
          value={plan.timeColumn}
          fault={faultOf('timeColumn')}
          onValue={(timeColumn) => put(withTimeColumn(plan, text, timeColumn))}
        >
          <option value="">{table.choose}</option>
          {Object.keys(plan.columns).map((name) => (
            <option key={name}>{name}</option>
          ))}
        </LabelledSelect>
        <LabelledSelect
          label={t.timeFormat}
          value={plan.timeFormat}
          fault={plan.timeFormat === OWN_FORMAT ? undefined : faultOf('timeFormat')}
          onValue={(timeFormat) => put({ ...plan, timeFormat })}
        >
          <option value="">{table.choose}</option>
          {TIME_FORMATS.map((each) => (
            <option key={each.id} value={each.id}>
              {formatWord(each)}
            </option>
          ))}
          <option value={OWN_FORMAT}>{t.ownFormat}</option>
        </LabelledSelect>
        {plan.timeFormat === OWN_FORMAT && (
          <TextInput
            label={t.ownPattern}
            value={plan.ownFormat}
            hint={t.ownPatternHelp}
            fault={faultOf('timeFormat')}
            onValue={(ownFormat) => put({ ...plan, ownFormat })}
          />
        )}
        {plan.timeFormat !== WITH_OFFSET && (
          <LabelledSelect
            label={t.zone}
            value={plan.zone}
            fault={faultOf('zone')}
            onValue={(zone) => put({ ...plan, zone })}
          >
            <option value="">{table.choose}</option>
            <optgroup label={t.sitesZones}>
              {ownZones.map((zone) => (
                <option key={zone} value={zone}>
                  {zone} ({sitesIn(zone)})
                </option>
              ))}
            </optgroup>
            <optgroup label={t.otherZones}>
              {Intl.supportedValuesOf('timeZone')
                .filter((zone) => !ownZones.includes(zone))
                .map((zone) => (
                  <option key={zone}>{zone}</option>
                ))}
            </optgroup>
          </LabelledSelect>
        )}
      </div>
      <TableColumns text={text} plan={plan} put={put} faultOf={faultOf} sensors={sensors} houses={houses} />
    </section>
  );
}
