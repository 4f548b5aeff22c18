import type { Crop, House, Site, StageProfile, TrayFormat, Variety } from '../shared/api-types';
import type { Sensor } from '../shared/climate-types';
import type { Preferences } from '../shared/preferences';
import { needsLevels, unitsOf } from '../shared/reading-units';
import { celsiusTyped, lengthShown, limitShown, mmTyped, numberTyped, round, temperatureShown } from '../shared/units';

/**
 * The forms of Setup as data: which fields each list has, what an item looks like when typed in the reader's units,
 * and what is sent. A field that was not touched is sent back exactly as stored, so that looking at 533 mm in inches
 * and saving the name does not make it 532.9.
 */
export const LISTS = ['sites', 'houses', 'tray-formats', 'crops', 'varieties', 'sensors'] as const;
/** The lists that the first batch needs; a sensor may come later. */
export const STEPS = ['sites', 'houses', 'tray-formats', 'crops', 'varieties'] as const satisfies readonly ListName[];
export type ListName = (typeof LISTS)[number];

export function isListName(text: string | undefined): text is ListName {
  return LISTS.some((each) => each === text);
}

export function byList<T>(make: (list: ListName) => T): Readonly<Record<ListName, T>> {
  return {
    sites: make('sites'),
    houses: make('houses'),
    'tray-formats': make('tray-formats'),
    crops: make('crops'),
    varieties: make('varieties'),
    sensors: make('sensors'),
  };
}

export type FieldKind =
  'code' | 'text' | 'whole' | 'number' | 'percent' | 'temperature' | 'limit' | 'length' | 'choice';

export interface Field {
  /** Where the value stands in the item: `profile.stages.0.minC`. */
  readonly path: string;
  readonly kind: FieldKind;
  readonly optional?: boolean;
}

export type Draft = Readonly<Record<string, string>>;
export type FieldWrong = 'needed' | 'code' | 'number' | 'whole' | 'unit';
export type Units = Pick<Preferences, 'temperature' | 'length'>;
/** What each list holds. */
export interface ItemOf {
  readonly sites: Site;
  readonly houses: House;
  readonly 'tray-formats': TrayFormat;
  readonly crops: Crop;
  readonly varieties: Variety;
  readonly sensors: Sensor;
}
/** A place in an item; the contract has at least the member it begins with. */
type PathIn<T> = (keyof T & string) | `${keyof T & string}.${string}`;
type FieldOf<T> = Field & { readonly path: PathIn<T> };

/** Anything that came from or goes to the server as JSON. */
export type Item = Readonly<Record<string, unknown>>;

export const STAGES = ['STICK', 'CALLUS', 'ROOT'] as const;

export const STAGE_FIELDS = [
  { name: 'daysAtReference', kind: 'number' },
  { name: 'referenceC', kind: 'limit' },
  { name: 'minC', kind: 'limit' },
  { name: 'optimumC', kind: 'limit' },
  { name: 'maxC', kind: 'limit' },
  { name: 'survivalMean', kind: 'percent' },
  { name: 'survivalWeight', kind: 'number' },
  { name: 'form', kind: 'choice', optional: true },
  { name: 'source', kind: 'text', optional: true },
] as const satisfies readonly (Omit<Field, 'path'> & { name: keyof StageProfile })[];

/** Of a moisture probe, what it shows at each of the five levels, by place in the list. */
const LEVELS = [0, 1, 2, 3, 4] as const;

