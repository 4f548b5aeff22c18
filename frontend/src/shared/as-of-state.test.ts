import { describe, expect, test } from 'vitest';
import { asOfIn, momentTyped, withAsOf } from './as-of-state';

const NOW = Date.parse('2026-11-25T12:00:00Z');

describe('the address', () => {
  test('names a moment, kept to the minute, and leaves the rest alone', () => {
    const params = withAsOf(new URLSearchParams('site=north'), '2026-11-20T08:30:12.345Z');
    expect(params.toString()).toBe('site=north&asOf=2026-11-20T08%3A30Z');
    expect(asOfIn(params, NOW)).toBe('2026-11-20T08:30:00.000Z');
    expect(withAsOf(params, undefined).toString()).toBe('site=north');
  });

  test.each(['', 'yesterday', '2026-13-45T99:99Z', '2026-11-26T00:00Z'])(
    '%j is not a moment to look back to',
    (text) => {
      expect(asOfIn(new URLSearchParams({ asOf: text }), NOW)).toBeUndefined();
    },
  );
});

describe('a typed moment', () => {
  // Amsterdam is one hour ahead of UTC in November.
  test('is of the clocks of the site', () => {
    expect(momentTyped('Europe/Amsterdam', '2026-11-20', '930', NOW)).toEqual({ asOf: '2026-11-20T08:30:00.000Z' });
  });

  test('is marked when it cannot be read, does not exist or is still to come', () => {
    expect(momentTyped('Europe/Amsterdam', '', '09:30', NOW)).toEqual({ fault: 'noDay' });
    expect(momentTyped('Europe/Amsterdam', '2026-11-20', 'noon', NOW)).toEqual({ fault: 'noTime' });
    // The clocks went from 02:00 to 03:00 that night.
    expect(momentTyped('Europe/Amsterdam', '2026-03-29', '02:30', NOW)).toEqual({ fault: 'noTime' });
    expect(momentTyped('Europe/Amsterdam', '2026-11-25', '13:01', NOW)).toEqual({ fault: 'toCome' });
  });
});
