import type { HandReading } from '../outbox/outbox-state';
import type { Instant } from '../shared/api-types';
import { numberTyped, type TemperatureUnit } from '../shared/units';

/** What a hand instrument showed in a house, as typed. */
export interface HandDraft {
  readonly air: string;
  readonly medium: string;
  readonly humidity: string;
  /** 1 to 5, by feel. */
  readonly moisture: string;
}

export const NOTHING_READ: HandDraft = { air: '', medium: '', humidity: '', moisture: '' };

export type HandFault = 'nothing' | 'notANumber';

const UCUM: Readonly<Record<TemperatureUnit, string>> = { C: 'Cel', F: '[degF]' };

/** What is left empty was not measured. Values go in the unit they were read in. */
export function handReadings(
  draft: HandDraft,
  house: string,
  at: Instant,
  temperature: TemperatureUnit,
): { readonly readings: readonly HandReading[] } | { readonly faults: Partial<Record<keyof HandDraft, HandFault>> } {
  const faults: Partial<Record<keyof HandDraft, HandFault>> = {};
  const readings: HandReading[] = [];
  const read = (name: keyof HandDraft, quantity: HandReading['quantity'], unit: string) => {
    if (draft[name].trim() === '') return;
    const value = numberTyped(draft[name]);
    if (value === undefined) faults[name] = 'notANumber';
    else readings.push({ house, quantity, value, unit, at });
  };
  read('air', 'air-temperature', UCUM[temperature]);
  read('medium', 'medium-temperature', UCUM[temperature]);
  read('humidity', 'relative-humidity', '%');
  read('moisture', 'medium-moisture', '{level}');
  if (Object.keys(faults).length > 0) return { faults };
  return readings.length === 0 ? { faults: { air: 'nothing' } } : { readings };
}

/** Where a house is read by hand. */
export function byHandAt(site: string, house: string): string {
  return `/floor?${new URLSearchParams({ site, do: 'readings', house }).toString()}`;
}