const CHECKED: { readonly [List in ListName]: readonly FieldOf<ItemOf[List]>[] } = {
  sites: [
    { path: 'code', kind: 'code' },
    { path: 'name', kind: 'text' },
    { path: 'timeZone', kind: 'choice' },
    { path: 'shipDay', kind: 'choice', optional: true },
  ],
  houses: [
    { path: 'code', kind: 'code' },
    { path: 'site', kind: 'choice' },
    { path: 'name', kind: 'text' },
    { path: 'mediumSetpointC', kind: 'temperature', optional: true },
    { path: 'next.house', kind: 'choice', optional: true },
    { path: 'next.onceReached', kind: 'choice', optional: true },
  ],
  'tray-formats': [
    { path: 'code', kind: 'code' },
    { path: 'cells', kind: 'whole' },
    { path: 'saleCount', kind: 'whole' },
    { path: 'lengthMm', kind: 'length' },
    { path: 'widthMm', kind: 'length' },
  ],
  crops: [
    { path: 'code', kind: 'code' },
    { path: 'name', kind: 'text' },
    ...STAGES.flatMap((_, i) =>
      STAGE_FIELDS.map(({ name, ...rest }): FieldOf<Crop> => ({ path: `profile.stages.${i}.${name}`, ...rest })),
    ),
    { path: 'profile.daysDoubt', kind: 'percent', optional: true },
    { path: 'profile.rateSpread', kind: 'percent' },
    { path: 'profile.cellSpread', kind: 'percent', optional: true },
    { path: 'profile.holdDays', kind: 'whole' },
    { path: 'profile.note', kind: 'text', optional: true },
  ],
  varieties: [
    { path: 'code', kind: 'code' },
    { path: 'crop', kind: 'choice' },
    { path: 'name', kind: 'text' },
  ],
  sensors: [
    { path: 'code', kind: 'code' },
    { path: 'house', kind: 'choice' },
    { path: 'quantity', kind: 'choice' },
    { path: 'unit', kind: 'choice' },
    { path: 'lightSource', kind: 'choice', optional: true },
    { path: 'topic', kind: 'text', optional: true },
    { path: 'offset', kind: 'number', optional: true },
    ...LEVELS.map((level): FieldOf<Sensor> => ({ path: `levels.${level}`, kind: 'number', optional: true })),
  ],
};

export const FIELDS: Readonly<Record<ListName, readonly Field[]>> = CHECKED;

/** What an address may say of a new sensor: the topic that came in without one, the house one comes from. */
const GIVEN = ['house', 'quantity', 'unit', 'topic'] as const;

/** What a form does not show but must not lose: the paces that were learned with a profile. */
const CARRIED: Partial<Record<ListName, readonly string[]>> = { crops: ['profile.rates'] };

/** What an empty form begins with: choices that have a usual answer, never a number somebody should know. */
export function newItem(list: ListName, given = new URLSearchParams()): Item {
  switch (list) {
    case 'sites':
      return { shipDay: 'MONDAY' };
    case 'crops':
      return { profile: { stages: STAGES.map((stage) => ({ stage, form: 'BETA' })) } };
    case 'sensors':
      return Object.fromEntries(GIVEN.flatMap((path) => (given.has(path) ? [[path, given.get(path)]] : [])));
    default:
      return {};
  }
}

/** `draft` with `text` typed at `path`. A quantity that comes in one unit only brings it; a unit once chosen stays. */
export function withTyped(list: ListName, draft: Draft, path: string, text: string): Draft {
  const units = list === 'sensors' && path === 'quantity' && !draft['unit'] ? unitsOf(text) : [];
  return { ...draft, [path]: text, ...(units.length === 1 ? { unit: units[0] ?? '' } : {}) };
}

/** `item` as the texts of its form. */
export function draftOf(list: ListName, item: Item, units: Units): Draft {
  return Object.fromEntries(FIELDS[list].map((field) => [field.path, shown(field, valueAt(item, field.path), units)]));
}

/** What to send for `draft`, which began as `item`; or what is wrong, by path. */
export function bodyOf(
  list: ListName,
  draft: Draft,
  item: Item,
  units: Units,
): { body: Item } | { wrong: ReadonlyMap<string, FieldWrong> } {
  const body: Record<string, unknown> =
    list === 'crops' ? { profile: { stages: STAGES.map((stage) => ({ stage })) } } : {};
  const began = draftOf(list, item, units);
  const wrong = new Map<string, FieldWrong>();
  for (const field of FIELDS[list]) {
    const text = draft[field.path] ?? '';
    const stored = valueAt(item, field.path);
    if (text.trim() === '') {
      if (!field.optional) wrong.set(field.path, 'needed');
      continue;
    }
    const read = text === began[field.path] && stored !== undefined ? { value: stored } : typed(field, text, units);
    if ('wrong' in read) wrong.set(field.path, read.wrong);
    else putAt(body, field.path, read.value);
  }
  if (list === 'sensors') checkSensor(draft, body, wrong);
  if (list === 'houses') checkNext(draft, body, wrong);
  for (const path of CARRIED[list] ?? []) {
    const stored = valueAt(item, path);
    if (stored !== undefined) putAt(body, path, stored);
  }
  return wrong.size > 0 ? { wrong } : { body };
}

