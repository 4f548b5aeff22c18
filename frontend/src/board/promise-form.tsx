import { useRef, useState } from 'react';
import type { BoardRow, CellExplanation, LineShortfall, OrderView } from '../shared/api-types';
import { Button } from '../shared/button';
import { DateInput } from '../shared/date-input';
import { useFormats } from '../shared/formats';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { NumberInput } from '../shared/number-input';
import { Problem } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { TextInput } from '../shared/text-input';
import { useProblemWords } from '../shared/use-problem-words';
import { placeOrder, releaseOrder } from './board-api';
import { boardMessages } from './board-messages';
import { rowKey, type RowKey } from './board-state';
import { Shortfalls } from './promise-shortfalls';
import {
  orderOf,
  shortfalls,
  shortOf,
  withLine,
  withOneMore,
  withoutLine,
  type DraftFault,
  type DraftLine,
  type PromiseDraft,
} from './promise-state';

interface PromiseFormProps {
  readonly data: CellExplanation;
  readonly rows: ReadonlyMap<RowKey, BoardRow>;
  readonly draft: PromiseDraft;
  readonly edit: (draft: PromiseDraft) => void;
  readonly done: () => void;
}

/** Places in an order whose faults are written beside their fields. */
const SAID_BESIDE = /^(customer|confidence|lines\[\d+\]\.(trays|shipOn))$/;

const NO_FAULTS: ReadonlySet<DraftFault> = new Set();

/** Promises trays of the open cell, and more lines if wanted: all of them or none. */
export function PromiseForm({ data, rows, draft, edit, done }: PromiseFormProps) {
  const t = useMessages(boardMessages);
  const refusals = useProblemWords();
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const [faults, setFaults] = useState(NO_FAULTS);
  const [failure, setFailure] = useState<unknown>();
  const [sending, setSending] = useState(false);
  // The same wish sent twice must count once; another wish is another order.
  const sent = useRef<{ body: string; key: string } | undefined>(undefined);

  const change = (next: PromiseDraft) => {
    edit(next);
    setFaults(NO_FAULTS);
    setFailure(undefined);
  };
  const send = async () => {
    const made = orderOf(draft);
    if ('faults' in made) {
      setFaults(made.faults);
      return;
    }
    const body = JSON.stringify(made.order);
    if (sent.current?.body !== body) sent.current = { body, key: newKey() };
    setSending(true);
    setFailure(undefined);
    try {
      const order = await placeOrder(made.order, sent.current.key);
      const trays = made.order.lines.reduce((sum, line) => sum + line.trays, 0);
      notice({
        text: t.promisedDone(trays, format.integer(trays), order.customer, String(order.number)),
        undo: () => undo(order),
      });
      done();
    } catch (refused) {
      // A refusal is final for its key; asking again later is a new question.
      if (refused instanceof Problem) sent.current = undefined;
      setFailure(refused);
    } finally {
      setSending(false);
    }
  };
  const undo = async (order: OrderView) => {
    try {
      await releaseOrder(order.id);
      notice({ text: t.released(String(order.number)) });
    } catch {
      notice({ text: shared.unreachable, undo: () => undo(order) });
    }
  };
  const short = shortfalls(failure);
  const faultAt = (path: string) => refusals.faultOf(failure, path);
  const besideFields =
    failure instanceof Problem &&
    failure.fieldFaults.length > 0 &&
    failure.fieldFaults.every(({ field }) => SAID_BESIDE.test(field));
  return (
    <form
      className="promise"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <TextInput
        label={t.customer}
        className="promise-customer"
        value={draft.customer}
        required
        fault={faultAt('customer') ?? (faults.has('customer') ? t.customerNeeded : undefined)}
        onValue={(customer) => change({ ...draft, customer })}
      />
      {draft.lines.map((line, i) => (
        <Line
          key={line.id}
          line={line}
          first={i === 0}
          named={i > 0 || line.item !== rowKey(data)}
          short={shortOf(draft, line, short)}
          rows={rows}
          faults={faults}
          faultAt={(part) => faultAt(`lines.${i}.${part}`)}
          change={(part) => change(withLine(draft, line.id, part))}
          remove={() => change(withoutLine(draft, line.id))}
        />
      ))}
      <div className="promise-pair">
        <TextInput
          label={t.confidence}
          value={draft.confidence}
          fault={faultAt('confidence') ?? (faults.has('confidence') ? t.confidenceWrong : undefined)}
          onValue={(confidence) => change({ ...draft, confidence })}
        />
        <TextInput label={t.note} value={draft.note} onValue={(note) => change({ ...draft, note })} />
      </div>
      {short.length > 0 ? (
        <Shortfalls draft={draft} short={short} data={data} change={change} />
      ) : besideFields ? (
        <div className="rc-problem" role="alert">
          <p>✕ {t.checkFields}</p>
        </div>
      ) : (
        <ProblemNote failure={failure} />
      )}
      <div className="rc-row">
        {/* A web component's button does not submit the form around it. */}
        <Button theme="primary" disabled={sending} onClick={() => void send()}>
          {t.promise}
        </Button>
        <Button theme="tertiary" onClick={() => change(withOneMore(draft))}>
          {t.addLine}
        </Button>
        {draft.lines.length > 1 && <span className="rc-quiet">{t.allOrNone}</span>}
        <button type="submit" hidden />
      </div>
    </form>
  );
}

