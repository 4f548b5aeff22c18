import { expect, test } from 'vitest';
import { formatsFor } from '../shared/formats';
import { entryMessages } from './entry-messages';
import { echoWords, entryWords } from './entry-words';

const happenedAt = '2026-11-25T09:00:00Z';
const said = (language: 'en' | 'es') => ({
  t: entryMessages[language],
  format: formatsFor({ language: 'en', temperature: 'C' }),
  houseName: (code: string) => `House ${code}`,
});

test('what was pressed is echoed with what the books had', () => {
  expect(echoWords({ kind: 'count', plants: 190, happenedAt }, 2016, said('en'))).toBe('Count: 190 of 2,016');
  expect(echoWords({ kind: 'loss', plants: 12, cause: 'rot', happenedAt }, 2016, said('en'))).toBe(
    'Loss: 12 of 2,016, Rot',
  );
  expect(echoWords({ kind: 'count', plants: 190, happenedAt }, 2016, said('es'))).toBe('Conteo: 190 de 2,016');
  expect(echoWords({ kind: 'move', house: 'B', happenedAt }, 2016, said('en'))).toBe('Move: to House B');
});

test('what was shipped says for whom, where the order may be seen', () => {
  const ship = { kind: 'ship', trays: 4, order: 'o-1', line: 1, happenedAt } as const;
  expect(entryWords(ship, { ...said('en'), customerOf: () => 'Brightwater Gardens' })).toBe(
    '4 trays, for Brightwater Gardens',
  );
  expect(entryWords(ship, said('en'))).toBe('4 trays, for an order');
});
