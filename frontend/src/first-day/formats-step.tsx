import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { TrayFormat } from '../shared/api-types';
import { Button } from '../shared/button';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { NumberInput } from '../shared/number-input';
import { usePreferences } from '../shared/preferences';
import { Problem } from '../shared/problem';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { TextInput } from '../shared/text-input';
import { useProblemWords } from '../shared/use-problem-words';
import { makeTrayFormat } from './first-day-api';
import { firstDayMessages } from './first-day-messages';
import { formatOf, NO_FORMAT, type FormatDraft } from './first-day-state';
import { Step } from './step';

const FIGURES = ['cells', 'saleCount', 'length', 'width'] as const;
const SENT_AS = { cells: 'cells', saleCount: 'saleCount', length: 'lengthMm', width: 'widthMm', code: 'code' } as const;

/** Tray formats, one after the other: Enter adds one and goes back to the first field. */
export function FormatsStep({ formats }: { formats: readonly TrayFormat[] }) {
  const t = useMessages(firstDayMessages);
  const shared = useMessages(sharedMessages);
  const refusals = useProblemWords();
  const { length: unit } = usePreferences();
  const queries = useQueryClient();
  const [draft, setDraft] = useState(NO_FORMAT);
  const [wrong, setWrong] = useState<readonly (keyof FormatDraft)[]>([]);
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const sent = useRef<{ readonly for: string; readonly key: string }>(undefined);
  const form = useRef<HTMLFormElement>(null);

  const put = (field: keyof FormatDraft, text: string) => {
    setDraft((before) => ({ ...before, [field]: text }));
    setWrong((before) => before.filter((each) => each !== field));
  };
  const faultOf = (field: keyof FormatDraft) => {
    if (wrong.includes(field)) return field === 'code' ? t.wrongCode : draft[field] ? shared.notANumber : shared.needed;
    return refusals.faultOf(failure, SENT_AS[field]);
  };
  const add = async () => {
    const made = formatOf(draft, unit);
    if ('wrong' in made) {
      setWrong(made.wrong);
      return;
    }
    const wanted = JSON.stringify(made.format);
    if (sent.current?.for !== wanted) sent.current = { for: wanted, key: newKey() };
    setBusy(true);
    setFailure(undefined);
    try {
      await makeTrayFormat(made.format, sent.current.key);
      await queries.invalidateQueries({ queryKey: groups.setup() });
      // What is typed into the first field once it has the focus belongs to the next format.
      flushSync(() => setDraft(NO_FORMAT));
      form.current?.querySelector<HTMLElement>('vaadin-text-field')?.focus();
    } catch (refused) {
      if (refused instanceof Problem) sent.current = undefined;
      setFailure(refused);
    } finally {
      setBusy(false);
    }
  };
  const beside =
    failure instanceof Problem &&
    failure.fieldFaults.some(({ field }) => Object.values(SENT_AS).some((path) => failure.names(field, path)));
  return (
    <Step id="first-formats" title={t.formatTitle} done={formats.length > 0}>
      <p className="rc-quiet">{t.formatHelp}</p>
      {formats.length > 0 && <p>{formats.map(({ code }) => code).join(' · ')}</p>}
      <form
        ref={form}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <div className="setup-fields first-format">
          {FIGURES.map((field) => (
            <NumberInput
              key={field}
              label={t[field]}
              value={draft[field]}
              fault={faultOf(field)}
              required
              {...(field === 'length' || field === 'width' ? { unit } : { whole: true })}
              onValue={(text) => put(field, text)}
            />
          ))}
          <TextInput
            label={t.code}
            value={draft.code}
            placeholder={draft.cells}
            fault={faultOf('code')}
            onValue={(code) => put('code', code)}
          />
        </div>
        <ProblemNote failure={beside ? undefined : failure} />
        <Button disabled={busy} onClick={() => void add()}>
          {t.addFormat}
        </Button>
        <button type="submit" hidden />
      </form>
    </Step>
  );
}
