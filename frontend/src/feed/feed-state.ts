import type { Schemas } from '../shared/contract';
import { areaTyped, numberTyped, sprayTyped, type LengthUnit } from '../shared/units';

/** The questions of the feed tank as data: which fields each has, and what is asked. The arithmetic is the server's. */

export const CALCULATIONS = ['stock', 'strength', 'injector', 'ec', 'dilution'] as const;
export type Calculation = (typeof CALCULATIONS)[number];

export function calculationIn(params: URLSearchParams): Calculation {
  return CALCULATIONS.find((each) => each === params.get('of')) ?? 'stock';
}

export const VOLUMES = ['L', 'mL', '[gal_us]', '[foz_us]'] as const;
export const WEIGHTS = ['kg', 'g', '[lb_av]', '[oz_av]'] as const;
export type Unit = (typeof VOLUMES)[number] | (typeof WEIGHTS)[number];

export type Amount = Schemas['AmountWire'];

type Asked =
  | Schemas['StockWire']
  | Schemas['StrengthWire']
  | Schemas['InjectorWire']
  | Schemas['ConductivityWire']
  | Schemas['DilutionWire'];
type MembersOf<T> = T extends unknown ? keyof T : never;
export type FeedFieldName = MembersOf<Asked>;
export type FeedQuestion = Readonly<Partial<Record<FeedFieldName, number | string | Amount>>>;

export interface FeedField {
  readonly name: FeedFieldName;
  /** A grade is the bag's N-P-K, or its nitrogen alone. */
  readonly kind: 'number' | 'text' | 'amount' | 'grade';
  /** The units an amount may be typed in. */
  readonly units?: readonly Unit[];
  readonly optional?: boolean;
  /** How a figure in the reader's unit is sent, where that unit cannot be chosen. */
  readonly sent?: (typed: number) => number;
  /** A tank of nothing, or a rate of nothing, is a slip; water may hold no salt. */
  readonly mayBeZero?: boolean;
}

/** How a label gives its rate, and what it is to be mixed for. */
export interface DilutionWay {
  readonly rate: 'perVolume' | 'liquid' | 'solid';
  readonly volume: 'spray' | 'area';
}

const number = (name: FeedFieldName, optional = false): FeedField => ({ name, kind: 'number', optional });
const water = (optional = false): FeedField => ({ ...number('clearWaterMsPerCm', optional), mayBeZero: true });
const grade: FeedField = { name: 'nitrogenPercent', kind: 'grade' };
const volume = (name: FeedFieldName): FeedField => ({ name, kind: 'amount', units: VOLUMES });
const weight = (name: FeedFieldName): FeedField => ({ name, kind: 'amount', units: WEIGHTS });

/** @param length whoever measures in inches has gallons and square feet, too; units that can be chosen only change their order */
export function fieldsOf(calculation: Calculation, way: DilutionWay, length: LengthUnit = 'mm'): readonly FeedField[] {
  return fieldsIn(calculation, way, length).map((field) =>
    field.units && length === 'in' ? { ...field, units: [...field.units].sort(usFirst) } : field,
  );
}

const US: ReadonlySet<Unit> = new Set(['[gal_us]', '[foz_us]', '[lb_av]', '[oz_av]']);
const usFirst = (a: Unit, b: Unit) => Number(US.has(b)) - Number(US.has(a));

function fieldsIn(calculation: Calculation, way: DilutionWay, length: LengthUnit): readonly FeedField[] {
  switch (calculation) {
    case 'stock':
      return [
        grade,
        number('ppm'),
        number('injector'),
        volume('stockVolume'),
        water(true),
        number('msPerCmPer100Ppm', true),
      ];
    case 'strength':
      return [grade, number('injector'), weight('fertilizer'), volume('stockVolume')];
    case 'injector':
      return [grade, number('ppm'), weight('fertilizer'), volume('stockVolume')];
    case 'ec':
      return [number('measuredMsPerCm'), water(), number('msPerCmPer100Ppm')];
    case 'dilution': {
      const rate: readonly FeedField[] = {
        perVolume: [
          { name: 'product', kind: 'amount', units: ['mL', 'g', '[foz_us]', '[oz_av]', 'L', 'kg'] } as const,
          volume('perVolume'),
        ],
        liquid: [number('activePpm'), number('activeMgPerMl')],
        solid: [number('activePpm'), number('activePercent')],
      }[way.rate];
      const spray =
        way.volume === 'spray'
          ? [volume('sprayVolume')]
          : [
              { ...number('areaM2'), sent: (typed: number) => areaTyped(typed, length) },
              { ...number('litresPerM2'), sent: (typed: number) => sprayTyped(typed, length) },
            ];
      return [{ name: 'label', kind: 'text' }, ...rate, ...spray];
    }
  }
}

