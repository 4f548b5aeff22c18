import { expect, test } from 'vitest';
import type { BoardCell, BoardRow } from '../shared/api-types';
import { formatsFor } from '../shared/formats';
import { shipDays } from './ship-days';

const row = (site: string, ...dates: readonly string[]) =>
  ({ site, cells: dates.map((date) => ({ date }) as BoardCell) }) as unknown as BoardRow;
const mondays = row('TARROW', '2026-11-23', '2026-11-30');
const tuesdays = row('DUNMAR', '2026-11-24', '2026-12-01');

test('a site that ships on Tuesdays has Tuesdays at the head', () => {
  expect(shipDays([tuesdays, tuesdays])).toEqual([['2026-11-24'], ['2026-12-01']]);
});

test('sites of several ship days share the head, each day once and in order', () => {
  expect(shipDays([tuesdays, mondays, mondays])).toEqual([
    ['2026-11-23', '2026-11-24'],
    ['2026-11-30', '2026-12-01'],
  ]);
});

test('without a row no day is known', () => {
  expect(shipDays([])).toEqual([]);
});

test('days are said together, with a month that they share once', () => {
  const english = formatsFor({ language: 'en', temperature: 'C' });
  expect(english.days(['2026-11-24'])).toBe('24 Nov');
  expect(english.days(['2026-11-23', '2026-11-24'])).toBe('23–24 Nov');
  expect(english.days(['2026-11-30', '2026-12-01'])).toBe('30 Nov–1 Dec');
});
