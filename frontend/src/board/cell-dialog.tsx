import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useEffect, useRef, useState } from 'react';
import { Offered } from '../people/offered';
import type { BoardCell, BoardKey, BoardRow, BoardWeek, CellExplanation } from '../shared/api-types';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { keys } from '../shared/query-keys';
import { Failed, Loading } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { weekNumber } from '../shared/weeks';
import { loadCell } from './board-api';
import { boardMessages } from './board-messages';
import { useLessSure } from './board-speech';
import type { RowKey } from './board-state';
import { CellPicture } from './cell-picture';
import { CellPromises } from './cell-promises';
import { CellFaulty, CellLots } from './cell-tables';
import { limitSum } from './limit-state';
import { PromiseForm } from './promise-form';
import { besideWeek, draftFor, isHalfTyped, type PromiseDraft } from './promise-state';
import './cell-dialog.css';

interface CellDialogProps {
  readonly cell: BoardKey & { readonly week: string };
  /** The row as the board shows it; a change of it means that this cell has changed too. */
  readonly row: BoardRow | undefined;
  readonly rows: ReadonlyMap<RowKey, BoardRow>;
  readonly weeks: readonly BoardWeek[];
  readonly confidence: number;
  /** The moment looked back to; undefined is now. */
  readonly asOf: string | undefined;
  readonly siteName: (code: string) => string;
  readonly goTo: (week: string) => void;
  readonly close: () => void;
}

/** An answer this much after the moment asked for is not of that moment. */
const SAME_MOMENT_MS = 60_000;

/** One figure of the board, opened: what it is made of, what limits it, and the form to promise from it. */
export function CellDialog({ cell, row, rows, weeks, confidence, asOf, siteName, goTo, close }: CellDialogProps) {
  const t = useMessages(boardMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const { data, error, refetch } = useQuery({
    queryKey: keys.boardCell(cell, confidence, asOf),
    queryFn: ({ signal }) => loadCell({ ...cell, confidence, asOf }, signal),
    placeholderData: keepPreviousData,
    staleTime: 0,
  });
  const seen = useRef(row);
  useEffect(() => {
    if (seen.current !== row) void refetch();
    seen.current = row;
  }, [row, refetch]);

  // Kept here, above the week that is open, so that looking at another one loses nothing of a half-typed order.
  const [typed, setTyped] = useState<PromiseDraft>();
  const halfTyped = typed !== undefined && isHalfTyped(typed);
  const [asking, setAsking] = useState(false);
  const leave = () => (halfTyped ? setAsking(true) : close());
  useEscape(halfTyped, () => setAsking(!asking));

  const index = weeks.findIndex(({ week }) => week === cell.week);
  const before = weeks[index - 1]?.week;
  const after = index < 0 ? undefined : weeks[index + 1]?.week;
  const title = `${row?.varietyName ?? cell.variety} · ${cell.trayFormat} · ${siteName(cell.site)}`;
  return (
    <Dialog
      opened
      className="cell-dialog"
      aria-label={title}
      headerTitle={title}
      header={
        <Button theme="tertiary" aria-label={shared.close} onClick={leave}>
          ✕
        </Button>
      }
      onClosed={close}
      noCloseOnEsc={halfTyped}
      noCloseOnOutsideClick={halfTyped}
      theme="no-padding"
    >
      <div className="cell">
        {asking && halfTyped && <HalfTyped discard={close} keep={() => setAsking(false)} />}
        <div className="cell-week">
          <Button
            theme="tertiary"
            disabled={before === undefined}
            aria-label={t.previousCell}
            onClick={() => before && goTo(before)}
          >
            ◂
          </Button>
          <strong>{t.week(weekNumber(cell.week))}</strong>
          <span>{data && format.date(data.date)}</span>
          <Button
            theme="tertiary"
            disabled={after === undefined}
            aria-label={t.nextCell}
            onClick={() => after && goTo(after)}
          >
            ▸
          </Button>
          <span className="rc-quiet">
            {t.confidence} {format.percent(confidence, 2)}
          </span>
        </div>
        {data && asOf !== undefined && Date.parse(data.asOf) - Date.parse(asOf) > SAME_MOMENT_MS ? (
          // The explanation is of now: what is shown beside it must not be taken for that of then.
          <Then cell={row?.cells.find(({ week }) => week === cell.week)} confidence={confidence} />
        ) : data ? (
          <Explained
            data={data}
            rows={rows}
            then={asOf !== undefined}
            draft={typed ? besideWeek(typed, data.date) : draftFor(data, data.date, format.percent(data.confidence, 2))}
            change={setTyped}
            close={close}
          />
        ) : error ? (
          <Failed failure={error} retry={() => void refetch()} />
        ) : (
          <Loading />
        )}
      </div>
    </Dialog>
  );
}

/** An open calendar takes Escape for itself. */
const TAKES_ESCAPE = 'vaadin-date-picker[opened]';

/** Escape while `on`, which the dialog then leaves alone. */
function useEscape(on: boolean, pressed: () => void): void {
  const latest = useRef(pressed);
  useEffect(() => {
    latest.current = pressed;
  });
  useEffect(() => {
    if (!on) return;
    const listen = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !document.querySelector(TAKES_ESCAPE)) latest.current();
    };
    document.addEventListener('keydown', listen, { capture: true });
    return () => document.removeEventListener('keydown', listen, { capture: true });
  }, [on]);
}

