import { describe, expect, it } from 'vitest';
import { dateTyped, dateWritten } from './typed-date';

const ENGLISH = { language: 'en', dates: 'en-GB' } as const;
const AMERICAN = { language: 'en', dates: 'en-US' } as const;
const SPANISH = { language: 'es', dates: 'es-419' } as const;

describe('a date in a field', () => {
  it.each([
    ['2026-11-30', ENGLISH],
    ['30 Nov 2026', ENGLISH],
    ['30 november 2026', SPANISH],
    ['30 de noviembre de 2026', SPANISH],
    ['Nov 30, 2026', AMERICAN],
    ['30/11/2026', ENGLISH],
    ['30.11.2026', SPANISH],
    ['11/30/2026', AMERICAN],
  ] as const)('may be typed as %s', (text, reader) => {
    expect(dateTyped(text, reader)).toBe('2026-11-30');
  });

  it('in figures is read in the order of the reader', () => {
    expect(dateTyped('3/4/2026', ENGLISH)).toBe('2026-04-03');
    expect(dateTyped('3/4/2026', SPANISH)).toBe('2026-04-03');
    expect(dateTyped('3/4/2026', AMERICAN)).toBe('2026-03-04');
  });

  it.each(['', '30', '31 Nov 2026', '30/13/2026', '30 Nou 2026', 'tomorrow', '30/11/26'])('is not "%s"', (text) => {
    expect(dateTyped(text, ENGLISH)).toBeUndefined();
  });

  it('is written so that it is read again as the same, in every month and language', () => {
    for (let month = 1; month <= 12; month++) {
      const date = `2026-${String(month).padStart(2, '0')}-07`;
      for (const reader of [ENGLISH, AMERICAN, SPANISH]) {
        expect(dateTyped(dateWritten(date, reader), reader)).toBe(date);
      }
    }
    expect(dateWritten('2026-11-30', ENGLISH)).toBe('30 Nov 2026');
    expect(dateWritten('2026-11-30', AMERICAN)).toBe('Nov 30, 2026');
  });
});
