import { describe, expect, it } from 'vitest';
import { formatsFor } from './formats';

describe('formats', () => {
  const english = formatsFor({ language: 'en', temperature: 'C' });
  const spanish = formatsFor({ language: 'es', temperature: 'F' });

  it('follow the language', () => {
    expect(english.integer(12480)).toBe('12,480');
    expect(english.date('2026-11-30')).toBe('Mon, 30 Nov 2026');
    expect(spanish.date('2026-11-30')).toMatch(/lun.*30.*nov.*2026/);
  });

  // Orders as CLDR has them for the two locales, written down by hand.
  it('write dates in the order of the reader’s own locale', () => {
    const american = formatsFor({ language: 'en', temperature: 'F', dates: 'en-US' });
    expect(american.dayMonth('2026-11-30')).toBe('Nov 30');
    expect(american.date('2026-11-30')).toBe('Mon, Nov 30, 2026');
    expect(american.days(['2026-11-30', '2026-12-01'])).toBe('Nov 30–Dec 1');
    expect(american.dateTime('2026-11-30T15:05:00Z', 'America/Chicago')).toBe('Nov 30, 09:05');
    expect(english.dateTime('2026-11-30T15:05:00Z', 'America/Chicago')).toBe('30 Nov, 09:05');
  });

  // CLDR: no gap before the sign, in English as in the Spanish of Latin America.
  it('write per cents of a share and of a reading alike', () => {
    expect(english.percent(0.68)).toBe('68%');
    expect(english.withUnit('88', '%')).toBe('88%');
    expect(spanish.percent(0.68)).toBe('68%');
    expect(spanish.withUnit('88', '%')).toBe('88%');
    expect(english.withUnit('1.24', 'kPa')).toBe('1.24 kPa');
  });

  it('offer names that have commas of their own apart from each other', () => {
    expect(english.anyOf(['House 3, toning', 'House 4, toning'])).toBe('House 3, toning or House 4, toning');
    expect(spanish.anyOf(['Nave 3, rústico', 'Nave 4'])).toBe('Nave 3, rústico o Nave 4');
  });

  it('follow the unit of the reader', () => {
    expect(english.temperature(22)).toBe('22.0 °C');
    expect(spanish.temperature(22)).toMatch(/^71[.,]6 °F$/);
  });

  it('show an instant in the time zone of its site', () => {
    expect(english.time('2026-07-01T12:00:00Z', 'Europe/Amsterdam')).toBe('14:00');
    expect(english.time('2026-07-01T12:00:00Z', 'Europe/Lisbon')).toBe('13:00');
  });

  it('never move a plain date by the reader’s time zone', () => {
    expect(english.dayMonth('2026-11-30')).toBe('30 Nov');
  });

  it('write a span of days as short as a single one', () => {
    expect(english.days(['2026-11-30', '2026-12-01'])).toBe('30 Nov–1 Dec');
    expect(spanish.days(['2026-11-30', '2026-12-01'])).toBe('30 nov–1 dic');
    expect(spanish.days(['2026-12-07', '2026-12-08'])).toBe('7–8 dic');
  });
});
