import { partialMatchKey } from '@tanstack/react-query';
import { describe, expect, test } from 'vitest';
import { groups, isOfBoard, isOfNobody, keys, type Key } from './query-keys';

/**
 * Arguments that try to make one key look like another: every word that stands in some key, at every place where an
 * argument can stand.
 */
const WORDS = [
  'versions',
  'in-force',
  'now',
  'view',
  'entries',
  'series',
  'sensors',
  'readings',
  'items',
  'walk',
  'list',
  'open',
  'rows',
  'cell',
  'x',
];

type Maker = (...args: never[]) => Key;
const made = (make: Maker, word: string): Key =>
  (make as (...args: readonly unknown[]) => Key)(...Array.from({ length: make.length }, () => word));
const all = (of: Record<string, Maker>) =>
  Object.entries(of).flatMap(([name, make]) => WORDS.map((word) => ({ name, key: made(make, word), word })));

/** What each group is there to renew. */
const MEMBERS: Record<keyof typeof groups, readonly (keyof typeof keys)[]> = {
  setup: ['setupList', 'setpoints', 'profileVersions', 'weighedVersion', 'recipeInForce', 'recipeVersions'],
  profiles: ['profileVersions', 'weighedVersion'],
  recipe: ['recipeInForce', 'recipeVersions'],
  batchLists: ['batchList'],
  batch: ['batchView', 'batchEntries', 'batchDevelopment', 'batchExplanation'],
  batchSearches: ['batchSearch'],
  orders: ['openOrdersOf', 'oneOrder'],
  climate: ['climateGlance', 'climateNow', 'climateSeries', 'sensorHealth', 'sensorReadings'],
  house: ['climateNow', 'climateSeries', 'sensorHealth', 'sensorReadings'],
  glances: ['climateGlance'],
  rounds: ['round', 'walk'],
  roundsOf: ['round', 'walk'],
  warnings: ['warningLog', 'warningEvidence'],
  treatments: ['treatmentList', 'closedHouses'],
};

describe('query keys', () => {
  test('of different kinds never begin with one another, whatever they are asked about', () => {
    const found = all(keys);
    const mistaken = found.flatMap((one) =>
      found
        .filter((other) => other.name !== one.name && partialMatchKey(other.key, one.key))
        .map((other) => `${one.name}(${one.word}) begins ${other.name}(${other.word})`),
    );
    expect(mistaken).toEqual([]);
  });

  test.each(Object.entries(MEMBERS))('the group %s renews its members and nothing else', (group, members) => {
    const of = groups[group as keyof typeof groups] as Maker;
    for (const word of WORDS) {
      const reached = Object.entries(keys)
        .filter(([, make]) => partialMatchKey(made(make, word), made(of, word)))
        .map(([name]) => name);
      expect(reached).toEqual(members);
    }
  });

  test('a group of one house, batch, crop or site leaves the others alone', () => {
    expect(partialMatchKey(keys.climateNow('H2'), groups.house('H1'))).toBe(false);
    expect(partialMatchKey(keys.batchEntries('B2'), groups.batch('B1'))).toBe(false);
    expect(partialMatchKey(keys.recipeVersions('sage'), groups.recipe('mint'))).toBe(false);
    expect(partialMatchKey(keys.walk('S2'), groups.roundsOf('S1'))).toBe(false);
  });

  test('an argument left out is not taken for a name', () => {
    expect(partialMatchKey(keys.treatmentList('all', 'x', 'x'), keys.treatmentList(undefined, 'x', 'x'))).toBe(false);
    expect(partialMatchKey(keys.batchView('B1', 'now'), keys.batchView('B1', undefined))).toBe(false);
  });

  test('only the board is of the board', () => {
    const board = Object.entries(keys).filter(([, make]) => isOfBoard(made(make, 'x')));
    expect(board.map(([name]) => name)).toEqual(['boardRows', 'boardCell']);
  });

  test('only the entrance and the question who is signed in outlast a person', () => {
    const kept = Object.entries(keys).filter(([, make]) => isOfNobody(made(make, 'x')));
    expect(kept.map(([name]) => name)).toEqual(['about', 'session']);
  });

  test('one written by hand does not compile', () => {
    // @ts-expect-error a hand-written array is no key
    const byHand: Key = ['rounds', 'S1'];
    expect(byHand).toHaveLength(2);
  });
});
