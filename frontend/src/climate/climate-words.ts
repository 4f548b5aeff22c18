import { useMemo } from 'react';
import type { Band, ClimateQuantity } from '../shared/climate-types';
import { useFormats, type Formats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { limitShown, shownAs, unitNameAs, type Measure, type TemperatureUnit } from '../shared/units';
import { climateMessages } from './climate-messages';

/** Quantities in the reader's units: values, bands, axes. */
export interface QuantityWords {
  readonly unit: (quantity: ClimateQuantity) => string;
  readonly digits: (quantity: ClimateQuantity) => number;
  /** The number alone, in the reader's unit. */
  readonly shown: (quantity: ClimateQuantity, value: number) => number;
  readonly value: (quantity: ClimateQuantity, value: number) => string;
  /** Of what a recipe asks for: °F to the half degree. */
  readonly limit: (quantity: ClimateQuantity, value: number) => string;
  readonly band: (quantity: ClimateQuantity, band: Band) => string;
}

const MEASURES: Partial<Readonly<Record<ClimateQuantity, Measure>>> = {
  'medium-temperature': 'temperature',
  'air-temperature': 'temperature',
  'dew-point': 'temperature',
  light: 'light',
};
const measureOf = (quantity: ClimateQuantity): Measure => MEASURES[quantity] ?? 'other';
const DIGITS: Readonly<Record<ClimateQuantity, number>> = {
  'medium-temperature': 1,
  'air-temperature': 1,
  'dew-point': 1,
  'relative-humidity': 0,
  'vapour-pressure-deficit': 2,
  light: 0,
  'daily-light-integral': 1,
  'medium-moisture': 1,
  ec: 2,
};

export function useQuantityWords(): QuantityWords {
  const t = useMessages(climateMessages);
  const format: Formats = useFormats();
  const { temperature } = usePreferences();
  return useMemo(() => quantityWordsFor(t, format, temperature), [t, format, temperature]);
}

export function quantityWordsFor(
  t: { readonly level: string; readonly atMost: (said: string) => string; readonly atLeast: (said: string) => string },
  format: Formats,
  temperature: TemperatureUnit,
): QuantityWords {
  const unit = (quantity: ClimateQuantity): string => {
    const rest: Partial<Record<ClimateQuantity, string>> = {
      'relative-humidity': '%',
      'vapour-pressure-deficit': 'kPa',
      'daily-light-integral': 'mol/m²/d',
      'medium-moisture': t.level,
      ec: 'mS/cm',
    };
    return unitNameAs(measureOf(quantity), temperature) ?? rest[quantity] ?? '';
  };
  const shown = (quantity: ClimateQuantity, value: number) => shownAs(measureOf(quantity), value, temperature);
  const digits = (quantity: ClimateQuantity, value: number) => (isLevel(quantity, value) ? 0 : DIGITS[quantity]);
  const number = (quantity: ClimateQuantity, value: number) =>
    format.decimal(shown(quantity, value), digits(quantity, value));
  const end = (quantity: ClimateQuantity, value: number) =>
    measureOf(quantity) === 'temperature'
      ? format.decimal(limitShown(value, temperature), DIGITS[quantity])
      : number(quantity, value);
  const limit = (quantity: ClimateQuantity, value: number) => format.withUnit(end(quantity, value), unit(quantity));
  return {
    unit,
    shown,
    digits: (quantity) => DIGITS[quantity],
    value: (quantity, value) => format.withUnit(number(quantity, value), unit(quantity)),
    limit,
    band: (quantity, { least, most }) => {
      if (least === null) return most === null ? '' : t.atMost(limit(quantity, most));
      if (most === null) return t.atLeast(limit(quantity, least));
      const [from, to] = [end(quantity, least), end(quantity, most)];
      return format.withUnit(from === to ? from : `${from} – ${to}`, unit(quantity));
    },
  };
}

/** One of the five levels of moisture, and not a mean of several. */
function isLevel(quantity: ClimateQuantity, value: number): boolean {
  return quantity === 'medium-moisture' && Number.isInteger(value);
}
