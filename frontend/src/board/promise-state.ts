import type { BoardKey, LineShortfall, LocalDate, NewOrder } from '../shared/api-types';
import { Problem } from '../shared/problem';
import { numberTyped } from '../shared/units';
import { isDate } from '../shared/weeks';
import { confidenceTyped } from './board-filter-state';
import { rowKey, type RowKey } from './board-state';

/** The promise form as typed. Nothing is corrected; `orderOf` says whether it can be sent and what is wrong where. */
export interface PromiseDraft {
  /** The date the form itself proposed; the first line follows the opened week as long as it stands there. */
  readonly proposed: LocalDate;
  readonly customer: string;
  readonly note: string;
  readonly confidence: string;
  readonly lines: readonly DraftLine[];
}

export interface DraftLine {
  readonly id: number;
  /** Empty until an item is chosen. */
  readonly item: RowKey | '';
  /** What an item is called that the board does not show. */
  readonly itemName?: string;
  readonly trays: string;
  readonly shipOn: LocalDate | '';
}

export type DraftFault = 'customer' | 'confidence' | `trays-${number}` | `shipOn-${number}` | `item-${number}`;

export function draftFor(item: BoardKey, shipOn: LocalDate, confidence: string): PromiseDraft {
  const lines = [{ id: 1, item: rowKey(item), trays: '', shipOn }];
  return { proposed: shipOn, customer: '', note: '', confidence, lines };
}

/** The draft beside the cell of another week: what was typed stays, also a date; a date nobody touched follows. */
export function besideWeek(draft: PromiseDraft, date: LocalDate): PromiseDraft {
  const lines = draft.lines.map((line, i) =>
    i === 0 && line.shipOn === draft.proposed ? { ...line, shipOn: date } : line,
  );
  return { ...draft, proposed: date, lines };
}

/** Whether discarding it would lose something that was typed. */
export function isHalfTyped({ customer, note, lines, proposed }: PromiseDraft): boolean {
  const [first, ...more] = lines;
  return (
    customer.trim() !== '' ||
    note.trim() !== '' ||
    more.length > 0 ||
    (first?.trays ?? '') !== '' ||
    first?.shipOn !== proposed
  );
}

export function withLine(draft: PromiseDraft, id: number, change: Partial<DraftLine>): PromiseDraft {
  return { ...draft, lines: draft.lines.map((line) => (line.id === id ? { ...line, ...change } : line)) };
}

/** Another line, first for the same item and date as the last. */
export function withOneMore(draft: PromiseDraft): PromiseDraft {
  const last = draft.lines.at(-1);
  const line: DraftLine = { id: (last?.id ?? 0) + 1, item: last?.item ?? '', trays: '', shipOn: last?.shipOn ?? '' };
  return { ...draft, lines: [...draft.lines, line] };
}

export function withoutLine(draft: PromiseDraft, id: number): PromiseDraft {
  return { ...draft, lines: draft.lines.filter((line) => line.id !== id) };
}

/** What to send, or the fields that are wrong. */
export function orderOf(draft: PromiseDraft): { order: NewOrder } | { faults: ReadonlySet<DraftFault> } {
  const faults = new Set<DraftFault>();
  const customer = draft.customer.trim();
  if (customer === '') faults.add('customer');
  const confidence = confidenceTyped(draft.confidence);
  if (confidence === undefined) faults.add('confidence');
  const lines = draft.lines.flatMap(({ id, item, trays, shipOn }) => {
    const wanted = numberTyped(trays);
    if (wanted === undefined || !Number.isInteger(wanted) || wanted < 1) faults.add(`trays-${id}`);
    if (!isDate(shipOn)) faults.add(`shipOn-${id}`);
    const [variety, trayFormat, site] = item.split('~');
    if (!variety || !trayFormat || !site) {
      faults.add(`item-${id}`);
      return [];
    }
    return [{ variety, trayFormat, site, shipOn, trays: wanted ?? 0 }];
  });
  if (faults.size > 0) return { faults };
  const note = draft.note.trim();
  return { order: { customer, ...(note ? { note } : {}), ...(confidence === undefined ? {} : { confidence }), lines } };
}

/** What a refusal says of lines that are short. */
export function shortfalls(failure: unknown): readonly LineShortfall[] {
  if (!(failure instanceof Problem) || failure.kind !== 'not-enough-open') return [];
  const lines = failure.members['lines'];
  return Array.isArray(lines) ? (lines as LineShortfall[]) : [];
}

/** What of it concerns this line. */
export function shortOf(
  draft: PromiseDraft,
  line: DraftLine,
  short: readonly LineShortfall[],
): LineShortfall | undefined {
  return short.find((each) => lineOf(draft, each)?.id === line.id);
}

/** The draft's line that a shortfall speaks of; lines are numbered from 1 in the order they were sent. */
export function lineOf(draft: PromiseDraft, shortfall: LineShortfall): DraftLine | undefined {
  return draft.lines[shortfall.line - 1];
}
