import { clockTyped } from '../shared/as-of-state';
import type { NewTreatment, Purpose } from '../shared/climate-types';
import { areaTyped, numberTyped } from '../shared/units';
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
  readonly target: string;
  readonly totalUsed: string;
  /** In m², or in square feet for who measures in inches. */
  readonly area: string;
  readonly registrationNumber: string;
  readonly licenceNumber: string;
  readonly weather: string;
}

/** What local rules may ask for besides: free text, left out where nothing is typed. */
export const DETAILS = ['target', 'totalUsed', 'registrationNumber', 'licenceNumber', 'weather'] as const;

export const NO_DETAILS = {
  target: '',
  totalUsed: '',
  area: '',
  registrationNumber: '',
  licenceNumber: '',
  weather: '',
} as const;

export type TreatmentFault = 'choose' | 'needed' | 'noDate' | 'noTime' | 'number' | 'noArea';
export type TreatmentFaults = Partial<Readonly<Record<keyof TreatmentDraft, TreatmentFault>>>;

/** What to send, or what is wrong by field. */
export function treatmentOf(
  draft: TreatmentDraft,
  timeZone: string | undefined,
  length: 'mm' | 'in' = 'mm',
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
  const area = draft.area.trim() === '' ? null : numberTyped(draft.area);
  if (area === undefined || (area !== null && area <= 0)) faults.area = 'noArea';
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
      ...Object.fromEntries(DETAILS.flatMap((name) => (draft[name].trim() === '' ? [] : [[name, draft[name].trim()]]))),
      ...(area === null || area === undefined ? {} : { areaM2: areaTyped(area, length) }),
      ...(note === '' ? {} : { note }),
    },
  };
}

// --- The record of a month -------------------------------------------------------------------------------------------

/** From the first moment of the month to the first of the next, by the clocks of the site; undefined for no month. */
export function monthSpan(
  month: string | undefined,
  timeZone: string | undefined,
): { readonly from: string; readonly to: string } | undefined {
  const [, year, of] = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(month ?? '') ?? [];
  if (year === undefined || of === undefined) return undefined;
  const next = of === '12' ? `${Number(year) + 1}-01` : `${year}-${String(Number(of) + 1).padStart(2, '0')}`;
  const [from, to] = [month, next].map((each) => instantOf(timeZone, `${each}-01`, '00:00'));
  return from === undefined || to === undefined ? undefined : { from, to };
}

/** This month and those before it, newest first. */
export function monthsUntil(today: string, count: number): readonly string[] {
  const [year = 0, month = 1] = today.split('-').map(Number);
  return Array.from({ length: count }, (_, back) => {
    const months = year * 12 + month - 1 - back;
    return `${Math.floor(months / 12)}-${String((months % 12) + 1).padStart(2, '0')}`;
  });
}
