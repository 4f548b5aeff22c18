import type { CellExplanation, CellPromise } from '../shared/api-types';

/** The open figure as a sum that closes: usable, less promised from it, is open, or so many too few. */
export interface LimitSum {
  readonly usable: number;
  readonly taken: number;
  readonly open: number;
  readonly tooFew: number;
}

type Opened = Pick<CellExplanation, 'limitedBy' | 'open' | 'promises'>;

/** Undefined where nothing limits: a week that is over. */
export function limitSum({ limitedBy, open }: Opened): LimitSum | undefined {
  if (!limitedBy) return undefined;
  const { capacity, promised } = limitedBy;
  return { usable: capacity, taken: promised, open, tooFew: Math.max(0, promised - capacity) };
}

/** The promises of an opened cell: those that limit its figure, of whatever date, and those of its week. */
export interface PromiseLists {
  readonly limiting: readonly CellPromise[];
  readonly ofWeek: readonly CellPromise[];
  /** One list says both. */
  readonly same: boolean;
}

export function promiseLists({ promises }: Opened): PromiseLists {
  const limiting = promises.filter(({ inLimit }) => inLimit);
  const ofWeek = promises.filter(({ inWeek }) => inWeek);
  return { limiting, ofWeek, same: promises.every(({ inLimit, inWeek }) => inLimit === inWeek) };
}
