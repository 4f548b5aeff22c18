import { useMemo } from 'react';
import { climateMessages } from '../climate/climate-messages';
import type { House } from '../shared/api-types';
import type { Sensor } from '../shared/climate-types';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { MEASURED, unitName, unitsOf } from '../shared/reading-units';
import { LabelledSelect } from '../tables/labelled-select';
import { OptionList } from '../tables/option-list';
import { csvMessages } from './csv-messages';
import { NOT_TAKEN, takenColumns, valueColumns, withColumn, type ColumnPlan, type TablePlan } from './csv-state';
import { cellsOf, rowsOf } from '../tables/table-text-state';

interface TableColumnsProps {
  readonly text: string;
  readonly plan: TablePlan;
  readonly put: (plan: TablePlan) => void;
  readonly faultOf: (path: string) => string | undefined;
  readonly sensors: readonly Sensor[];
  readonly houses: readonly House[];
}

const EXAMPLES = 3;

/** Of each column what it is: a sensor's, a house's without a sensor, or nothing that is taken. */
export function TableColumns({ text, plan, put, faultOf, sensors, houses }: TableColumnsProps) {
  const t = useMessages(csvMessages);
  const rows = useMemo(() => rowsOf(text, plan.separator), [text, plan.separator]);
  const taken = takenColumns(plan).map(([name]) => name);
  const fault = faultOf('columns');
  return (
    <>
      <h3 id="table-columns">{t.columns}</h3>
      {fault !== undefined && (
        <p className="rc-broken" role="alert">
          ✕ {fault}
        </p>
      )}
      <table className="rc-table table-columns" aria-labelledby="table-columns">
        <HeadRow heads={[t.column, t.whatItIs]} />
        <tbody>
          {valueColumns(plan).map(([name, column]) => (
            <tr key={name}>
              <th scope="row">
                {name}
                <br />
                <span className="rc-quiet rc-small">{cellsOf(rows, name).slice(0, EXAMPLES).join(' · ')}</span>
              </th>
              <td>
                <ColumnChoice
                  name={name}
                  column={column}
                  named={plan.nameColumn === '' ? undefined : plan.names}
                  change={(change) => put(withColumn(plan, name, change))}
                  faultOf={(part) => faultOf(`columns.${taken.indexOf(name)}.${part}`)}
                  sensors={sensors}
                  houses={houses}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

interface ColumnChoiceProps {
  readonly name: string;
  readonly column: ColumnPlan;
  /** What each line names; undefined where the columns say it. */
  readonly named: TablePlan['names'] | undefined;
  readonly change: (change: Partial<ColumnPlan>) => void;
  readonly faultOf: (part: string) => string | undefined;
  readonly sensors: readonly Sensor[];
  readonly houses: readonly House[];
}

function ColumnChoice({ name, column, named, change, faultOf, sensors, houses }: ColumnChoiceProps) {
  const t = useMessages(csvMessages);
  const climate = useMessages(climateMessages);
  const shownAs = ({ code, quantity, unit }: Sensor) => `${code} · ${climate[quantity]}, ${unitName(unit)}`;
  const isOfHouse = named === undefined && column.kind === 'house';
  return (
    <div className="table-column">
      {named === undefined ? (
        <LabelledSelect
          label={t.whatOf(name)}
          hideLabel
          value={column.kind === 'sensor' ? `sensor ${column.sensor}` : column.kind === 'house' ? 'house' : 'none'}
          fault={faultOf('sensor')}
          onValue={(value) =>
            change(
              value === 'none' || value === 'house'
                ? { kind: value }
                : { ...NOT_TAKEN, kind: 'sensor', sensor: value.slice('sensor '.length) },
            )
          }
        >
          <option value="none">{t.notTaken}</option>
          <option value="house">{t.ofHouse}</option>
          {houses.map((house) => {
            const inside = sensors.filter((sensor) => sensor.house === house.code);
            return (
              inside.length > 0 && (
                <optgroup key={house.code} label={house.name}>
                  {inside.map((sensor) => (
                    <option key={sensor.code} value={`sensor ${sensor.code}`}>
                      {shownAs(sensor)}
                    </option>
                  ))}
                </optgroup>
              )
            );
          })}
        </LabelledSelect>
      ) : (
        <LabelledSelect
          label={t.whatOf(name)}
          hideLabel
          value={column.kind === 'line' ? 'line' : 'none'}
          onValue={(value) => change({ kind: value === 'line' ? 'line' : 'none' })}
        >
          <option value="none">{t.notTaken}</option>
          <option value="line">{named === 'sensor' ? t.ofLineSensor : t.ofLineHouse}</option>
        </LabelledSelect>
      )}
      {isOfHouse && (
        <LabelledSelect
          label={t.houseOf(name)}
          hideLabel
          value={column.house}
          fault={faultOf('house')}
          onValue={(house) => change({ house })}
        >
          <OptionList none={t.house} options={houses.map(({ code, name: word }) => [code, word])} />
        </LabelledSelect>
      )}
      {(isOfHouse || (named === 'house' && column.kind === 'line')) && (
        <>
          <LabelledSelect
            label={t.quantityOf(name)}
            hideLabel
            value={column.quantity}
            fault={faultOf('quantity')}
            onValue={(quantity) => change({ quantity })}
          >
            <OptionList none={t.quantity} options={MEASURED.map((quantity) => [quantity, climate[quantity]])} />
          </LabelledSelect>
          <LabelledSelect
            label={t.unitOf(name)}
            hideLabel
            value={column.unit}
            fault={faultOf('unit')}
            onValue={(unit) => change({ unit })}
          >
            <OptionList
              none={t.unit}
              options={[...new Set([...unitsOf(column.quantity), ...(column.unit ? [column.unit] : [])])].map(
                (unit) => [unit, unitName(unit)],
              )}
            />
          </LabelledSelect>
        </>
      )}
    </div>
  );
}
