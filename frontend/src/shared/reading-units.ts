import type { MeasuredQuantity } from './climate-types';

/**
 * What a sensor may show: per quantity the units it comes in, as UCUM writes them and as people do. The server holds the
 * same list and has the last word.
 *
 * Source: The Unified Code for Units of Measure; `lm/[sft_i]` is the foot-candle.
 */
export const MEASURED = [
  'medium-temperature',
  'air-temperature',
  'relative-humidity',
  'light',
  'medium-moisture',
  'ec',
] as const satisfies readonly MeasuredQuantity[];

export function isMeasured(text: string | undefined): text is MeasuredQuantity {
  return MEASURED.some((each) => each === text);
}

const UNITS: Readonly<Record<MeasuredQuantity, readonly string[]>> = {
  'medium-temperature': ['Cel', '[degF]'],
  'air-temperature': ['Cel', '[degF]'],
  'relative-humidity': ['%'],
  light: ['umol/m2/s', 'lx', 'lm/[sft_i]'],
  'medium-moisture': ['{level}', '1', '%', 'kPa', 'mV'],
  ec: ['mS/cm', 'dS/m', 'uS/cm'],
};

const NAMES: Readonly<Record<string, string>> = {
  Cel: '°C',
  '[degF]': '°F',
  'umol/m2/s': 'µmol/m²/s',
  'lm/[sft_i]': 'fc',
  'uS/cm': 'µS/cm',
  '{level}': '1–5',
  '1': '1–5 (1)',
};

/** UCUM codes of the units that `quantity` comes in, its own first; none for what is no quantity. */
export function unitsOf(quantity: string | undefined): readonly string[] {
  return isMeasured(quantity) ? UNITS[quantity] : [];
}

/** A unit as people write it; one that is not known stays as it is. */
export function unitName(ucum: string): string {
  return NAMES[ucum] ?? ucum;
}

export const LIGHT_SOURCES = ['sun', 'high-pressure-sodium', 'metal-halide', 'cool-white-fluorescent'] as const;

/** Lux and foot-candles follow the eye: how many photons they are depends on the lamp. */
export function needsLightSource(unit: string | undefined): boolean {
  return unit === 'lx' || unit === 'lm/[sft_i]';
}

/** A moisture probe that shows no level: five numbers say what it shows at levels 1 to 5. */
export function needsLevels(quantity: string | undefined, unit: string | undefined): boolean {
  return quantity === 'medium-moisture' && unit !== undefined && ['%', 'kPa', 'mV'].includes(unit);
}
