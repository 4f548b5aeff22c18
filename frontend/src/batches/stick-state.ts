import type { NewBatch } from '../shared/api-types';
import { clockTyped } from '../shared/as-of-state';
import { numberTyped } from '../shared/units';
import { isDate } from '../shared/weeks';
import { instantOf } from '../shared/zoned-time';

/** A batch being typed in: texts as typed, until they make a batch. */
export interface StickDraft {
  readonly site: string;
  readonly house: string;
  readonly variety: string;
  readonly trayFormat: string;
  readonly date: string;
  readonly time: string;
  readonly trays: string;
  readonly plants: string;
}

export type StickFault = 'choose' | 'noDate' | 'noSuchTime' | 'wholeTrays' | 'wholePlants';
export type StickFaults = Partial<Record<keyof StickDraft, StickFault>>;

/** The batch to send, or what stops it, by field. Sizes are the server's to judge: it knows the limits. */
export function batchOf(
  draft: StickDraft,
  timeZone: string | undefined,
): { batch: NewBatch } | { faults: StickFaults } {
  const faults: { -readonly [K in keyof StickFaults]: StickFault } = {};
  for (const name of ['site', 'house', 'variety', 'trayFormat'] as const) {
    if (draft[name] === '') faults[name] = 'choose';
  }
  if (!isDate(draft.date)) faults.date = 'noDate';
  const stuckAt = instantOf(timeZone, draft.date, clockTyped(draft.time));
  if (stuckAt === undefined && faults.date === undefined) faults.time = 'noSuchTime';
  const trays = numberTyped(draft.trays);
  if (trays === undefined || !Number.isInteger(trays) || trays < 1) faults.trays = 'wholeTrays';
  const plants = draft.plants.trim() === '' ? undefined : numberTyped(draft.plants);
  if (draft.plants.trim() !== '' && (plants === undefined || !Number.isInteger(plants) || plants < 1)) {
    faults.plants = 'wholePlants';
  }
  if (Object.keys(faults).length > 0 || stuckAt === undefined || trays === undefined) return { faults };
  const { site, house, variety, trayFormat } = draft;
  return { batch: { site, house, variety, trayFormat, stuckAt, trays, ...(plants === undefined ? {} : { plants }) } };
}
