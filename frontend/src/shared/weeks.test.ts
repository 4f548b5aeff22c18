import { describe, expect, it } from 'vitest';
import { dateIn, daysBetween, isDate, isWeek, mondayOf, plusDays, plusWeeks, weekOf } from './weeks';

// Source of the edges: ISO 8601 week calendar, as printed in wall calendars of these years.
describe('ISO weeks', () => {
  it.each([
    ['2026-01-01', '2026-W01', 'a Thursday opens week 1'],
    ['2025-12-29', '2026-W01', 'the last days of a year can belong to the next'],
    ['2027-01-01', '2026-W53', 'the first days of a year can belong to the last'],
    ['2027-01-03', '2026-W53', 'a Sunday still belongs to it'],
    ['2027-01-04', '2027-W01', 'and the Monday after does not'],
    ['2020-12-31', '2020-W53', 'a leap year beginning on a Wednesday has 53 weeks'],
    ['2024-12-30', '2025-W01', 'the Monday of a week 1 in December'],
    ['2026-11-25', '2026-W48', 'an ordinary Wednesday'],
  ])('%s lies in %s: %s', (date, week) => {
    expect(weekOf(date)).toBe(week);
  });

  it.each([
    ['2026-W01', '2025-12-29'],
    ['2026-W53', '2026-12-28'],
    ['2027-W01', '2027-01-04'],
    ['2026-W48', '2026-11-23'],
  ])('%s begins on Monday %s', (week, monday) => {
    expect(mondayOf(week)).toBe(monday);
  });

  it('knows that 2025 has no week 53 and 2026 has', () => {
    expect(isWeek('2025-W53')).toBe(false);
    expect(isWeek('2026-W53')).toBe(true);
  });

  it.each(['2026-W00', '2026-W54', '2026W48', '2026-48', '', 'W48'])('refuses "%s" as a week', (text) => {
    expect(isWeek(text)).toBe(false);
  });

  it('steps over the turn of the year', () => {
    expect(plusWeeks('2026-W52', 2)).toBe('2027-W01');
    expect(plusWeeks('2027-W01', -1)).toBe('2026-W53');
  });
});

describe('dates', () => {
  it('are refused when no calendar has them', () => {
    expect(['2026-02-29', '2026-13-01', '2026-04-31', '26-04-01', 'x'].map(isDate)).toEqual([
      false,
      false,
      false,
      false,
      false,
    ]);
    expect(isDate('2028-02-29')).toBe(true);
  });

  it('are counted in days across a change of summer time', () => {
    expect(plusDays('2026-03-28', 2)).toBe('2026-03-30');
    expect(daysBetween('2026-03-01', '2026-04-01')).toBe(31);
  });

  it('depend on the place: late evening in Lisbon is the next day in Amsterdam', () => {
    const late = Date.parse('2026-11-25T23:30:00Z');
    expect(dateIn('Europe/Lisbon', late)).toBe('2026-11-25');
    expect(dateIn('Europe/Amsterdam', late)).toBe('2026-11-26');
  });
});
