import { expect, test } from 'vitest';
import { happenedOf } from './happened-choice';

const NOW = Date.parse('2026-11-25T16:00:00Z');

test('an earlier time is one of the site, whatever the clock of the device says', () => {
  expect(happenedOf(undefined, 'America/Denver', NOW)).toBeUndefined();
  expect(happenedOf({ day: '2026-11-25', time: '07:30' }, 'America/Denver', NOW)).toBe('2026-11-25T14:30:00.000Z');
});

test('what is no time, or is still to come, is recorded by nobody', () => {
  expect(happenedOf({ day: '2026-11-25', time: '09:30' }, 'America/Denver', NOW)).toBe('unclear');
  expect(happenedOf({ day: '', time: '07:30' }, 'America/Denver', NOW)).toBe('unclear');
});
