import { clockTyped } from '../shared/as-of-state';
import type { NewTreatment, Purpose, TreatmentView } from '../shared/climate-types';
import { numberTyped } from '../shared/units';
import { isDate } from '../shared/weeks';
import { instantOf } from '../shared/zoned-time';

/** The record of treatments: what is typed, and which houses are closed by it. Never a product or rate of its own. */

export interface TreatmentDraft {
  readonly house: string;
  readonly batch: string;
  readonly purpose: Purpose;
  readonly product: string;
  readonly rate: string;
  readonly appliedBy: string;
  readonly date: string;
  readonly time: string;
  readonly reentryHours: string;
  readonly note: string;
}

export type TreatmentFault = 'choose' | 'needed' | 'noDate' | 'noTime' | 'number';
export type TreatmentFaults = Partial<Readonly<Record<keyof TreatmentDraft, TreatmentFault>>>;

/** What to send, or what is wrong by field. */
export function treatmentOf(
  draft: TreatmentDraft,
  timeZone: string | undefined,
): { readonly treatment: NewTreatment } | { readonly faults: TreatmentFaults } {
  const faults: { -readonly [K in keyof TreatmentFaults]: TreatmentFault } = {};
  if (draft.house === '') faults.house = 'choose';
  for (const name of ['product', 'rate', 'appliedBy'] as const) {
    if (draft[name].trim() === '') faults[name] = 'needed';
  }
  if (!isDate(draft.date)) faults.date = 'noDate';
  const appliedAt = instantOf(timeZone, draft.date, clockTyped(draft.time));
  if (appliedAt === undefined && faults.date === undefined) faults.time = 'noTime';
  const reentryHours = numberTyped(draft.reentryHours);
  if (draft.reentryHours.trim() === '') faults.reentryHours = 'needed';
  else if (reentryHours === undefined) faults.reentryHours = 'number';
  if (Object.keys(faults).length > 0 || appliedAt === undefined || reentryHours === undefined) return { faults };
  const { house, batch, purpose } = draft;
  const note = draft.note.trim();
  return {
    treatment: {
      house,
      ...(batch === '' ? {} : { batch }),
      purpose,
      product: draft.product.trim(),
      rate: draft.rate.trim(),
      appliedBy: draft.appliedBy.trim(),
      appliedAt,
      reentryHours,
      ...(note === '' ? {} : { note }),
    },
  };
}

export interface ClosedHouse {
  readonly house: string;
  readonly until: string;
}

/** Houses that must not be entered now, each until its last interval ends. */
export function closedHouses(treatments: readonly TreatmentView[]): readonly ClosedHouse[] {
  const until = new Map<string, string>();
  for (const { house, closed, reversedAt, reentryAt } of treatments) {
    if (!closed || reversedAt !== null) continue;
    const before = until.get(house);
    if (before === undefined || Date.parse(before) < Date.parse(reentryAt)) until.set(house, reentryAt);
  }
  return [...until].map(([house, at]) => ({ house, until: at })).sort((a, b) => a.house.localeCompare(b.house));
}
