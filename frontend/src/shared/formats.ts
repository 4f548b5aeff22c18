import { useMemo } from 'react';
import type { Instant, LocalDate } from './api-types';
import { ownDates, USUAL_DATES, type DateLocale } from './date-order';
import { useHomeZone } from './home-zone';
import { usePreferences, type Preferences } from './preferences';
import { limitShown, temperatureShown, temperatureUnitName } from './units';

/**
 * Numbers, dates and temperatures in the reader's language and units: `const format = useFormats()`.
 * Instants take the time zone of the site they belong to; without one, that of the reader's site.
 */
export interface Formats {
  /** 12,480 */
  integer(value: number): string;
  decimal(value: number, digits: number): string;
  /** 0.9 → 90%, with at most `digits` decimals, and at least `least` */
  percent(fraction: number, digits?: number, least?: number): string;
  /** 1.24 kPa; 90%, as `percent` writes it in both languages */
  withUnit(amount: string, unit: string): string;
  /** House 3, toning or House 4, toning: names have commas of their own */
  anyOf(names: readonly string[]): string;
  /** 23 Nov, or Nov 23 to whom the month comes first */
  dayMonth(date: LocalDate): string;
  /** 23 Nov, or 23–24 Nov from the first to the last */
  days(dates: readonly LocalDate[]): string;
  /** Mon */
  weekday(date: LocalDate): string;
  /** Mon 23 Nov 2026 */
  date(date: LocalDate): string;
  /** 23 Nov, of an instant */
  dayOf(instant: Instant, timeZone?: string): string;
  /** 23 Nov, 09:41 */
  dateTime(instant: Instant, timeZone?: string): string;
  /** November 2026, of 2026-11 */
  month(month: string): string;
  /** 09:41 */
  time(instant: Instant, timeZone?: string): string;
  /** 22.5 °C */
  temperature(celsius: number): string;
  /** 22.5 °C, but 72.5 °F of a limit that is 72.4: to the half degree */
  limit(celsius: number): string;
  /** °C */
  readonly temperatureUnit: string;
}

export function useFormats(): Formats {
  const chosen = usePreferences();
  const homeZone = useHomeZone();
  return useMemo(() => formatsFor({ ...chosen, dates: ownDates(chosen.language) }, homeZone), [chosen, homeZone]);
}

export interface FormatChoice extends Pick<Preferences, 'language' | 'temperature'> {
  /** Whose order and signs dates have; without it what is usual in the language. */
  readonly dates?: DateLocale;
}

export function formatsFor(
  { language, temperature, dates: dateLocale = USUAL_DATES[language] }: FormatChoice,
  homeZone?: string,
): Formats {
  const locale = language === 'es' ? 'es-419' : 'en-GB';
  const numbers = new Map<string, Intl.NumberFormat>();
  const number = (value: number, options: Intl.NumberFormatOptions) => {
    const key = JSON.stringify(options);
    const made = numbers.get(key) ?? new Intl.NumberFormat(locale, options);
    numbers.set(key, made);
    return made.format(value);
  };
  const dates = new Map<string, Intl.DateTimeFormat>();
  const dateFormat = (options: Intl.DateTimeFormatOptions) => {
    const key = JSON.stringify(options);
    const made = dates.get(key) ?? new Intl.DateTimeFormat(dateLocale, options);
    dates.set(key, made);
    return made;
  };
  const date = (at: string | number, options: Intl.DateTimeFormatOptions) => dateFormat(options).format(new Date(at));
  const degrees = (shown: number) =>
    `${number(shown, { minimumFractionDigits: 1, maximumFractionDigits: 1 })} ${temperatureUnitName(temperature)}`;
  const day = { day: 'numeric', month: 'short' } as const;
  const clock = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;
  return {
    integer: (value) => number(value, { maximumFractionDigits: 0 }),
    decimal: (value, digits) => number(value, { minimumFractionDigits: digits, maximumFractionDigits: digits }),
    percent: (fraction, digits = 0, least = 0) =>
      number(fraction, { style: 'percent', minimumFractionDigits: least, maximumFractionDigits: digits }),
    withUnit: (amount, unit) => `${amount}${unit === '%' ? '' : ' '}${unit}`,
    anyOf: (names) => names.join(language === 'es' ? ' o ' : ' or '),
    dayMonth: (at) => date(at, { ...day, timeZone: 'UTC' }),
    days: (all) => {
      const [first = '', last = first] = [all[0], all.at(-1)];
      const range = dateFormat({ ...day, timeZone: 'UTC' });
      // Blanks around the dash and "de" before a month have no room in a narrow column, nor has a single date them.
      return range.formatRange(new Date(first), new Date(last)).replaceAll(/\s–\s/g, '–').replaceAll(' de ', ' ');
    },
    date: (at) => date(at, { ...day, weekday: 'short', year: 'numeric', timeZone: 'UTC' }),
    weekday: (at) => date(at, { weekday: 'short', timeZone: 'UTC' }),
    dayOf: (at, timeZone = homeZone) => date(at, { ...day, timeZone }),
    dateTime: (at, timeZone = homeZone) => date(at, { ...day, ...clock, timeZone }),
    month: (of) => date(`${of}-01T00:00:00Z`, { month: 'long', year: 'numeric', timeZone: 'UTC' }),
    time: (at, timeZone = homeZone) => date(at, { ...clock, timeZone }),
    temperature: (celsius) => degrees(temperatureShown(celsius, temperature)),
    limit: (celsius) => degrees(limitShown(celsius, temperature)),
    temperatureUnit: temperatureUnitName(temperature),
  };
}
