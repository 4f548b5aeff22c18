import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { LOSS_CAUSES, type LossCause } from '../shared/api-types';
import { useClosedWords } from '../shared/closed-houses';
import { useFormats } from '../shared/formats';
import { answer, api } from '../shared/http';
import { useMessages } from '../shared/messages';
import { keys } from '../shared/query-keys';
import { useHouses } from '../shared/setup-lists';
import { AmountPad } from './amount-pad';
import { CountForm } from './count-forms';
import { entryMessages } from './entry-messages';
import { floorMessages } from './floor-messages';
import {
  housesToMoveTo,
  isLossCause,
  likeliestPromise,
  promisesFor,
  stagesAhead,
  traysFilled,
  traysFor,
  wholeTyped,
  type Action,
} from './floor-state';
import { Choice, Form, useFormatOf, type EntryFormProps } from './form-parts';
import { LookForm } from './look-form';

/** One form per thing that can be recorded, made of large buttons and a keypad. */

export function EntryForm({ action, ...props }: EntryFormProps & { action: Action }) {
  const Chosen = {
    count: CountForm,
    loss: LossForm,
    look: LookForm,
    stage: StageForm,
    move: MoveForm,
    ship: ShipForm,
  }[action];
  return <Chosen {...props} />;
}

function LossForm({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const words = useMessages(entryMessages);
  const format = useFormats();
  const old = before?.kind === 'loss' ? before : undefined;
  const [typed, setTyped] = useState(old ? String(old.plants) : '');
  const [cause, setCause] = useState<LossCause | undefined>(old && isLossCause(old.cause) ? old.cause : undefined);
  const [note, setNote] = useState(old?.note ?? '');
  const [tried, setTried] = useState(false);
  const plants = wholeTyped(typed);
  const lacks = plants === undefined || plants === 0;
  return (
    <Form
      busy={busy}
      submit={() => {
        if (lacks || cause === undefined) setTried(true);
        else record({ kind: 'loss', plants, cause, ...(note.trim() ? { note: note.trim() } : {}) });
      }}
      warning={
        plants !== undefined && plants > batch.plants.alive
          ? t.moreThanAlive(format.integer(batch.plants.alive))
          : undefined
      }
    >
      <AmountPad
        chosen="plants"
        choose={() => undefined}
        onValue={(_, value) => setTyped(value)}
        fields={[
          {
            name: 'plants',
            label: t.plantsLost,
            value: typed,
            placeholder: '0',
            hint: t.aliveNow(format.integer(batch.plants.alive)),
            fault: tried && lacks ? t.typeAmount : undefined,
          },
        ]}
      />
      <fieldset className="choices">
        <legend>
          {t.cause}
          {tried && cause === undefined && <span className="rc-broken"> ✕ {t.chooseCause}</span>}
        </legend>
        {LOSS_CAUSES.map((each) => (
          <Choice key={each} chosen={cause === each} choose={() => setCause(each)}>
            {words[each]}
          </Choice>
        ))}
      </fieldset>
      <label className="note">
        <span>{t.note}</span>
        <input value={note} maxLength={300} autoComplete="off" onChange={(event) => setNote(event.target.value)} />
      </label>
    </Form>
  );
}

function StageForm({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const words = useMessages(entryMessages);
  const ahead = stagesAhead(batch.stage);
  const [stage, setStage] = useState(
    before?.kind === 'stage' && ahead.includes(before.stage) ? before.stage : ahead[0],
  );
  return (
    <Form busy={busy} submit={() => stage && record({ kind: 'stage', stage })}>
      <fieldset className="choices tall">
        <legend>{t.whichStage}</legend>
        {ahead.map((each) => (
          <Choice key={each} chosen={stage === each} choose={() => setStage(each)}>
            {words[`reached${each}`]}
          </Choice>
        ))}
      </fieldset>
      <p className="rc-quiet">{t.stageHelp}</p>
    </Form>
  );
}

/** Into a house that is closed nobody carries a batch now; what was carried in before it was treated is written down. */
function MoveForm({ batch, before, record, busy, earlier }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const houses = housesToMoveTo(batch, useHouses().data ?? []);
  const closedWords = useClosedWords();
  const [house, setHouse] = useState(before?.kind === 'move' ? before.house : undefined);
  return (
    <Form
      busy={busy}
      unready={house === undefined}
      submit={() => house !== undefined && record({ kind: 'move', house })}
    >
      <fieldset className="choices">
        <legend>{t.toWhere}</legend>
        {houses.map((each) => {
          const closed = closedWords(each.code, 'short');
          return (
            <Choice
              key={each.code}
              chosen={house === each.code}
              choose={() => setHouse(each.code)}
              disabled={closed !== undefined && !earlier}
            >
              {each.name}
              <small>{each.code}</small>
              {closed !== undefined && <small className="rc-broken">✕ {closed}</small>}
            </Choice>
          );
        })}
      </fieldset>
    </Form>
  );
}

const NO_PROMISE = '';

function ShipForm({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const format = useFormats();
  const trayFormat = useFormatOf(batch);
  const old = before?.kind === 'ship' ? before : undefined;
  // Undefined until somebody says otherwise: then it is the likeliest promise, and what fills it.
  const [typed, setTyped] = useState(old ? String(old.trays) : undefined);
  const [promise, setPromise] = useState(old && (old.order === undefined ? NO_PROMISE : `${old.order} ${old.line}`));
  const [tried, setTried] = useState(false);
  const orders = useQuery({
    queryKey: keys.openOrdersOf(batch.variety, batch.trayFormat, batch.site),
    queryFn: ({ signal }) => {
      const { variety, trayFormat: wanted, site } = batch;
      const query = { state: 'open', variety, trayFormat: wanted, site };
      return answer(api.GET('/api/orders', { params: { query }, signal }));
    },
  });
  const promises = promisesFor(batch, orders.data ?? []);
  const most = trayFormat && traysFilled(batch, trayFormat);
  const chosen =
    promise === undefined
      ? likeliestPromise(promises)
      : promises.find((each) => `${each.order} ${each.line}` === promise);
  const likeliest = traysFor(chosen, most);
  const amount = typed ?? String(likeliest ?? '');
  const trays = wholeTyped(amount);
  const lacks = trays === undefined || trays === 0;
  return (
    <Form
      busy={busy}
      submit={() => {
        if (lacks) setTried(true);
        else record({ kind: 'ship', trays, ...(chosen ? { order: chosen.order, line: chosen.line } : {}) });
      }}
      warning={
        trays !== undefined && most !== undefined && trays > most ? t.moreThanFilled(format.integer(most)) : undefined
      }
    >
      <AmountPad
        chosen="trays"
        choose={() => undefined}
        onValue={(_, value) => setTyped(value)}
        fields={[
          {
            name: 'trays',
            label: t.traysShipped,
            value: typed ?? '',
            // Not yet typed, so that the first digit replaces it.
            ...(likeliest === undefined ? {} : { start: likeliest }),
            placeholder: typed === undefined ? amount || '0' : '0',
            hint: most === undefined ? undefined : t.fills(format.integer(most)),
            fault: tried && lacks ? t.typeAmount : undefined,
          },
        ]}
      />
      <fieldset className="choices tall">
        <legend>{t.forPromise}</legend>
        <Choice chosen={chosen === undefined} choose={() => setPromise(NO_PROMISE)}>
          {t.noPromise}
        </Choice>
        {promises.map((each) => (
          <Choice
            key={`${each.order} ${each.line}`}
            chosen={each === chosen}
            choose={() => setPromise(`${each.order} ${each.line}`)}
          >
            <span>
              {each.customer}, {format.dayMonth(each.shipOn)}
            </span>
            <small>
              {t.traysLeft(format.integer(each.traysLeft))}
              {each.onThisBatch && `, ${t.onThisBatch}`}
            </small>
          </Choice>
        ))}
        {orders.isPending && <p className="rc-quiet">{t.loadingPromises}</p>}
        {orders.isError && <p className="rc-at-risk">▲ {t.promisesFailed}</p>}
      </fieldset>
    </Form>
  );
}
