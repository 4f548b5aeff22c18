import { expect, it } from 'vitest';
import { formatsFor } from '../shared/formats';
import { climateMessages } from './climate-messages';
import { quantityWordsFor } from './climate-words';

const said = (language: 'en' | 'es', temperature: 'C' | 'F' = 'C') =>
  quantityWordsFor(climateMessages[language], formatsFor({ language, temperature }), temperature);

it('a band whose ends are the same is said once', () => {
  expect(said('en').band('medium-moisture', { least: 4, most: 4 })).toBe('4 of 5');
  expect(said('es').band('medium-moisture', { least: 3, most: 3 })).toBe('3 de 5');
  expect(said('en').value('relative-humidity', 88)).toBe('88%');
  expect(said('en').band('relative-humidity', { least: 75, most: 90 })).toBe('75 – 90%');
  expect(said('en').band('medium-temperature', { least: 20, most: 20 })).toBe('20.0 °C');
});

it('a level of moisture has no decimals, a mean of several has', () => {
  expect(said('en').band('medium-moisture', { least: 3, most: 4 })).toBe('3 – 4 of 5');
  expect(said('en').value('medium-moisture', 3.5)).toBe('3.5 of 5');
});

// 22 °C are 71.6 °F and 23.3 °C are 73.94 °F.
it('a limit in °F is to the half degree, as recipes show it; what was measured is not', () => {
  const words = said('en', 'F');
  expect(words.band('medium-temperature', { least: 22, most: 23.3 })).toBe('71.5 – 74.0 °F');
  expect(words.band('air-temperature', { least: null, most: 23.3 })).toBe('at most 74.0 °F');
  expect(words.limit('medium-temperature', 22)).toBe('71.5 °F');
  expect(words.value('medium-temperature', 22)).toBe('71.6 °F');
  expect(said('en').limit('medium-temperature', 22)).toBe('22.0 °C');
  expect(words.limit('relative-humidity', 90)).toBe('90%');
});
