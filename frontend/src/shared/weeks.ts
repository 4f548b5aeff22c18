import type { IsoWeek, LocalDate } from './api-types';

/** ISO 8601 weeks and plain dates, without time zones: a date here is a square on a wall calendar. */

const DAY_MS = 86_400_000;

/** 00:00 UTC of the date, or NaN when it is not one. */
function dayMs(date: LocalDate): number {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : NaN;
  // Date.parse takes 31 February for 3 March in some engines.
  return new Date(ms).toJSON()?.startsWith(date) ? ms : NaN;
}

export function isDate(text: string): boolean {
  return !Number.isNaN(dayMs(text));
}

export function plusDays(date: LocalDate, days: number): LocalDate {
  return new Date(dayMs(date) + days * DAY_MS).toISOString().slice(0, 10);
}

export function daysBetween(fromInclusive: LocalDate, untilExclusive: LocalDate): number {
  return Math.round((dayMs(untilExclusive) - dayMs(fromInclusive)) / DAY_MS);
}

export function mondayOf(week: IsoWeek): LocalDate {
  const [year, number] = parts(week);
  // 4 January is always in week 1.
  const fourth = Date.UTC(year, 0, 4);
  const daysSinceMonday = (new Date(fourth).getUTCDay() + 6) % 7;
  return new Date(fourth + ((number - 1) * 7 - daysSinceMonday) * DAY_MS).toISOString().slice(0, 10);
}

export function weekOf(date: LocalDate): IsoWeek {
  const ms = dayMs(date);
  // The Thursday decides to which year a week belongs.
  const thursday = new Date(ms + (3 - ((new Date(ms).getUTCDay() + 6) % 7)) * DAY_MS);
  const year = thursday.getUTCFullYear();
  const number = 1 + Math.floor((thursday.getTime() - Date.UTC(year, 0, 1)) / (7 * DAY_MS));
  return `${year}-W${String(number).padStart(2, '0')}`;
}

export function isWeek(text: string): boolean {
  return /^\d{4}-W\d{2}$/.test(text) && Number(text.slice(6)) >= 1 && weekOf(mondayOf(text)) === text;
}

export function plusWeeks(week: IsoWeek, weeks: number): IsoWeek {
  return weekOf(plusDays(mondayOf(week), weeks * 7));
}

/** The week number alone, as spoken: 48. */
export function weekNumber(week: IsoWeek): number {
  return parts(week)[1];
}

const calendars = new Map<string | undefined, Intl.DateTimeFormat>();

/** The date it is at `instantMs` in a time zone. */
export function dateIn(timeZone: string | undefined, instantMs: number): LocalDate {
  // Kept by zone: making one takes longer than drawing the row that asks for it.
  const calendar =
    calendars.get(timeZone) ??
    new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  calendars.set(timeZone, calendar);
  return calendar.format(instantMs);
}

function parts(week: IsoWeek): [year: number, number: number] {
  return [Number(week.slice(0, 4)), Number(week.slice(6))];
}
