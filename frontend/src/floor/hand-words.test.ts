import { expect, test } from 'vitest';
import type { HandReading, ReadingMessage } from '../outbox/outbox-state';
import { formatsFor } from '../shared/formats';
import { handMessages } from './hand-messages';
import { readingWords } from './hand-words';

const english = formatsFor({ language: 'en', temperature: 'C' });

const message = (reading: Pick<HandReading, 'quantity' | 'value' | 'unit'>): ReadingMessage => ({
  to: 'reading',
  site: 'NORTH',
  houseName: 'House 1',
  reading: { house: 'N1', at: '2026-11-25T16:41:00Z', ...reading },
});

test('a reading is told in the unit it was read in and by the clock of its site', () => {
  const fahrenheit = message({ quantity: 'air-temperature', value: 71.5, unit: '[degF]' });
  expect(readingWords(fahrenheit, handMessages.en, english, 'America/Los_Angeles')).toEqual({
    what: 'Air: 71.5 °F',
    about: expect.stringMatching(/^House 1, .*8:41/),
  });
});

test('moisture is told by its level, in both languages', () => {
  const level = message({ quantity: 'medium-moisture', value: 3, unit: '{level}' });
  expect(readingWords(level, handMessages.en, english, undefined).what).toBe('Moisture: 3 of 5');
  expect(readingWords(level, handMessages.es, formatsFor({ language: 'es', temperature: 'C' }), undefined).what).toBe(
    'Humedad del sustrato: 3 de 5',
  );
});
