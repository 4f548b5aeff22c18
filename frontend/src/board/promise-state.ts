import type { BoardKey, LineShortfall, LocalDate, NewOrder } from '../shared/api-types';
import { numberTyped } from '../shared/units';
import { isDate } from '../shared/weeks';
import { confidenceTyped } from './board-filter-state';
import { rowKey, type RowKey } from './board-state';

/** The promise form as typed. Nothing is corrected; `orderOf` says whether it can be sent and what is wrong where. */
export interface PromiseDraft {
  readonly customer: string;
  readonly note: string;
  readonly confidence: string;
  readonly lines: readonly DraftLine[];
}

export interface DraftLine {
  readonly id: number;
  /** Empty until an item is chosen. */
  readonly item: RowKey | '';
  readonly trays: string;
  readonly shipOn: LocalDate | '';
}

export type DraftFault = 'customer' | 'confidence' | `trays-${number}` | `shipOn-${number}` | `item-${number}`;

export function draftFor(item: BoardKey, shipOn: LocalDate, confidence: string): PromiseDraft {
  return { customer: '', note: '', confidence, lines: [{ id: 1, item: rowKey(item), trays: '', shipOn }] };
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

/** The draft's line that a shortfall speaks of; lines are numbered from 1 in the order they were sent. */
export function lineOf(draft: PromiseDraft, shortfall: LineShortfall): DraftLine | undefined {
  return draft.lines[shortfall.line - 1];
}