interface LineProps {
  readonly line: DraftLine;
  readonly first: boolean;
  /** Whether the line says which item it is of; the first is of the cell that is open, unless changed. */
  readonly named: boolean;
  /** The refusal of just this line. */
  readonly short: LineShortfall | undefined;
  readonly rows: ReadonlyMap<RowKey, BoardRow>;
  readonly faults: ReadonlySet<DraftFault>;
  readonly faultAt: (part: 'trays' | 'shipOn') => string | undefined;
  readonly change: (part: Partial<DraftLine>) => void;
  readonly remove: () => void;
}

function Line({ line, first, named, short, rows, faults, faultAt, change, remove }: LineProps) {
  const t = useMessages(boardMessages);
  const sites = useSites().data;
  const format = useFormats();
  const look = ['promise-line', ...(first ? [] : ['promise-more']), ...(short ? ['promise-short'] : [])];
  return (
    <div className={look.join(' ')}>
      {named && (
        <label className="promise-item">
          <span className="rc-quiet">{t.item}</span>
          <select
            value={line.item}
            onChange={(event) => change({ item: event.target.value as RowKey })}
            aria-invalid={faults.has(`item-${line.id}`)}
          >
            {!rows.has(line.item as RowKey) && (
              <option value={line.item}>{line.itemName ?? (line.item || t.itemNeeded)}</option>
            )}
            {[...rows.values()].map((row) => (
              <option key={rowKey(row)} value={rowKey(row)}>
                {row.varietyName} · {row.trayFormat} · {sites?.find(({ code }) => code === row.site)?.name ?? row.site}
              </option>
            ))}
          </select>
        </label>
      )}
      <NumberInput
        label={t.traysAsked}
        value={line.trays}
        whole
        required
        fault={
          faults.has(`trays-${line.id}`)
            ? t.wholeTrays
            : (faultAt('trays') ?? (short && t.onlyOpen(format.integer(short.open))))
        }
        onValue={(trays) => change({ trays })}
      />
      <DateInput
        label={t.shipOn}
        value={line.shipOn}
        required
        fault={faults.has(`shipOn-${line.id}`) ? t.dateWrong : faultAt('shipOn')}
        onValue={(shipOn) => change({ shipOn })}
      />
      {!first && (
        <Button theme="tertiary" aria-label={t.removeLine} title={t.removeLine} onClick={remove}>
          ✕
        </Button>
      )}
    </div>
  );
}
