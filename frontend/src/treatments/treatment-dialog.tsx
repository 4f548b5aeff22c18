import { useQueryClient } from '@tanstack/react-query';
import { ComboBox } from '@vaadin/react-components/ComboBox.js';
import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useRef, useState } from 'react';
import { useBatchList } from '../shared/batch-queries';
import { Button } from '../shared/button';
import { PURPOSES } from '../shared/climate-types';
import { DateInput } from '../shared/date-input';
import { useFormats } from '../shared/formats';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { NumberInput } from '../shared/number-input';
import { usePreferences } from '../shared/preferences';
import { Problem } from '../shared/problem';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { useHouses, useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { TextInput } from '../shared/text-input';
import { areaUnitName } from '../shared/units';
import { useProblemWords } from '../shared/use-problem-words';
import { wallClock } from '../shared/zoned-time';
import { recordTreatment } from './treatments-api';
import { treatmentsMessages } from './treatments-messages';
import { DETAILS, NO_DETAILS, treatmentOf, type TreatmentDraft, type TreatmentFaults } from './treatments-state';

interface TreatmentDialogProps {
  readonly site: string | undefined;
  /** What is known of it where it is opened; never a product. */
  readonly start?: Partial<Pick<TreatmentDraft, 'house' | 'batch' | 'purpose'>>;
  readonly close: () => void;
}

/** Writes down what was applied. Every field is the reader's own: nothing is proposed. */
export function TreatmentDialog({ site, start, close }: TreatmentDialogProps) {
  const t = useMessages(treatmentsMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const queries = useQueryClient();
  const { length } = usePreferences();
  const houses = (useHouses().data ?? []).filter((house) => site === undefined || house.site === site);
  const sites = useSites().data ?? [];
  const batches = useBatchList({ site, state: 'live' }).data?.batches ?? [];
  const zoneOf = (house: string) => {
    const of = houses.find(({ code }) => code === house)?.site;
    return sites.find(({ code }) => code === of)?.timeZone ?? sites[0]?.timeZone;
  };
  const [draft, setDraft] = useState<TreatmentDraft>(() => {
    const [date = '', time = ''] = wallClock(zoneOf(''), Date.now()).split('T');
    return {
      house: '',
      batch: '',
      purpose: 'other',
      product: '',
      rate: '',
      appliedBy: '',
      date,
      time,
      reentryHours: '',
      note: '',
      ...NO_DETAILS,
      ...start,
    };
  });
  const refusals = useProblemWords(zoneOf(draft.house));
  const [faults, setFaults] = useState<TreatmentFaults>({});
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const sent = useRef<{ body: string; key: string } | undefined>(undefined);
  const change = (part: Partial<TreatmentDraft>) => {
    setDraft((before) => ({ ...before, ...part }));
    setFaults({});
    setFailure(undefined);
  };
  const faultOf = (name: keyof TreatmentDraft, sentAs: string = name) => {
    const fault = faults[name];
    return fault ? t[fault] : refusals.faultOf(failure, sentAs);
  };
  const save = async () => {
    const made = treatmentOf(draft, zoneOf(draft.house), length);
    if ('faults' in made) {
      setFaults(made.faults);
      return;
    }
    const body = JSON.stringify(made.treatment);
    if (sent.current?.body !== body) sent.current = { body, key: newKey() };
    setBusy(true);
    try {
      const recorded = await recordTreatment(made.treatment, sent.current.key);
      const house = houses.find(({ code }) => code === recorded.house)?.name ?? recorded.house;
      const until = format.dateTime(recorded.reentryAt, zoneOf(recorded.house));
      notice({ text: recorded.closed ? t.done(house, until) : t.doneOpen });
      await queries.invalidateQueries({ queryKey: groups.treatments() });
      await queries.invalidateQueries({ queryKey: groups.rounds() });
      await queries.invalidateQueries({ queryKey: groups.warnings() });
      close();
    } catch (refused) {
      if (refused instanceof Problem) sent.current = undefined;
      setFailure(refused);
    } finally {
      setBusy(false);
    }
  };
  const text = (
    name: 'product' | 'rate' | 'appliedBy' | 'note' | (typeof DETAILS)[number],
    hint = '',
    required = true,
  ) => (
    <TextInput
      label={t[name]}
      value={draft[name]}
      hint={hint}
      required={required}
      fault={faultOf(name)}
      onValue={(said) => change({ [name]: said })}
    />
  );
  const choice = (
    name: 'house' | 'batch' | 'purpose',
    items: readonly { readonly code: string; readonly label: string }[],
    hint = '',
  ) => (
    <ComboBox
      label={t[name]}
      items={[...items]}
      itemValuePath="code"
      itemLabelPath="label"
      value={draft[name]}
      helperText={hint}
      required={name !== 'batch'}
      manualValidation
      invalid={faultOf(name) !== undefined}
      errorMessage={faultOf(name) ?? ''}
      onValueChanged={(event) => {
        if (event.detail.value === draft[name]) return;
        change({ [name]: event.detail.value, ...(name === 'house' ? { batch: '' } : {}) });
      }}
    />
  );
  return (
    <Dialog opened headerTitle={t.newTreatment} onOpenedChanged={(event) => !event.detail.value && close()}>
      <div className="treatment-form">
        <p className="rc-warning wide">▲ {t.caution}</p>
        {choice(
          'house',
          houses.map(({ code, name }) => ({ code, label: name })),
        )}
        {choice(
          'batch',
          batches
            .filter(({ house }) => house === draft.house)
            .map(({ id, varietyName }) => ({ code: id, label: `${id}, ${varietyName}` })),
          t.batchHelp,
        )}
        {text('product', t.productHelp)}
        {text('rate', t.rateHelp)}
        {choice(
          'purpose',
          PURPOSES.map((purpose) => ({ code: purpose, label: t[purpose] })),
        )}
        {text('appliedBy')}
        <DateInput
          label={t.date}
          value={draft.date}
          onValue={(date) => change({ date })}
          fault={faultOf('date', 'appliedAt')}
          required
        />
        <TextInput
          label={t.time}
          value={draft.time}
          required
          hint={zoneOf(draft.house)}
          fault={faultOf('time')}
          onValue={(time) => change({ time })}
        />
        <NumberInput
          label={t.reentryHours}
          value={draft.reentryHours}
          hint={t.reentryHelp}
          required
          fault={faultOf('reentryHours')}
          onValue={(reentryHours) => change({ reentryHours })}
        />
        {text('note', '', false)}
        <details className="wide" open={faults.area !== undefined || undefined}>
          <summary>{t.more}</summary>
          <div className="treatment-more">
            {DETAILS.map((name) => (
              <div key={name}>{text(name, t[`${name}Help`], false)}</div>
            ))}
            <NumberInput
              label={t.area(areaUnitName(length))}
              value={draft.area}
              fault={faultOf('area', 'areaM2')}
              onValue={(area) => change({ area })}
            />
          </div>
        </details>
        <div className="wide">
          <ProblemNote failure={failure} timeZone={zoneOf(draft.house)} />
        </div>
        <div className="wide rc-row">
          <Button onClick={close}>{shared.cancel}</Button>
          <Button theme="primary" disabled={busy} onClick={() => void save()}>
            {t.save}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
