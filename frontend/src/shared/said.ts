import type { LocalDate } from './api-types';
import { fieldNames } from './field-words';
import type { Formats } from './formats';
import type { Language, Preferences } from './preferences';
import { sharedMessages } from './shared-messages';
import { thingNames } from './thing-words';
import { areaShown, areaUnitName, lengthShown, lightShown, lightUnitName, sprayShown, sprayUnitName } from './units';

/**
 * What the server tells as a code with named values, said to one reader: in the own language and units, at the site's
 * time, by the labels of the screen. `docs/problems.json` says which value is of which kind.
 */
export interface Speaker {
  readonly language: Language;
  readonly length: Preferences['length'];
  readonly format: Formats;
  /** Of the site that it is about; without one, the reader's own. */
  readonly timeZone?: string | undefined;
  /** What people call the houses, by code; a house that is not in it is called by its code. */
  readonly houseNames?: ReadonlyMap<string, string> | undefined;
}

export type Values = Readonly<Record<string, unknown>>;

/** Values of one code, each said by its kind. */
export interface Say {
  has(name: string): boolean;
  /** The figure itself, for 1 and many. */
  figure(name: string): number;
  count(name: string): string;
  /** In the unit of the field that is spoken of. */
  measure(name: string): string;
  /** A difference of two measures: 3 °C are 5.4 °F apart. */
  span(name: string): string;
  celsius(name: string): string;
  when(name: string): string;
  day(name: string): string;
  /** A code, a name or what somebody typed. */
  text(name: string): string;
  texts(name: string): string;
  /** A house or several, by the names that people call them. */
  house(name: string): string;
  houses(name: string): string;
  field(name: string): string;
  thing(name: string): string;
  stage(name: string): string;
  phase(name: string): string;
  quantities(name: string): string;
}

/** @param field the place in what was sent, whose unit its measures are in */
export function sayOf(values: Values, speaker: Speaker, sentAs = ''): Say {
  const { format, language, timeZone, houseNames } = speaker;
  const field = sentAs || (MEASURED_AS[String(values['quantity'])] ?? '');
  const shared = sharedMessages[language];
  const things: Readonly<Record<string, string>> = thingNames[language];
  const number = (name: string) => Number(values[name]);
  const text = (name: string) => String(values[name] ?? '');
  const texts = (name: string): string[] => (Array.isArray(values[name]) ? values[name].map(String) : []);
  const thing = (code: string) => things[code] ?? '';
  const house = (code: string) => houseNames?.get(code) ?? code;
  return {
    has: (name) => values[name] !== undefined && values[name] !== null,
    figure: number,
    count: (name) => format.integer(number(name)),
    measure: (name) => measureOf(number(name), field, speaker),
    span: (name) => spanOf(number(name), field, speaker),
    celsius: (name) => format.temperature(number(name)),
    when: (name) => format.dateTime(text(name), timeZone),
    day: (name) => format.date(text(name) as LocalDate),
    text,
    texts: (name) => texts(name).join(', '),
    house: (name) => house(text(name)),
    houses: (name) => format.anyOf(texts(name).map(house)),
    field: (name) => fieldName(text(name), language),
    thing: (name) => thing(text(name)),
    stage: (name) => shared[`stage${text(name) as 'STICK' | 'CALLUS' | 'ROOT' | 'READY' | 'SHIP'}`],
    phase: (name) => thing(text(name)),
    quantities: (name) => texts(name).map(thing).join(', '),
  };
}

/** A quantity that comes with its measures, as a field that has its unit. */
const MEASURED_AS: Readonly<Record<string, string>> = {
  'medium-temperature': 'mediumC',
  'air-temperature': 'airC',
  'relative-humidity': 'humidityPercent',
  light: 'lightUmol',
  'medium-moisture': 'moistureLevel',
  ec: 'mediumEcMsPerCm',
  'daily-light-integral': 'lightMol',
};

const TEMPERATURE = /[a-z]C$/;
const LIGHT = /Umol$/;
const SHARES = new Set(['survivalMean', 'confidence']);
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/Mol$/, 'mol/m²/d'],
  [/MsPerCm/, 'mS/cm'],
  [/Kpa$/, 'kPa'],
  [/Percent$/, '%'],
  [/ppm$|Ppm$/, 'ppm'],
];

