import { useMessages } from '../shared/messages';
import { useCrops, useHouses } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { columnName } from './batch-cells';
import { batchesMessages } from './batches-messages';
import { COLUMNS, STAGES, type BatchFilter, type Column, type Which } from './batches-state';

interface BatchFiltersProps {
  readonly filter: BatchFilter;
  readonly change: (part: Partial<BatchFilter>) => void;
  /** Whether the order is chosen here: cards have no heads to press. */
  readonly sortable: boolean;
}

/** Text, house, crop, stage, and live or finished. The site is chosen in the header, for all screens. */
export function BatchFilters({ filter, change, sortable }: BatchFiltersProps) {
  const t = useMessages(batchesMessages);
  const stages = useMessages(sharedMessages);
  const houses = (useHouses().data ?? []).filter((house) => filter.site === undefined || house.site === filter.site);
  const crops = useCrops().data ?? [];
  const narrowed = filter.house ?? filter.crop ?? filter.stage ?? (filter.text || filter.state !== 'live' || undefined);
  return (
    <form className="batch-filters" role="search" aria-label={t.filters} onSubmit={(event) => event.preventDefault()}>
      <label className="filter-text">
        <span>{t.find}</span>
        <input type="search" value={filter.text} onChange={(event) => change({ text: event.target.value })} />
      </label>
      <Select
        label={t.house}
        value={filter.house}
        none={t.allHouses}
        choose={(house) => change({ house })}
        options={houses.map(({ code, name }) => [code, name])}
      />
      <Select
        label={t.crop}
        value={filter.crop}
        none={t.allCrops}
        choose={(crop) => change({ crop })}
        options={crops.map(({ code, name }) => [code, name])}
      />
      <Select
        label={t.stage}
        value={filter.stage}
        none={t.allStages}
        choose={(stage) => change({ stage: STAGES.find((each) => each === stage) })}
        options={STAGES.map((stage) => [stage, stages[`stage${stage}`]])}
      />
      <label>
        <span>{t.which}</span>
        <select value={filter.state} onChange={(event) => change({ state: event.target.value as Which })}>
          <option value="live">{t.live}</option>
          <option value="finished">{t.finished}</option>
          <option value="all">{t.all}</option>
        </select>
      </label>
      {sortable && (
        <label>
          <span>{t.sortBy}</span>
          <select
            value={filter.sort.column}
            onChange={(event) => change({ sort: { column: event.target.value as Column, descending: false } })}
          >
            {COLUMNS.map((column) => (
              <option key={column} value={column}>
                {columnName(column, t)}
              </option>
            ))}
          </select>
        </label>
      )}
      {narrowed !== undefined && (
        <button
          type="button"
          className="rc-link"
          onClick={() => change({ text: '', house: undefined, crop: undefined, stage: undefined, state: 'live' })}
        >
          {t.clearFilters}
        </button>
      )}
    </form>
  );
}

function Select(props: {
  label: string;
  value: string | undefined;
  none: string;
  choose: (value: string | undefined) => void;
  options: readonly (readonly [string, string])[];
}) {
  const { label, value, none, choose, options } = props;
  return (
    <label>
      <span>{label}</span>
      <select value={value ?? ''} onChange={(event) => choose(event.target.value || undefined)}>
        <option value="">{none}</option>
        {value !== undefined && !options.some(([code]) => code === value) && <option value={value}>{value}</option>}
        {options.map(([code, name]) => (
          <option key={code} value={code}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
