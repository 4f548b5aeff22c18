import { expect, it } from 'vitest';
import { formatsFor } from '../shared/formats';
import { climateMessages } from './climate-messages';
import { quantityWordsFor } from './climate-words';

const said = (language: 'en' | 'es') =>
  quantityWordsFor(climateMessages[language], formatsFor({ language, temperature: 'C' }), 'C');

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
