import { useQuery } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import {
  LOSS_CAUSES,
  type BatchView,
  type LossCause,
  type NewEntry,
  type OrderView,
  type TrayFormat,
} from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { at, getJson } from '../shared/http';
import { useMessages } from '../shared/messages';
import { useHouses, useTrayFormats } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { AmountPad } from './amount-pad';
import { entryMessages } from './entry-messages';
import { floorMessages } from './floor-messages';
import {
  aliveBySample,
  housesToMoveTo,
  isLossCause,
  places,
  promisesFor,
  sampleFault,
  stagesAhead,
  traysFilled,
  wholeTyped,
  type Action,
  type Draft,
} from './floor-state';

/** One form per thing that can be recorded, made of large buttons and a keypad. */
export interface EntryFormProps {
  readonly batch: BatchView;
  /** A refused entry that is being mended. */
  readonly before: NewEntry | undefined;
  readonly record: (draft: Draft) => void;
  readonly busy: boolean;
}

export function EntryForm({ action, ...props }: EntryFormProps & { action: Action }) {
  const Form = { count: CountForm, loss: LossForm, stage: StageForm, move: MoveForm, ship: ShipForm }[action];
  return <Form {...props} />;
}

function CountForm({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const [whole, setWhole] = useState(!(before?.kind === 'count' && 'blanks' in before));
  return (
    <>
      <div className="two" role="group" aria-label={t.count}>
        <Choice chosen={whole} choose={() => setWhole(true)}>
          {t.countAll}
        </Choice>
        <Choice chosen={!whole} choose={() => setWhole(false)}>
          {t.countSample}
        </Choice>
      </div>
      {whole ? (
        <FullCount batch={batch} before={before} record={record} busy={busy} />
      ) : (
        <SampledCount batch={batch} before={before} record={record} busy={busy} />
      )}
    </>
  );
}

function FullCount({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const format = useFormats();
  const cells = useFormatOf(batch)?.cells;
  const [typed, setTyped] = useState(before?.kind === 'count' && 'plants' in before ? String(before.plants) : '');
  const [tried, setTried] = useState(false);
  const plants = wholeTyped(typed);
  const most = cells === undefined ? undefined : places(batch, cells);
  const difference = plants === undefined ? undefined : plants - batch.plants.alive;
  return (
    <Form
      busy={busy}
      submit={() => (plants === undefined ? setTried(true) : record({ kind: 'count', plants }))}
      warning={
        plants !== undefined && most !== undefined && plants > most ? t.moreThanStuck(format.integer(most)) : undefined
      }
    >
      <AmountPad
        chosen="plants"
        choose={() => undefined}
        onValue={(_, value) => setTyped(value)}
        fields={[
          {
            name: 'plants',
            label: t.plantsAlive,
            value: typed,
            start: batch.plants.alive,
            placeholder: '–',
            hint:
              difference === undefined
                ? t.booksSay(format.integer(batch.plants.alive))
                : difference === 0
                  ? t.sameAsBooks
                  : t.difference(signed(difference, format.integer)),
            fault: tried && plants === undefined ? t.typeAmount : undefined,
          },
        ]}
      />
    </Form>
  );
}

function SampledCount({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const format = useFormats();
  const cellsPerTray = useFormatOf(batch)?.cells;
  const old = before?.kind === 'count' && 'blanks' in before ? before : undefined;
  const [typed, setTyped] = useState({
    trays: old ? String(old.sampledTrays) : '',
    cells: old ? String(old.sampledCells) : '',
    blanks: old ? String(old.blanks) : '',
  });
  const [chosen, setChosen] = useState('trays');
  const [tried, setTried] = useState(false);

  const trays = wholeTyped(typed.trays);
  const allCells = trays === undefined || cellsPerTray === undefined ? undefined : trays * cellsPerTray;
  const cells = typed.cells === '' ? allCells : wholeTyped(typed.cells);
  const blanks = wholeTyped(typed.blanks);
  const sample =
    trays === undefined || cells === undefined || blanks === undefined ? undefined : { trays, cells, blanks };
  // Each field is judged as soon as it is typed, without waiting for the last one.
  const fault =
    trays !== undefined && cellsPerTray !== undefined
      ? sampleFault({ trays, cells: cells ?? 1, blanks: blanks ?? 0 }, batch, cellsPerTray)
      : undefined;
  const beside = (field: string) => (fault?.endsWith(field) ? t[fault] : undefined);
  const missing = (value: number | undefined) => (tried && value === undefined ? t.typeAmount : undefined);
  const inPlaces = cellsPerTray === undefined ? undefined : places(batch, cellsPerTray);

  return (
    <Form
      busy={busy}
      submit={() => {
        if (!sample || fault) setTried(true);
        else record({ kind: 'count', sampledTrays: sample.trays, sampledCells: sample.cells, blanks: sample.blanks });
      }}
    >
      <AmountPad
        chosen={chosen}
        choose={setChosen}
        onValue={(name, value) => setTyped((all) => ({ ...all, [name]: value }))}
        fields={[
          {
            name: 'trays',
            label: t.sampleTrays,
            value: typed.trays,
            placeholder: '–',
            fault: beside('trays') ?? missing(trays),
          },
          {
            name: 'cells',
            label: t.sampleCells,
            value: typed.cells,
            start: allCells ?? 0,
            placeholder: allCells === undefined ? '–' : String(allCells),
            hint: trays !== undefined && cellsPerTray !== undefined ? `${trays} × ${cellsPerTray}` : undefined,
            fault: beside('cells') ?? missing(cells),
          },
          {
            name: 'blanks',
            label: t.sampleBlanks,
            value: typed.blanks,
            placeholder: '–',
            fault: beside('blanks') ?? missing(blanks),
          },
        ]}
      />
      <p className="would-be" role="status">
        {sample && !fault && inPlaces !== undefined && (
          <>
            <strong>{t.wouldBe(format.integer(aliveBySample(sample, inPlaces)))}</strong>{' '}
            {t.ofPlaces(format.integer(inPlaces))}, {t.booksSay(format.integer(batch.plants.alive))}
          </>
        )}
      </p>
    </Form>
  );
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

function MoveForm({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const houses = housesToMoveTo(batch, useHouses().data ?? []);
  const [house, setHouse] = useState(before?.kind === 'move' ? before.house : undefined);
  return (
    <Form
      busy={busy}
      unready={house === undefined}
      submit={() => house !== undefined && record({ kind: 'move', house })}
    >
      <fieldset className="choices">
        <legend>{t.toWhere}</legend>
        {houses.map((each) => (
          <Choice key={each.code} chosen={house === each.code} choose={() => setHouse(each.code)}>
            {each.name}
            <small>{each.code}</small>
          </Choice>
        ))}
      </fieldset>
    </Form>
  );
}

function ShipForm({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const format = useFormats();
  const trayFormat = useFormatOf(batch);
  const old = before?.kind === 'ship' ? before : undefined;
  const [typed, setTyped] = useState(old ? String(old.trays) : '');
  const [promise, setPromise] = useState(old?.order === undefined ? undefined : `${old.order} ${old.line}`);
  const [tried, setTried] = useState(false);
  const orders = useQuery({
    queryKey: ['orders', 'open'],
    queryFn: ({ signal }) => getJson<readonly OrderView[]>(at`/orders`, { state: 'open' }, signal),
  });
  const promises = promisesFor(batch, orders.data ?? []);
  const trays = wholeTyped(typed);
  const lacks = trays === undefined || trays === 0;
  const most = trayFormat && traysFilled(batch, trayFormat);
  const chosen = promises.find((each) => `${each.order} ${each.line}` === promise);
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
            value: typed,
            placeholder: '0',
            hint: most === undefined ? undefined : t.fills(format.integer(most)),
            fault: tried && lacks ? t.typeAmount : undefined,
          },
        ]}
      />
      <fieldset className="choices tall">
        <legend>{t.forPromise}</legend>
        <Choice chosen={chosen === undefined} choose={() => setPromise(undefined)}>
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

// --- Parts -------------------------------------------------------------------------------------------------------

function Form(props: {
  submit: () => void;
  busy: boolean;
  unready?: boolean;
  warning?: string | undefined;
  children: ReactNode;
}) {
  const t = useMessages(floorMessages);
  const shared = useMessages(sharedMessages);
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!props.busy && !props.unready) props.submit();
      }}
    >
      {props.children}
      <p className="floor-warning" role="status">
        {props.warning && <span className="rc-at-risk">▲ {props.warning}</span>}
      </p>
      <div className="record-bar">
        <button type="submit" className="floor-button primary" disabled={props.busy || props.unready}>
          {props.busy ? shared.loading : t.record}
        </button>
      </div>
    </form>
  );
}

export function Choice({ chosen, choose, children }: { chosen: boolean; choose: () => void; children: ReactNode }) {
  return (
    <button type="button" className="floor-button choice" aria-pressed={chosen} onClick={choose}>
      <span className="choice-mark" aria-hidden="true">
        {chosen ? '✓' : ''}
      </span>
      <span className="choice-text">{children}</span>
    </button>
  );
}

function useFormatOf(batch: BatchView): TrayFormat | undefined {
  return useTrayFormats().data?.find((format) => format.code === batch.trayFormat);
}

export function signed(n: number, integer: (n: number) => string): string {
  return n > 0 ? `+${integer(n)}` : `−${integer(Math.abs(n))}`;
}
