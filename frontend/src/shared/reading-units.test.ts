import { expect, it } from 'vitest';
import { MEASURED, needsLightSource, unitName, unitsOf } from './reading-units';

it('names every unit that a sensor may show as people write it', () => {
  expect(unitsOf('air-temperature').map(unitName)).toEqual(['°C', '°F']);
  expect(unitsOf('light').map(unitName)).toEqual(['µmol/m²/s', 'lx', 'fc']);
  expect(unitsOf('ec').map(unitName)).toEqual(['mS/cm', 'dS/m', 'µS/cm']);
  expect(MEASURED.every((quantity) => unitsOf(quantity).length > 0)).toBe(true);
});

it('has no units for what is no quantity, and keeps a unit that it does not know', () => {
  expect(unitsOf('dew-point')).toEqual([]);
  expect(unitsOf('')).toEqual([]);
  expect(unitName('kPa')).toBe('kPa');
});

it('asks for the lamp where the unit follows the eye', () => {
  expect(unitsOf('light').filter(needsLightSource)).toEqual(['lx', 'lm/[sft_i]']);
});