/** Texts as typed; the unit of an amount under `<name>.unit`. */
export type FeedDraft = Readonly<Record<string, string>>;
export type FeedFault = 'needed' | 'number' | 'grade' | 'zero';

const GRADE = /^(\d+(?:[.,]\d+)?)\s*%?(?:\s*[-–]\s*\d+(?:[.,]\d+)?){0,2}$/;

/** Nitrogen of a fertilizer as people write it: 20, 20 % or 20-10-20. */
export function nitrogenTyped(text: string): number | undefined {
  const first = GRADE.exec(text.trim())?.[1];
  return first === undefined ? undefined : numberTyped(first);
}

export function unitOf({ name, units }: FeedField, draft: FeedDraft): Unit {
  return units?.find((unit) => unit === draft[`${name}.unit`]) ?? units?.[0] ?? 'L';
}

/** What to ask, or what is wrong by field. What cannot be meant is the server's to say. */
export function questionOf(
  fields: readonly FeedField[],
  draft: FeedDraft,
): { readonly question: FeedQuestion } | { readonly faults: ReadonlyMap<string, FeedFault> } {
  const faults = new Map<string, FeedFault>();
  const question: { -readonly [Name in keyof FeedQuestion]: FeedQuestion[Name] } = {};
  for (const field of fields) {
    const text = (draft[field.name] ?? '').trim();
    if (text === '') {
      if (!field.optional) faults.set(field.name, 'needed');
      continue;
    }
    if (field.kind === 'text') {
      question[field.name] = text;
      continue;
    }
    const value = field.kind === 'grade' ? nitrogenTyped(text) : numberTyped(text);
    if (value === undefined) faults.set(field.name, field.kind === 'grade' ? 'grade' : 'number');
    else if (value <= 0 && !field.mayBeZero) faults.set(field.name, 'zero');
    else if (field.kind === 'amount') question[field.name] = { value, unit: unitOf(field, draft) };
    else question[field.name] = field.sent?.(value) ?? value;
  }
  return faults.size > 0 ? { faults } : { question };
}

/** What is the same the next time: the bag, the tank, the injector and the water. Strength and rates are not. */
const KEPT: readonly FeedFieldName[] = [
  'nitrogenPercent',
  'injector',
  'stockVolume',
  'clearWaterMsPerCm',
  'msPerCmPer100Ppm',
];

export function toRemember(draft: FeedDraft): FeedDraft {
  const names = KEPT.flatMap((name) => [name, `${name}.unit`]);
  return Object.fromEntries(Object.entries(draft).filter(([name]) => names.includes(name)));
}

const NAMES: Readonly<Record<Unit, string>> = {
  L: 'L',
  mL: 'mL',
  '[gal_us]': 'gal (US)',
  '[foz_us]': 'fl oz (US)',
  g: 'g',
  kg: 'kg',
  '[oz_av]': 'oz',
  '[lb_av]': 'lb',
};

export function unitName(unit: string): string {
  return NAMES[unit as Unit] ?? unit;
}

/** As many decimals as three figures need: 0.0123, 1.23, 12.3, 123. */
export function digitsFor(value: number): number {
  const size = Math.abs(value);
  if (size === 0 || size >= 100) return 0;
  return size >= 10 ? 1 : size >= 1 ? 2 : Math.min(6, 2 - Math.floor(Math.log10(size)));
}
