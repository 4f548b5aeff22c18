import type { Crop } from '../shared/api-types';
import type { Problem } from '../shared/problem';
import { limitShown, round, type TemperatureUnit } from '../shared/units';
import { FIELDS, STAGES, type Draft, type Field, type Item } from './setup-state';

/** The crop form: what stands first, what is folded away, and what a new crop may begin with. */

/** What every grower of a crop knows: how long it is from one stage to the next. */
export const FIRST_FIGURES: readonly string[] = STAGES.map((_, i) => `profile.stages.${i}.daysAtReference`);

export function isFolded(path: string): boolean {
  return path.startsWith('profile.') && !FIRST_FIGURES.includes(path);
}

/** A crop or seeded profile that another can begin with. */
export type Start = Pick<Crop, 'code' | 'name' | 'profile'>;

/**
 * The item that a new crop begins as. Figures and sources are the other's; the paces that its varieties and sites were
 * learned to have are not, nor its version. Code and name stay as typed; an untouched seeded profile brings its own.
 */
export function startedFrom(start: Start, seeded: boolean, typed: Draft): Item {
  const { stages, daysDoubt, rateSpread, cellSpread, holdDays, note } = start.profile;
  const own = (path: 'code' | 'name') => typed[path]?.trim() || (seeded ? start[path] : '');
  return {
    code: own('code'),
    name: own('name'),
    profile: { stages, daysDoubt, rateSpread, cellSpread, holdDays, note },
  };
}

/** Between what a refused figure must lie, as the form shows it; undefined if the refusal does not say. */
export function rangeOf(
  path: string,
  { members }: Pick<Problem, 'members'>,
  temperature: TemperatureUnit,
): { readonly least?: string; readonly most?: string } | undefined {
  const kind = FIELDS.crops.find((field) => field.path === path)?.kind;
  const end = (name: 'least' | 'most') => {
    const value = members[name];
    return typeof value === 'number' ? { [name]: String(shownIn(kind, value, temperature)) } : {};
  };
  const range = { ...end('least'), ...end('most') };
  return Object.keys(range).length === 0 ? undefined : range;
}

function shownIn(kind: Field['kind'] | undefined, value: number, temperature: TemperatureUnit): number {
  if (kind === 'percent') return round(value * 100, 6);
  return kind === 'limit' ? limitShown(value, temperature) : value;
}

/** What some figures of a profile rest on. */
export interface Sourced {
  readonly published: boolean;
  /** The work, where it is published. */
  readonly work: string;
  /** Names of the figures, each once. */
  readonly figures: readonly string[];
}

const MARK = /^(?<figure>\w+): (?:(?<common>common practice, no source)|published(?: \w+)?, (?<work>[^(]*))/;

/** What a seeded profile's figures rest on, by source; the marks are those of seed/README.md. */
export function sourcesOf({ profile }: Start): readonly Sourced[] {
  const texts = [...profile.stages.map(({ source }) => source), profile.note];
  const found = new Map<string, Set<string>>();
  for (const part of texts.flatMap((text) => text?.split('; ') ?? [])) {
    const { figure, common, work = '' } = MARK.exec(part)?.groups ?? {};
    if (figure === undefined) continue;
    const key = common === undefined ? work.trim() : '';
    found.set(key, (found.get(key) ?? new Set()).add(figure));
  }
  return [...found].map(([work, figures]) => ({ published: work !== '', work, figures: [...figures] }));
}
