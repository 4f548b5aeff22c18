import type { House, Site } from '../shared/api-types';
import { useMessages } from '../shared/messages';
import { LabelledSelect } from '../tables/labelled-select';
import { DAY_FORMATS, headerOf, rowsOf } from '../tables/table-text-state';
import { tablesMessages } from '../tables/tables-messages';
import { batchesCsvMessages } from './batches-csv-messages';
import { COLUMNS, judged, REACHED, type BatchPlan, type Reached } from './batches-csv-state';

interface BatchesPlanFormProps {
  readonly text: string;
  readonly plan: BatchPlan;
  readonly put: (plan: BatchPlan) => void;
  readonly faultOf: (path: string) => string | undefined;
  readonly sites: readonly Site[];
  readonly houses: readonly House[];
}

/** Before a code: where no column says the site or the house, all lines have this one. */
const ALL = 'all lines: ';

/** Which column says what, and how days and stages are written. */
export function BatchesPlanForm({ text, plan, put, faultOf, sites, houses }: BatchesPlanFormProps) {
  const t = useMessages(batchesCsvMessages);
  const table = useMessages(tablesMessages);
  const header = headerOf(rowsOf(text, plan.separator, 1));
  const fallbacks = { site: sites, house: houses } as const;
  const isPlace = (name: string): name is keyof typeof fallbacks => Object.hasOwn(fallbacks, name);
  return (
    <section className="rc-sheet table-part" aria-labelledby="table-plan">
      <h2 id="table-plan">{t.planTitle}</h2>
      <p className="rc-quiet">{t.planHelp}</p>
      <h3>{t.columns}</h3>
      <div className="table-fields">
        {COLUMNS.map(({ name, needed }) => (
          <LabelledSelect
            key={name}
            label={t[`column-${name}`]}
            value={isPlace(name) && plan[name] ? ALL + plan[name] : plan.columns[name]}
            fault={faultOf(`columns.${name}`)}
            onValue={(value) => {
              const all = value.startsWith(ALL);
              const columns = { ...plan.columns, [name]: all ? '' : value };
              const usual = isPlace(name) ? { [name]: all ? value.slice(ALL.length) : '' } : {};
              put(judged(text, { ...plan, ...usual, columns }));
            }}
          >
            <option value="">{needed ? table.choose : t.noColumn}</option>
            {header.map((column) => (
              <option key={column}>{column}</option>
            ))}
            {isPlace(name) &&
              fallbacks[name].map((place) => (
                <option key={ALL + place.code} value={ALL + place.code}>
                  {t.allIn(place.name)}
                </option>
              ))}
          </LabelledSelect>
        ))}
        <LabelledSelect
          label={t.day}
          value={plan.dateFormat}
          fault={faultOf('dateFormat')}
          onValue={(dateFormat) => put({ ...plan, dateFormat })}
        >
          <option value="">{table.choose}</option>
          {DAY_FORMATS.map(({ id, example, order }) => (
            <option key={id} value={id}>
              {order ? `${example} (${t[order]})` : example}
            </option>
          ))}
        </LabelledSelect>
      </div>
      {Object.keys(plan.stages).length > 0 && (
        <>
          <h3>{t.stages}</h3>
          <div className="table-fields">
            {Object.entries(plan.stages).map(([word, stage]) => (
              <LabelledSelect
                key={word}
                label={word}
                value={stage}
                fault={faultOf(`stages.${word}`)}
                onValue={(meant) => put({ ...plan, stages: { ...plan.stages, [word]: meant as Reached | '' } })}
              >
                <option value="">{table.choose}</option>
                {REACHED.map((each) => (
                  <option key={each} value={each}>
                    {t[`stage-${each}`]}
                  </option>
                ))}
              </LabelledSelect>
            ))}
          </div>
        </>
      )}
      <label className="rc-row table-make">
        <input
          type="checkbox"
          checked={plan.makeMissing}
          onChange={(event) => put({ ...plan, makeMissing: event.target.checked })}
        />
        {t.makeMissing}
      </label>
      <p className="rc-quiet rc-small">{t.makeMissingHelp}</p>
    </section>
  );
}