/** Where batches go on to, and when, are said together or not at all. */
function checkNext(draft: Draft, body: Record<string, unknown>, wrong: Map<string, FieldWrong>): void {
  if (!draft['next.house']?.trim()) delete body['next'];
  else if (!draft['next.onceReached']?.trim()) wrong.set('next.onceReached', 'needed');
}

/** The unit must be one of the quantity's; the levels are needed all five, or not at all. */
function checkSensor(draft: Draft, body: Record<string, unknown>, wrong: Map<string, FieldWrong>): void {
  const { quantity, unit = '' } = draft;
  if (wrong.has('quantity') || wrong.has('unit')) return;
  if (!unitsOf(quantity).includes(unit)) wrong.set('unit', 'unit');
  if (!needsLevels(quantity, unit)) {
    LEVELS.forEach((level) => wrong.delete(`levels.${level}`));
    delete body['levels'];
    return;
  }
  for (const level of LEVELS) {
    const path = `levels.${level}`;
    if ((draft[path] ?? '').trim() === '') wrong.set(path, 'needed');
  }
  body['levels'] = Object.values(body['levels'] ?? {});
}

function shown({ kind }: Field, value: unknown, units: Units): string {
  if (value === undefined || value === null) return '';
  if (typeof value !== 'number') return String(value);
  switch (kind) {
    case 'temperature':
      return String(round(temperatureShown(value, units.temperature), 2));
    case 'limit':
      return String(limitShown(value, units.temperature));
    case 'length':
      return String(round(lengthShown(value, units.length), 3));
    case 'percent':
      return String(round(value * 100, 6));
    default:
      return String(value);
  }
}

const CODE = /^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/;

function typed({ kind }: Field, text: string, units: Units): { value: unknown } | { wrong: FieldWrong } {
  const trimmed = text.trim();
  if (kind === 'code') return CODE.test(trimmed) ? { value: trimmed } : { wrong: 'code' };
  if (kind === 'text' || kind === 'choice') return { value: trimmed };
  const value = numberTyped(trimmed);
  if (value === undefined) return { wrong: 'number' };
  if (kind === 'whole') return Number.isInteger(value) ? { value } : { wrong: 'whole' };
  if (kind === 'temperature' || kind === 'limit') return { value: celsiusTyped(value, units.temperature) };
  if (kind === 'length') {
    const mm = mmTyped(value, units.length);
    return Number.isInteger(mm) ? { value: mm } : { wrong: 'whole' };
  }
  return { value: kind === 'percent' ? round(value / 100, 8) : value };
}

export function valueAt(item: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((inside, step) => (inside as Record<string, unknown> | undefined)?.[step], item);
}

function putAt(body: Record<string, unknown>, path: string, value: unknown): void {
  const steps = path.split('.');
  const last = steps.pop() ?? path;
  let inside = body;
  for (const step of steps) inside = (inside[step] ??= {}) as Record<string, unknown>;
  inside[last] = value;
}

/** The steps of a first run, in the order in which one needs the other. */
export function firstSteps(
  counts: Readonly<Record<(typeof STEPS)[number], number>>,
): { step: (typeof STEPS)[number]; done: boolean; next: boolean }[] {
  const missing = STEPS.find((list) => counts[list] === 0);
  return STEPS.map((step) => ({ step, done: counts[step] > 0, next: step === missing }));
}

/** +0.3 or −0.3: what is added has a sign. */
export function signed(value: number): string {
  return value < 0 ? `−${-value}` : `+${value}`;
}
