import type { House, Site } from '../shared/api-types';
import type { Sensor } from '../shared/climate-types';
import { useMessages } from '../shared/messages';
import { LabelledSelect } from '../tables/labelled-select';
import { OptionList } from '../tables/option-list';
import { TableColumns } from './csv-columns';
import { csvMessages } from './csv-messages';
import { TableTimes } from './csv-times';
import { withSeparator, type TablePlan } from './csv-state';
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
  return (
    <section className="rc-sheet table-part" aria-labelledby="table-plan">
      <h2 id="table-plan">{t.planTitle}</h2>
      <p className="rc-quiet">{t.planHelp}</p>
      <div className="table-fields">
        <LabelledSelect
          label={table.separator}
          value={plan.separator}
          fault={faultOf('separator')}
          onValue={(separator) => put(withSeparator(plan, text, sensors, houses, separator))}
        >
          <OptionList options={Object.entries(separators)} />
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
        <TableTimes text={text} plan={plan} put={put} faultOf={faultOf} sites={sites} />
        <LabelledSelect
          label={t.nameColumn}
          value={plan.nameColumn}
          fault={faultOf(`${plan.names}Column`)}
          onValue={(nameColumn) => put({ ...plan, nameColumn })}
        >
          <OptionList none={t.noNameColumn} options={Object.keys(plan.columns).map((name) => [name, name])} />
        </LabelledSelect>
        {plan.nameColumn !== '' && (
          <LabelledSelect
            label={t.names}
            value={plan.names}
            onValue={(names) => put({ ...plan, names: names === 'sensor' ? 'sensor' : 'house' })}
          >
            <option value="house">{t.namesHouse}</option>
            <option value="sensor">{t.namesSensor}</option>
          </LabelledSelect>
        )}
      </div>
      <TableColumns text={text} plan={plan} put={put} faultOf={faultOf} sensors={sensors} houses={houses} />
    </section>
  );
}
