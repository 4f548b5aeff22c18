import { useQueryClient } from '@tanstack/react-query';
import { ComboBox } from '@vaadin/react-components/ComboBox.js';
import { useMemo, useRef, useState } from 'react';
import type { Site } from '../shared/api-types';
import { Button } from '../shared/button';
import { deviceZone } from '../shared/home-zone';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { TextInput } from '../shared/text-input';
import { makePlace } from './first-day-api';
import { firstDayMessages } from './first-day-messages';
import { placeOf, type PlaceDraft } from './first-day-state';
import { Step } from './step';

/** A site, its zone and a house, filled in already: one key press is enough. */
export function PlaceStep({ sites }: { sites: readonly Site[] }) {
  const t = useMessages(firstDayMessages);
  const names = sites.map(({ name }) => name).join(', ');
  return (
    <Step id="first-place" title={t.placeTitle} done={sites.length > 0}>
      {sites.length > 0 ? <p>{t.sitesAre(names)}</p> : <PlaceForm />}
    </Step>
  );
}

function PlaceForm() {
  const t = useMessages(firstDayMessages);
  const shared = useMessages(sharedMessages);
  const queries = useQueryClient();
  const zones = useMemo(
    // The device's own may be one that is in no list, such as UTC.
    () =>
      [...new Set([deviceZone(), ...Intl.supportedValuesOf('timeZone')])].map((zone) => ({ value: zone, label: zone })),
    [],
  );
  const [draft, setDraft] = useState<PlaceDraft>({
    site: t.presetSite,
    timeZone: deviceZone(),
    house: t.presetHouse,
  });
  const [missing, setMissing] = useState<readonly (keyof PlaceDraft)[]>([]);
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const keys = useRef<{ readonly for: string; readonly keys: readonly [string, string] }>(undefined);

  const put = (field: keyof PlaceDraft, text: string) => {
    setDraft((before) => ({ ...before, [field]: text }));
    setMissing((before) => before.filter((each) => each !== field));
  };
  const save = async () => {
    const made = placeOf(draft);
    if ('missing' in made) {
      setMissing(made.missing);
      return;
    }
    const wanted = JSON.stringify(made);
    if (keys.current?.for !== wanted) keys.current = { for: wanted, keys: [newKey(), newKey()] };
    setBusy(true);
    setFailure(undefined);
    try {
      await makePlace(made.site, made.house, keys.current.keys);
      await queries.invalidateQueries({ queryKey: groups.setup() });
    } catch (refused) {
      if (refused instanceof Problem) keys.current = undefined;
      setFailure(refused);
    } finally {
      setBusy(false);
    }
  };
  const fault = (field: keyof PlaceDraft) => (missing.includes(field) ? shared.needed : undefined);
  const text = (field: 'site' | 'house', label: string) => (
    <TextInput
      label={label}
      value={draft[field]}
      required
      fault={fault(field)}
      onValue={(typed) => put(field, typed)}
    />
  );
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <div className="setup-fields">
        {text('site', t.site)}
        <ComboBox
          label={t.timeZone}
          items={zones}
          itemValuePath="value"
          itemLabelPath="label"
          value={draft.timeZone}
          required
          manualValidation
          invalid={fault('timeZone') !== undefined}
          errorMessage={fault('timeZone') ?? ''}
          onValueChanged={({ detail }) => {
            if (detail.value !== draft.timeZone) put('timeZone', detail.value);
          }}
        />
        {text('house', t.house)}
      </div>
      <p className="rc-quiet">{t.placeHelp}</p>
      <ProblemNote failure={failure} />
      <Button theme="primary" disabled={busy} onClick={() => void save()}>
        {t.savePlace}
      </Button>
      <button type="submit" hidden />
    </form>
  );
}
