import type { LocalDate } from './api-types';
import { isMonthFirst, type DateLocale } from './date-order';
import type { Language } from './preferences';
import { isDate } from './weeks';

/** Dates in fields, in the order and words of the reader. */

export interface DateReader {
  readonly language: Language;
  readonly dates: DateLocale;
}

/** 30 Nov 2026, or Nov 30, 2026: with the month in words no reader takes it for a day. */
export function dateWritten(date: LocalDate, { language, dates }: DateReader): string {
  const [year, month, day] = date.split('-').map(Number);
  const name = monthName(language, (month ?? 1) - 1, 'short').replace('.', '');
  return isMonthFirst(dates) ? `${name} ${day}, ${year}` : `${day} ${name} ${year}`;
}

/**
 * A date as people type it: `30 Nov 2026`, `30 noviembre 2026`, in figures in the reader's own order (`30/11/2026`), or
 * `2026-11-30`. Undefined when it is none of these, or no day of the calendar.
 */
export function dateTyped(text: string, { dates }: DateReader): LocalDate | undefined {
  const plain = text.trim().toLowerCase();
  if (isDate(plain)) return plain;
  const figures = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(plain);
  if (figures) {
    const [, first, second, year] = figures;
    return isMonthFirst(dates) ? dateOf(year, first, second) : dateOf(year, second, first);
  }
  const dayFirst = /^(\d{1,2})\.?\s+(?:de\s+)?(\p{L}{3,})\.?,?\s+(?:de\s+)?(\d{4})$/u.exec(plain);
  if (dayFirst) return dateOf(dayFirst[3], monthOf(dayFirst[2]), dayFirst[1]);
  const monthFirst = /^(\p{L}{3,})\.?\s+(\d{1,2}),?\s+(\d{4})$/u.exec(plain);
  return monthFirst ? dateOf(monthFirst[3], monthOf(monthFirst[1]), monthFirst[2]) : undefined;
}

function dateOf(year = '', month = '', day = ''): LocalDate | undefined {
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isDate(date) ? date : undefined;
}

/** The number of a month by the beginning of its name in either language. */
function monthOf(word = ''): string | undefined {
  for (const language of ['en', 'es'] as const) {
    for (let month = 0; month < 12; month++) {
      if (monthName(language, month, 'long').startsWith(word)) return String(month + 1);
    }
  }
  return undefined;
}

function monthName(language: Language, month: number, length: 'long' | 'short'): string {
  const name = new Intl.DateTimeFormat(language, { month: length, timeZone: 'UTC' }).format(Date.UTC(1970, month, 1));
  return length === 'long' ? name.toLowerCase() : name;
}
