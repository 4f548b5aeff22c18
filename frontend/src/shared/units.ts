/**
 * Quantities as the reader likes them. Stored values are °C and mm and never change; these functions only
 * turn them into what is typed and shown, and back.
 */
export type TemperatureUnit = 'C' | 'F';
export type LengthUnit = 'mm' | 'in';

const MM_PER_INCH = 25.4;

/**
 * As sunlight gives it: 54 lx are 1 µmol/m²/s, 10.764 lx are 1 fc. Under lamps it is a rough figure only.
 * Source: Thimijan & Heins 1983, HortScience 18:818-822.
 */
const FOOT_CANDLES_PER_UMOL = 54 / 10.764;

/** What a number is a measure of, where readers differ in the unit they want. */
export type Measure = 'temperature' | 'light' | 'other';

export function temperatureShown(celsius: number, unit: TemperatureUnit): number {
  return unit === 'C' ? celsius : (celsius * 9) / 5 + 32;
}

/** A limit as it is shown: nobody keeps a house to a tenth of a °F, and 78.8 is only what 26 °C comes to. */
export function limitShown(celsius: number, unit: TemperatureUnit): number {
  return unit === 'C' ? round(celsius, 2) : Math.round(temperatureShown(celsius, unit) * 2) / 2;
}

export function celsiusTyped(value: number, unit: TemperatureUnit): number {
  return unit === 'C' ? value : round(((value - 32) * 5) / 9, 4);
}

/** A converted foot-candle is good for two figures. Readers of °F think of light in foot-candles. */
export function lightShown(umol: number, unit: TemperatureUnit): number {
  return unit === 'C' ? umol : Number((umol * FOOT_CANDLES_PER_UMOL).toPrecision(2));
}

export function umolTyped(value: number, unit: TemperatureUnit): number {
  return unit === 'C' ? value : round(value / FOOT_CANDLES_PER_UMOL, 1);
}

export function lightUnitName(unit: TemperatureUnit): string {
  return unit === 'C' ? 'µmol/m²/s' : 'fc';
}

export function shownAs(measure: Measure, value: number, unit: TemperatureUnit): number {
  if (measure === 'light') return lightShown(value, unit);
  return measure === 'temperature' ? temperatureShown(value, unit) : value;
}

export function typedAs(measure: Measure, value: number, unit: TemperatureUnit): number {
  if (measure === 'light') return umolTyped(value, unit);
  return measure === 'temperature' ? celsiusTyped(value, unit) : value;
}

/** Undefined where every reader has the same. */
export function unitNameAs(measure: Measure, unit: TemperatureUnit): string | undefined {
  if (measure === 'light') return lightUnitName(unit);
  return measure === 'temperature' ? temperatureUnitName(unit) : undefined;
}

export function lengthShown(mm: number, unit: LengthUnit): number {
  return unit === 'mm' ? mm : mm / MM_PER_INCH;
}

/** Lengths are kept in whole millimetres, finer than a tray is made: an inch measure becomes the nearest one. */
export function mmTyped(value: number, unit: LengthUnit): number {
  return unit === 'mm' ? value : Math.round(value * MM_PER_INCH);
}

const SQUARE_METRES_PER_SQUARE_FOOT = 0.3048 * 0.3048;
const LITRES_PER_GALLON = 3.785411784;
/** Of one gallon to 100 square feet. */
const LITRES_PER_M2 = LITRES_PER_GALLON / (100 * SQUARE_METRES_PER_SQUARE_FOOT);

/** Readers of inches think of areas in square feet. */
export function areaShown(squareMetres: number, unit: LengthUnit): number {
  return unit === 'mm' ? squareMetres : squareMetres / SQUARE_METRES_PER_SQUARE_FOOT;
}

export function areaTyped(area: number, unit: LengthUnit): number {
  return unit === 'mm' ? area : round(area * SQUARE_METRES_PER_SQUARE_FOOT, 4);
}

export function areaUnitName(unit: LengthUnit): string {
  return unit === 'mm' ? 'm²' : 'ft²';
}

/** Labels of the United States give spray per 100 square feet. */
export function sprayShown(litresPerSquareMetre: number, unit: LengthUnit): number {
  return unit === 'mm' ? litresPerSquareMetre : litresPerSquareMetre / LITRES_PER_M2;
}

export function sprayTyped(spray: number, unit: LengthUnit): number {
  return unit === 'mm' ? spray : round(spray * LITRES_PER_M2, 6);
}

export function sprayUnitName(unit: LengthUnit): string {
  return unit === 'mm' ? 'L/m²' : 'gal (US)/100 ft²';
}

export function temperatureUnitName(unit: TemperatureUnit): string {
  return unit === 'C' ? '°C' : '°F';
}

/** At most `digits` decimals, so that 71.6 °F does not come back as 71.60000000000001. */
export function round(value: number, digits: number): number {
  const factor = 10 ** digits;
  return Math.round(value * factor) / factor;
}

/**
 * A number as people type it: comma or point for decimals, spaces ignored. Undefined when it is not one number;
 * nothing is guessed or cut off.
 */
export function numberTyped(text: string): number | undefined {
  const plain = text.replace(/\s/g, '').replace('−', '-').replace(',', '.');
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}