/** A measure in the unit that the last word of its field's name states, as the reader likes it. */
export function measureOf(value: number, field: string, { format, length }: Speaker): string {
  const last = lastNamed(field);
  if (TEMPERATURE.test(last)) return format.temperature(value);
  if (LIGHT.test(last)) {
    const unit = format.temperatureUnit === '°F' ? 'F' : 'C';
    return `${figureOf(lightShown(value, unit), format)} ${lightUnitName(unit)}`;
  }
  if (last === 'litresPerM2') {
    return format.withUnit(figureOf(sprayShown(value, length), format), sprayUnitName(length));
  }
  if (last === 'areaM2') return format.withUnit(figureOf(areaShown(value, length), format, 0), areaUnitName(length));
  if (SHARES.has(last)) return format.percent(value, 1);
  if (last.endsWith('Mm')) {
    return `${figureOf(lengthShown(value, length), format, length === 'mm' ? 0 : 2)} ${length === 'mm' ? 'mm' : 'in'}`;
  }
  const unit = UNITS.find(([pattern]) => pattern.test(last))?.[1];
  return unit === undefined ? figureOf(value, format) : format.withUnit(figureOf(value, format), unit);
}

/** A difference in the same unit: it has no zero to be moved. */
function spanOf(value: number, field: string, speaker: Speaker): string {
  const { format } = speaker;
  if (!isTemperature(field)) return measureOf(value, field, speaker);
  const inUnit = format.temperatureUnit === '°F' ? (value * 9) / 5 : value;
  return `${format.decimal(inUnit, 1)} ${format.temperatureUnit}`;
}

function isTemperature(field: string): boolean {
  return TEMPERATURE.test(lastNamed(field));
}

function lastNamed(field: string): string {
  return segments(field).findLast((each) => !PARTS.has(each) && !/^\d+$/.test(each)) ?? '';
}

/** With as many decimals as it has, at most three. */
function figureOf(value: number, format: Formats, most = 3): string {
  const digits = [0, 1, 2, 3].find((each) => Math.abs(value - Number(value.toFixed(each))) < 1e-9) ?? most;
  return digits === 0 ? format.integer(value) : format.decimal(value, Math.min(digits, most));
}

/** Ends of a band and parts of an amount: the field around them has the unit and the label. */
const PARTS: ReadonlySet<string> = new Set(['least', 'most', 'value', 'unit']);
const STAGES = ['STICK', 'CALLUS', 'ROOT'] as const;
const PHASES = ['STICKING', 'CALLUSING', 'ROOTING', 'FILLING', 'TONING'] as const;

function segments(field: string): readonly string[] {
  return field.replace(/\[(\d+)\]/g, '.$1').split('.');
}

/**
 * A place in what was sent, by the label that a screen has for it: `phases[2].mediumC.least` is the medium's least of
 * that phase, `lines[0].trays` the trays of line 1.
 */
export function fieldName(field: string, language: Language): string {
  const names: Readonly<Record<string, string>> = fieldNames[language];
  const things: Readonly<Record<string, string>> = thingNames[language];
  const parts = segments(field);
  const said: string[] = [];
  parts.forEach((part, i) => {
    const next = parts[i + 1];
    if (/^\d+$/.test(part)) return;
    if (next !== undefined && /^\d+$/.test(next)) {
      const at = Number(next);
      const word =
        part === 'stages' ? things[`stage${STAGES[at]}`] : part === 'phases' ? things[PHASES[at] ?? ''] : undefined;
      said.push(word ?? `${names[part] ?? names['other']} ${at + 1}`);
    } else if (part === 'varieties' || part === 'sites') {
      said.push(`${names[part]} ${next ?? ''}`.trim());
    } else if (part !== 'value' && !WRAPPERS.has(part) && parts[i - 1] !== 'varieties' && parts[i - 1] !== 'sites') {
      said.push(names[part] ?? names['other'] ?? '');
    }
  });
  return said.length === 0 ? (names['other'] ?? '') : said.join(', ');
}

/** What only holds other fields says nothing to a reader when one of them is named. */
const WRAPPERS: ReadonlySet<string> = new Set(['profile', 'rates']);
