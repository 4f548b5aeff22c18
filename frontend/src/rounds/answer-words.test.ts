import { expect, test } from 'vitest';
import { answeredWords, recordedWords } from './answer-words';
import { roundsMessages } from './rounds-messages';

const AT = '2026-11-25T09:00:00Z';
const say = { integer: (n: number) => n.toLocaleString('en-GB'), houseName: (code: string) => `House ${code}` };
const item = { task: 'count', batch: 'N-1', alive: 2016 } as const;

test('a count is echoed with what the books had', () => {
  const words = recordedWords(item, { happenedAt: AT, plants: 190 }, roundsMessages.en, say);
  expect(words).toBe('Count, N-1: 190 of 2,016');
});

test('a sample, a look, pests and a move are echoed with what was typed, in the reader’s language', () => {
  const said = (task: 'count' | 'look-root' | 'scouting' | 'move' | 'mist-off', body: object) =>
    recordedWords({ ...item, task }, { happenedAt: AT, ...body }, roundsMessages.es, say);
  expect(said('count', { sampledTrays: 2, sampledCells: 100, blanks: 7 })).toMatch(/7 vacías en 100/);
  expect(said('look-root', { cells: 50, reached: 0 })).toMatch(/0 de 50/);
  expect(said('scouting', { fungusGnats: 3, shoreFlies: 0, thrips: 7, traps: 4 })).toMatch(
    /3.* 0, Trips 7, en 4 trampas$/,
  );
  expect(said('move', { house: 'B' })).toMatch(/House B$/);
  expect(said('mist-off', {})).toMatch(/anotado$/);
});

test('a closed check says what was found or why not, by whom and when', () => {
  const closed = { at: AT, by: 'Ana Ruiz', reason: null, done: { happenedAt: AT, plants: 990, note: 'even' } };
  const shown = { ...say, at: '25 Nov, 09:00' };
  expect(answeredWords(closed, roundsMessages.en, shown)).toBe('990, even, Ana Ruiz, 25 Nov, 09:00');
  expect(answeredWords({ ...closed, done: null, reason: 'no time' }, roundsMessages.en, shown)).toBe(
    'no time, Ana Ruiz, 25 Nov, 09:00',
  );
});
