import { describe, expect, it } from 'vitest';
import { datesAmong, isMonthFirst } from './date-order';

describe('the order of dates', () => {
  it('is that of the reader’s own English among the languages of the device', () => {
    expect(datesAmong('en', ['en-US', 'en'])).toBe('en-US');
    expect(datesAmong('en', ['de-DE', 'en-GB'])).toBe('en-GB');
    expect(datesAmong('en', ['es-US'])).toBe('en-US');
    expect(datesAmong('en', ['de-DE'])).toBe('en-GB');
    expect(datesAmong('en', [])).toBe('en-GB');
  });

  it('is day first for readers of Spanish, whatever the device', () => {
    expect(datesAmong('es', ['en-US'])).toBe('es-419');
  });

  it('is known of a locale', () => {
    expect(['en-US', 'en-GB', 'en-AU', 'es-419'].filter(isMonthFirst)).toEqual(['en-US']);
  });
});
