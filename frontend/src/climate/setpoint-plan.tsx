import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { Offered } from '../people/offered';
import type { House } from '../shared/api-types';
import { clockTyped } from '../shared/as-of-state';
import { Button } from '../shared/button';
import { DateInput } from '../shared/date-input';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { NumberInput } from '../shared/number-input';
import { usePreferences } from '../shared/preferences';
import { Problem } from '../shared/problem';
import { groups } from '../shared/query-keys';
import { Failed, Loading, ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { TextInput } from '../shared/text-input';
import { celsiusTyped, numberTyped } from '../shared/units';
import { useProblemWords } from '../shared/use-problem-words';
import { isDate } from '../shared/weeks';
import { instantOf, wallClock } from '../shared/zoned-time';
import { Part } from '../shared/part';
import { planSetpoint, useSetpointPlan } from './climate-api';
import { climateMessages } from './climate-messages';

interface SetpointPlanProps {
  readonly house: House;
  readonly timeZone: string | undefined;
  readonly nowMs: number;
}

/** Which medium temperature a house was and will be held at, and a form for the next change. */
export function SetpointPlan({ house, timeZone, nowMs }: SetpointPlanProps) {
  const t = useMessages(climateMessages);
  const format = useFormats();
  const plan = useSetpointPlan(house.code);
  const newest = [...(plan.data ?? [])].sort((a, b) => b.from.localeCompare(a.from));
  const current = newest.find(({ from }) => Date.parse(from) <= nowMs);
  return (
    <Part title={t.setpoints}>
      {plan.isPending && <Loading />}
      {plan.isError && !plan.data && <Failed failure={plan.error} retry={() => void plan.refetch()} />}
      {plan.data && newest.length === 0 && <p className="rc-quiet">{t.setpointsNone}</p>}
      <ul className="climate-plan">
        {newest.slice(0, 8).map((each) => (
          <li key={`${each.from} ${each.recordedAt}`}>
            {t.setpointFrom(
              typeof each.mediumC === 'number' ? format.temperature(each.mediumC) : t.setpointOff,
              format.dateTime(each.from, timeZone),
            )}{' '}
            {each === current && <strong>✓ {t.inForce}</strong>}
            {Date.parse(each.from) > nowMs && <span className="rc-quiet">{t.planned}</span>}
          </li>
        ))}
      </ul>
      <Offered right="set-up" site={house.site}>
        <PlanForm house={house} timeZone={timeZone} />
      </Offered>
    </Part>
  );
}

function PlanForm({ house, timeZone }: { house: House; timeZone: string | undefined }) {
  const t = useMessages(climateMessages);
  const refusals = useProblemWords(timeZone);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const queries = useQueryClient();
  const unit = useState(usePreferences().temperature)[0];
  const [draft, setDraft] = useState(() => {
    const [date = '', time = ''] = wallClock(timeZone, Date.now()).split('T');
    return { medium: '', date, time };
  });
  const [tried, setTried] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const change = (part: Partial<typeof draft>) => {
    setDraft((before) => ({ ...before, ...part }));
    setFailure(undefined);
  };
  const typed = numberTyped(draft.medium);
  const off = draft.medium.trim() === '';
  const from = isDate(draft.date) ? instantOf(timeZone, draft.date, clockTyped(draft.time)) : undefined;
  const refused = failure instanceof Problem ? failure : undefined;
  const plan = async () => {
    setTried(true);
    if ((typed === undefined && !off) || from === undefined) return;
    setBusy(true);
    try {
      await planSetpoint(house.code, off ? null : celsiusTyped(typed ?? 0, unit), from);
      await queries.invalidateQueries({ queryKey: groups.setup() });
      notice({ text: t.plannedDone });
      setTried(false);
      setDraft((before) => ({ ...before, medium: '' }));
    } catch (cause) {
      setFailure(cause);
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="climate-form rc-no-print" role="group" aria-label={t.planTitle}>
      <NumberInput
        label={t.medium}
        unit={format.temperatureUnit}
        value={draft.medium}
        hint={t.mediumHelp}
        fault={tried && !off && typed === undefined ? shared.notANumber : refusals.faultOf(refused, 'mediumC')}
        onValue={(medium) => change({ medium })}
      />
      <DateInput
        label={t.from}
        value={draft.date}
        onValue={(date) => change({ date })}
        fault={tried && !isDate(draft.date) ? t.noDate : refusals.faultOf(refused, 'from')}
      />
      <TextInput
        label={t.time}
        value={draft.time}
        hint={timeZone}
        fault={tried && isDate(draft.date) && from === undefined ? t.noTime : undefined}
        onValue={(time) => change({ time })}
      />
      <Button disabled={busy} onClick={() => void plan()}>
        {t.plan}
      </Button>
      <Link className="rc-link" to={`/what-if?${new URLSearchParams({ site: house.site, house: house.code })}`}>
        {t.tryFirst}
      </Link>
      {failure !== undefined && (refused?.fieldFaults.length ?? 0) === 0 && (
        <ProblemNote failure={failure} timeZone={timeZone} />
      )}
    </div>
  );
}
