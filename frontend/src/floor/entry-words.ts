import type { EntryView, NewEntry } from '../shared/api-types';
import type { Formats } from '../shared/formats';
import type { EntryMessages } from './entry-messages';

/** An entry as one short sentence, whether it was just pressed or comes from the ledger. */
export interface SaidWith {
  readonly t: EntryMessages;
  readonly format: Formats;
  readonly houseName: (code: string) => string;
  /** By the order's id; undefined where it is not known. */
  readonly customerOf?: (order: string) => string | undefined;
}

export function entryWords(entry: NewEntry | EntryView, { t, format, houseName, customerOf }: SaidWith): string {
  const n = format.integer;
  const { kind } = entry;
  switch (kind) {
    case 'stick':
      return t.saidStick(n(entry.trays ?? 0), n(entry.plants ?? 0), houseName(entry.house ?? ''));
    case 'count': {
      if ('blanks' in entry && entry.blanks !== null) {
        const sample = t.saidSample(n(entry.blanks), n(entry.sampledCells ?? 0), n(entry.sampledTrays ?? 0));
        return 'aliveAfter' in entry && entry.aliveAfter !== null
          ? `${t.saidAlive(n(entry.aliveAfter))} (${sample})`
          : sample;
      }
      return t.saidCount(n(('plants' in entry ? entry.plants : 0) ?? 0));
    }
    case 'loss':
      return t.saidLoss(n(entry.plants ?? 0), t[entry.cause ?? 'other']);
    case 'stage':
      return t[`reached${entry.stage ?? 'STICK'}`];
    case 'look': {
      const stage = t[`reached${entry.stage ?? 'STICK'}`];
      const cells = n(entry.cells ?? 0);
      return entry.reached ? t.saidLook(n(entry.reached), cells, stage) : t.saidLookNone(cells, stage);
    }
    case 'move':
      return t.saidMove(houseName(entry.house ?? ''));
    case 'ship':
      return [
        t.saidShip(n(entry.trays ?? 0)),
        entry.plants ? t.saidPlants(n(entry.plants)) : '',
        entry.order ? forWhom(customerOf?.(entry.order), t) : '',
      ]
        .filter(Boolean)
        .join(', ');
    case 'reversal':
      return entry.reason ?? '';
  }
}

function forWhom(customer: string | undefined, t: EntryMessages): string {
  return customer === undefined ? t.saidForOrder : t.saidFor(customer);
}

/** What was just pressed, with what the books had: "Count: 190 of 2,016". */
export function echoWords(entry: NewEntry, alive: number, said: SaidWith): string {
  const { t, format } = said;
  const kind = t[`kind${entry.kind}`];
  if (entry.kind === 'count' && 'plants' in entry) {
    return `${kind}: ${t.saidOf(format.integer(entry.plants ?? 0), format.integer(alive))}`;
  }
  if (entry.kind === 'loss') {
    return `${kind}: ${t.saidOf(format.integer(entry.plants), format.integer(alive))}, ${t[entry.cause]}`;
  }
  return `${kind}: ${entryWords(entry, said)}`;
}
