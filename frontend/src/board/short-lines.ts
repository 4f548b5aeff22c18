import type { BoardKey, LineShortfall } from '../shared/api-types';

/** A refusal of one line, for tests: none open on 30 November, and no other date with enough. */
export function short(line: number, of: BoardKey & { readonly asked: number }): LineShortfall {
  return {
    ...of,
    line,
    shipOn: '2026-11-30',
    trays: of.asked,
    open: 0,
    nearestDate: null,
    nearestOpen: null,
    earlierDate: null,
    earlierOpen: null,
    laterDate: null,
    laterOpen: null,
  };
}