/** Asks before a half-typed order is lost. */
function HalfTyped({ discard, keep }: { discard: () => void; keep: () => void }) {
  const t = useMessages(boardMessages);
  return (
    <div className="rc-warning cell-half-typed" role="alert">
      <p>▲ {t.halfTyped}</p>
      <p className="rc-row">
        <Button theme="primary" autoFocus onClick={keep}>
          {t.keepTyping}
        </Button>
        <Button onClick={discard}>{t.discardOrder}</Button>
      </p>
    </div>
  );
}

interface ExplainedProps {
  readonly data: CellExplanation;
  readonly rows: ReadonlyMap<RowKey, BoardRow>;
  /** Looking back: nothing can be promised or released. */
  readonly then: boolean;
  readonly draft: PromiseDraft;
  readonly change: (draft: PromiseDraft) => void;
  readonly close: () => void;
}

function Explained({ data, rows, then, draft, change, close }: ExplainedProps) {
  const t = useMessages(boardMessages);
  const lessSure = useLessSure(data.confidence);
  return (
    <>
      <Figures data={data} confidence={data.confidence} />
      <div className="cell-columns">
        <section aria-labelledby="cell-made-of">
          <h3 id="cell-made-of">{t.madeOf}</h3>
          <CellPicture data={data} />
          <p className="cell-limit">{useLimit(data)}</p>
          {data.lessSure > 0 && <p className="cell-limit">~ {lessSure(data)}</p>}
        </section>
        {!then && (
          <Offered right="sell" site={data.site}>
            <section aria-labelledby="cell-promise">
              <h3 id="cell-promise">{t.promiseTitle}</h3>
              <PromiseForm data={data} rows={rows} draft={draft} edit={change} done={close} />
            </section>
          </Offered>
        )}
      </div>
      <CellFaulty data={data} />
      <CellLots data={data} />
      <CellPromises data={data} then={then} />
    </>
  );
}

/** Only the figures of then, where what they were made of cannot be told any more. */
function Then({ cell, confidence }: { cell: BoardCell | undefined; confidence: number }) {
  const t = useMessages(boardMessages);
  return (
    <>
      {cell && <Figures data={cell} confidence={confidence} />}
      <p className="rc-warning">▲ {t.onlyNow}</p>
    </>
  );
}

function Figures({ data, confidence }: { data: BoardCell; confidence: number }) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const lessSure = useLessSure(confidence);
  return (
    <dl className="cell-figures">
      {(['open', 'likely', 'ready', 'promised'] as const).map((figure) => (
        <div key={figure} className={`figure-${figure}`}>
          <dt>{t[figure]}</dt>
          <dd>
            {figure === 'promised' && data.lessSure > 0 && <span title={lessSure(data)}>~</span>}
            {format.integer(data[figure])}
          </dd>
        </div>
      ))}
      {data.atRisk > 0 && (
        <div className="rc-at-risk">
          <dt>{t.atRisk}</dt>
          <dd>▲ {format.integer(data.atRisk)}</dd>
        </div>
      )}
    </dl>
  );
}

/** The limiting set of ship dates, in words. */
function useLimit(data: CellExplanation): string {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const sum = limitSum(data);
  const { limitedBy, ready, date, confidence } = data;
  if (!sum || !limitedBy || limitedBy.dates.length === 0 || (ready === 0 && sum.usable === 0)) return t.limitedNothing;
  const [usable, taken, open, tooFew] = [sum.usable, sum.taken, sum.open, sum.tooFew].map(format.integer) as [
    string,
    string,
    string,
    string,
  ];
  const alone = limitedBy.dates.length === 1 && limitedBy.dates[0] === date;
  const said = alone
    ? t.limitedSelf(usable, taken, open)
    : t.limitedBy(limitedBy.dates.map(format.dayMonth).join(', '), usable, taken, open);
  return [
    said,
    sum.tooFew > 0 ? t.limitedTooFew(tooFew) : '',
    limitedBy.confidence < confidence ? t.limitedAt(format.percent(limitedBy.confidence, 2)) : '',
  ]
    .filter(Boolean)
    .join(' ');
}
