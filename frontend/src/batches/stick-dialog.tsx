import { ComboBox } from '@vaadin/react-components/ComboBox.js';
import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useRef, useState } from 'react';
import { Link, useNavigate } from 'react-router';
import { outbox } from '../outbox/outbox';
import { Button } from '../shared/button';
import { DateInput } from '../shared/date-input';
import { useFormats } from '../shared/formats';
import { answer, api, newKey, once } from '../shared/http';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { NumberInput } from '../shared/number-input';
import { Problem } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { useHouses, useSites, useTrayFormats, useVarieties } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { TextInput } from '../shared/text-input';
import { numberTyped } from '../shared/units';
import { useProblemWords } from '../shared/use-problem-words';
import { wallClock } from '../shared/zoned-time';
import { stickMessages } from './stick-messages';
import { batchOf, type StickDraft, type StickFaults } from './stick-state';

/** Sticks a batch. What was typed stays until it is accepted; a refusal stands beside its field. */
export function StickDialog({ site: wanted, close }: { site: string | undefined; close: () => void }) {
  const t = useMessages(stickMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const navigate = useNavigate();
  const sites = useSites().data ?? [];
  const houses = useHouses().data ?? [];
  const formats = useTrayFormats();
  const varieties = useVarieties().data ?? [];
  const [draft, setDraft] = useState<StickDraft>(() => {
    const site = wanted ?? (sites.length === 1 ? sites[0]?.code : undefined) ?? '';
    const [date = '', time = ''] = wallClock(sites.find((each) => each.code === site)?.timeZone, Date.now()).split('T');
    return { site, house: '', variety: '', trayFormat: '', date, time, trays: '', plants: '' };
  });
  const [faults, setFaults] = useState<StickFaults>({});
  const [failure, setFailure] = useState<unknown>();
  const [sending, setSending] = useState(false);
  // The same wish sent twice must count once; a changed one is another batch.
  const sent = useRef<{ body: string; key: string } | undefined>(undefined);

  const timeZone = sites.find((each) => each.code === draft.site)?.timeZone;
  const refusals = useProblemWords(timeZone);
  const cells = formats.data?.find((each) => each.code === draft.trayFormat)?.cells;
  const trays = numberTyped(draft.trays);
  const change = (part: Partial<StickDraft>) => {
    setDraft((old) => ({ ...old, ...part }));
    setFaults({});
    setFailure(undefined);
  };
  const faultOf = (name: keyof StickDraft, sentAs: string = name) => {
    const fault = faults[name];
    return fault ? t[fault] : refusals.faultOf(failure, sentAs);
  };

  const stick = async () => {
    const made = batchOf(draft, timeZone);
    if ('faults' in made) {
      setFaults(made.faults);
      return;
    }
    const body = JSON.stringify(made.batch);
    if (sent.current?.body !== body) sent.current = { body, key: newKey() };
    setSending(true);
    setFailure(undefined);
    try {
      const { id } = await answer(
        api.POST('/api/batches', { params: { header: once(sent.current.key) }, body: made.batch }),
      );
      close();
      await navigate(`/batches/${encodeURIComponent(id)}`);
      notice({ text: t.done(id, format.integer(made.batch.trays)), undo: () => unstick(id) });
    } catch (refused) {
      if (refused instanceof Problem) sent.current = undefined;
      setFailure(refused);
    } finally {
      setSending(false);
    }
  };
  /** The batch is gone then, so the list is what is left to look at. */
  const unstick = async (id: string) => {
    try {
      const entries = await answer(api.GET('/api/batches/{id}/entries', { params: { path: { id } } }));
      const stick = entries.find(({ kind }) => kind === 'stick');
      if (!stick) return;
      const batchName = varieties.find(({ code }) => code === draft.variety)?.name ?? id;
      const happenedAt = new Date().toISOString();
      const entry = { kind: 'reversal', happenedAt, entry: stick.id, reason: t.undoReason } as const;
      await outbox.add({ to: 'batch', batch: id, batchName, entry });
      await navigate('/batches');
      notice({ text: t.undone(id) });
    } catch {
      notice({ text: shared.unreachable });
    }
  };
  const select = (
    name: 'site' | 'house' | 'variety' | 'trayFormat',
    items: readonly { code: string; label: string }[],
  ) => (
    <ComboBox
      label={t[name]}
      items={[...items]}
      itemValuePath="code"
      itemLabelPath="label"
      value={draft[name]}
      required
      manualValidation
      invalid={faultOf(name) !== undefined}
      errorMessage={faultOf(name) ?? ''}
      onValueChanged={(event) => {
        if (event.detail.value === draft[name]) return;
        change(name === 'site' ? { site: event.detail.value, house: '' } : { [name]: event.detail.value });
      }}
    />
  );
  const namedFirst = (all: readonly { code: string; name: string }[]) =>
    all.map(({ code, name }) => ({ code, label: name }));
  return (
    <Dialog opened headerTitle={t.title} onOpenedChanged={(event) => !event.detail.value && close()}>
      <form
        className="stick-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void stick();
        }}
      >
        {formats.isSuccess && (sites.length === 0 || varieties.length === 0 || formats.data.length === 0) && (
          <p className="rc-warning">
            {t.nothingSetUp}{' '}
            <Link className="rc-link" to="/setup">
              {t.toSetup}
            </Link>
          </p>
        )}
        {select('variety', namedFirst(varieties))}
        {select(
          'trayFormat',
          (formats.data ?? []).map(({ code, cells: all, saleCount }) => ({
            code,
            label: t.formatWords(code, all, saleCount),
          })),
        )}
        {select('site', namedFirst(sites))}
        {select('house', namedFirst(houses.filter((house) => house.site === draft.site)))}
        <DateInput
          label={t.date}
          value={draft.date}
          onValue={(date) => change({ date })}
          fault={faultOf('date', 'stuckAt')}
          required
        />
        <TextInput
          label={t.time}
          value={draft.time}
          required
          hint={timeZone === undefined ? undefined : t.timeHelp(timeZone)}
          fault={faultOf('time')}
          onValue={(time) => change({ time })}
        />
        <NumberInput
          label={t.trays}
          value={draft.trays}
          onValue={(text) => change({ trays: text })}
          fault={faultOf('trays')}
          required
          whole
        />
        <NumberInput
          label={t.plants}
          value={draft.plants}
          onValue={(text) => change({ plants: text })}
          fault={faultOf('plants')}
          hint={
            cells !== undefined && trays !== undefined ? t.plantsHelp(format.integer(cells * trays)) : t.plantsHelpBare
          }
          whole
        />
        <div className="wide">{failure !== undefined && <ProblemNote failure={failure} timeZone={timeZone} />}</div>
        <div className="wide rc-row stick-buttons">
          <Button onClick={close}>{shared.cancel}</Button>
          {/* Vaadin's button is no submit button; Enter in a field still submits the form. */}
          <Button theme="primary" disabled={sending} onClick={() => void stick()}>
            {sending ? shared.loading : t.stick}
          </Button>
          <button type="submit" hidden />
        </div>
      </form>
    </Dialog>
  );
}
