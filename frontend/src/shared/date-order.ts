import type { Language } from './preferences';

/** Whose way of writing dates: a locale of the reader's language, as `en-US`. */
export type DateLocale = string;

/** Where nothing is known of the reader's own. Spanish is that of Mexican crews. */
export const USUAL_DATES: Readonly<Record<Language, DateLocale>> = { en: 'en-GB', es: 'es-419' };

/**
 * The reader's own way among the languages the device is set to. An English reader on a device of another language
 * writes as the device's country does: on a Spanish one of the United States the month comes first.
 */
export function datesAmong(language: Language, device: readonly string[]): DateLocale {
  if (language === 'es') return USUAL_DATES.es;
  const own = device.find((tag) => /^en\b/i.test(tag));
  return own ?? (device.some((tag) => /-US$/i.test(tag)) ? 'en-US' : USUAL_DATES.en);
}

/** That of this device. */
export function ownDates(language: Language): DateLocale {
  return datesAmong(language, typeof navigator === 'undefined' ? [] : (navigator.languages ?? [navigator.language]));
}

/** Whether a locale writes the month before the day. */
export function isMonthFirst(dates: DateLocale): boolean {
  const parts = new Intl.DateTimeFormat(dates, { day: 'numeric', month: 'numeric', timeZone: 'UTC' }).formatToParts(0);
  return parts.find(({ type }) => type === 'day' || type === 'month')?.type === 'month';
}
