import type { Site } from '../shared/api-types';
import { useMessages } from '../shared/messages';
import { TextInput } from '../shared/text-input';
import { LabelledSelect } from '../tables/labelled-select';
import { OptionList } from '../tables/option-list';
import { tablesMessages } from '../tables/tables-messages';
import { CLOCK_FORMATS, DAY_FORMATS, OWN_FORMAT, TIME_FORMATS, WITH_OFFSET } from '../tables/table-text-state';
import { csvMessages } from './csv-messages';
import { firstTime, SITE_CLOCKS, statesOffset, withTimeColumns, type TablePlan } from './csv-state';

interface TableTimesProps {
  readonly text: string;
  readonly plan: TablePlan;
  readonly put: (plan: TablePlan) => void;
  readonly faultOf: (path: string) => string | undefined;
  readonly sites: readonly Site[];
}

/** Where the times of the table stand, how they are written and by which clock. */
export function TableTimes({ text, plan, put, faultOf, sites }: TableTimesProps) {
  const t = useMessages(csvMessages);
  const table = useMessages(tablesMessages);
  const apart = plan.clockColumn !== '';
  const formatWord = ({ id, example, order }: (typeof TIME_FORMATS)[number]) =>
    [example, order ? `(${t[order]})` : id === WITH_OFFSET ? `(${t.withOffset})` : ''].join(' ').trim();
  const columns = Object.keys(plan.columns).map((name) => [name, name] as const);
  const formats = (of: readonly (typeof TIME_FORMATS)[number][]) =>
    of.map((each) => [each.id, formatWord(each)] as const);
  return (
    <>
      <LabelledSelect
        label={t.timeColumn}
        value={plan.timeColumn}
        fault={faultOf('timeColumn')}
        onValue={(timeColumn) => put(withTimeColumns(plan, text, { timeColumn }))}
      >
        <OptionList none={table.choose} options={columns} />
      </LabelledSelect>
      <LabelledSelect
        label={t.clockColumn}
        value={plan.clockColumn}
        fault={faultOf('clockColumn')}
        onValue={(clockColumn) => put(withTimeColumns(plan, text, { clockColumn }))}
      >
        <OptionList none={t.noClockColumn} options={columns} />
      </LabelledSelect>
      <LabelledSelect
        label={apart ? t.dayFormat : t.timeFormat}
        value={plan.timeFormat}
        fault={plan.timeFormat === OWN_FORMAT ? undefined : faultOf('timeFormat')}
        onValue={(timeFormat) => put({ ...plan, timeFormat })}
      >
        <OptionList none={table.choose} options={formats(apart ? DAY_FORMATS : TIME_FORMATS)} />
        <option value={OWN_FORMAT}>{t.ownFormat}</option>
      </LabelledSelect>
      {apart && plan.timeFormat !== OWN_FORMAT && (
        <LabelledSelect
          label={t.clockFormat}
          value={plan.clockFormat}
          fault={faultOf('clockFormat')}
          onValue={(clockFormat) => put({ ...plan, clockFormat })}
        >
          <OptionList none={table.choose} options={formats(CLOCK_FORMATS)} />
        </LabelledSelect>
      )}
      {plan.timeFormat === OWN_FORMAT && (
        <TextInput
          label={t.ownPattern}
          value={plan.ownFormat}
          hint={t.ownPatternHelp}
          fault={faultOf('timeFormat')}
          onValue={(ownFormat) => put({ ...plan, ownFormat })}
        />
      )}
      <ZoneChoice plan={plan} put={put} fault={faultOf('zone')} sites={sites} />
      {plan.timeColumn !== '' && <p className="rc-quiet">{t.firstTime(firstTime(plan, text))}</p>}
    </>
  );
}

interface ZoneChoiceProps extends Pick<TableTimesProps, 'plan' | 'put' | 'sites'> {
  readonly fault: string | undefined;
}

function ZoneChoice({ plan, put, fault, sites }: ZoneChoiceProps) {
  const t = useMessages(csvMessages);
  const ownZones = [...new Set(sites.map(({ timeZone }) => timeZone))];
  const sitesIn = (zone: string) =>
    sites
      .filter(({ timeZone }) => timeZone === zone)
      .map(({ name }) => name)
      .join(', ');
  return (
    <LabelledSelect
      label={statesOffset(plan) ? t.offsetZone : t.zone}
      value={plan.zone}
      fault={fault}
      onValue={(zone) => put({ ...plan, zone })}
    >
      <option value={SITE_CLOCKS}>{t.siteClocks}</option>
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
  );
}
