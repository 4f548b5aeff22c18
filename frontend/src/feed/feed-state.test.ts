import { describe, expect, test } from 'vitest';
import {
  calculationIn,
  CALCULATIONS,
  digitsFor,
  fieldsOf,
  nitrogenTyped,
  questionOf,
  toRemember,
  unitName,
  unitOf,
} from './feed-state';

const WAY = { rate: 'perVolume', volume: 'spray' } as const;

describe('a question', () => {
  test('carries numbers and amounts with their units, and leaves out what is not said', () => {
    const draft = {
      nitrogenPercent: '20',
      ppm: '100',
      injector: '100',
      stockVolume: '30',
      'stockVolume.unit': '[gal_us]',
    };
    expect(questionOf(fieldsOf('stock', WAY), draft)).toEqual({
      question: { nitrogenPercent: 20, ppm: 100, injector: 100, stockVolume: { value: 30, unit: '[gal_us]' } },
    });
  });

  test('takes the bag as it is printed', () => {
    const asked = (nitrogenPercent: string) =>
      questionOf(fieldsOf('strength', WAY), { nitrogenPercent, injector: '100', fertilizer: '5', stockVolume: '100' });

    expect(asked('20-10-20')).toMatchObject({ question: { nitrogenPercent: 20 } });
    expect([' 15.5 - 0 - 0 ', '17,5–6–18', '21 %', '13-2'].map(nitrogenTyped)).toEqual([15.5, 17.5, 21, 13]);
    expect(['20-10-20-5', 'twenty', '-20', '20-', ''].map(nitrogenTyped)).toEqual(Array(5).fill(undefined));
    expect(asked('all purpose')).toEqual({ faults: new Map([['nitrogenPercent', 'grade']]) });
  });

  test('refuses a tank of nothing, and water without salt is fine', () => {
    const stock = { nitrogenPercent: '20', ppm: '100', injector: '100', stockVolume: '0', clearWaterMsPerCm: '0' };
    expect(questionOf(fieldsOf('stock', WAY), stock)).toEqual({ faults: new Map([['stockVolume', 'zero']]) });
    expect(questionOf(fieldsOf('injector', WAY), { ...stock, fertilizer: '0', stockVolume: '10' })).toEqual({
      faults: new Map([['fertilizer', 'zero']]),
    });
  });

  test('marks what is missing or no number', () => {
    const made = questionOf(fieldsOf('ec', WAY), { measuredMsPerCm: 'high', clearWaterMsPerCm: '0,4' });
    expect('faults' in made && [...made.faults]).toEqual([
      ['measuredMsPerCm', 'number'],
      ['msPerCmPer100Ppm', 'needed'],
    ]);
  });

  test('about a label asks for one rate and one volume, as the label gives them', () => {
    const names = (rate: 'perVolume' | 'liquid' | 'solid', volume: 'spray' | 'area') =>
      fieldsOf('dilution', { rate, volume }).map(({ name }) => name);
    expect(names('perVolume', 'spray')).toEqual(['label', 'product', 'perVolume', 'sprayVolume']);
    expect(names('liquid', 'area')).toEqual(['label', 'activePpm', 'activeMgPerMl', 'areaM2', 'litresPerM2']);
    expect(names('solid', 'spray')).toEqual(['label', 'activePpm', 'activePercent', 'sprayVolume']);
  });

  // 1 000 ft² are 92.903 m²; 2 quarts, half a gallon, to 100 ft² are 204 mL to the m².
  test('about an area takes square feet and gallons of whoever measures in inches', () => {
    const asked = (length: 'mm' | 'in', areaM2: string, litresPerM2: string) =>
      questionOf(fieldsOf('dilution', { rate: 'liquid', volume: 'area' }, length), {
        label: 'x',
        activePpm: '10',
        activeMgPerMl: '4',
        areaM2,
        litresPerM2,
      });
    expect(asked('mm', '100', '0.2')).toMatchObject({ question: { areaM2: 100, litresPerM2: 0.2 } });
    expect(asked('in', '1000', '0.5')).toMatchObject({
      question: { areaM2: 92.903, litresPerM2: expect.closeTo(0.204, 3) },
    });
  });

  test('never sends a field that belongs to another way of the label', () => {
    const draft = { label: 'x', activePpm: '10', activeMgPerMl: '4', product: '5', sprayVolume: '10' };
    const made = questionOf(fieldsOf('dilution', { rate: 'liquid', volume: 'spray' }), draft);
    expect('question' in made && Object.keys(made.question)).toEqual([
      'label',
      'activePpm',
      'activeMgPerMl',
      'sprayVolume',
    ]);
  });
});

test('an amount is in its first unit until another is chosen, and an unknown unit is not taken', () => {
  const [field] = fieldsOf('dilution', { rate: 'perVolume', volume: 'spray' }).slice(2);
  expect(field && unitOf(field, {})).toBe('L');
  expect(field && unitOf(field, { 'perVolume.unit': '[gal_us]' })).toBe('[gal_us]');
  expect(field && unitOf(field, { 'perVolume.unit': 'bucket' })).toBe('L');
});

test('units of the reader stand first, and those of the other system can still be chosen', () => {
  const tank = fieldsOf('stock', WAY, 'in').find(({ name }) => name === 'stockVolume');
  expect(tank?.units).toEqual(['[gal_us]', '[foz_us]', 'L', 'mL']);
  expect(tank && unitOf(tank, {})).toBe('[gal_us]');
  const bag = fieldsOf('strength', WAY, 'in').find(({ name }) => name === 'fertilizer');
  expect(bag && unitOf(bag, {})).toBe('[lb_av]');
});

test('the tank, the injector and the bag are the same the next time; what was wanted is not', () => {
  const draft = { nitrogenPercent: '20-10-20', injector: '100', stockVolume: '30', 'stockVolume.unit': '[gal_us]' };
  expect(toRemember({ ...draft, ppm: '150', label: 'x' })).toEqual(draft);
});

test('answers show three figures and are not rounded away', () => {
  expect([0, 0.0123, 1.234, 12.34, 123.4].map(digitsFor)).toEqual([0, 4, 2, 1, 0]);
});

test('the address names the question', () => {
  for (const of of CALCULATIONS) expect(calculationIn(new URLSearchParams({ of }))).toBe(of);
  expect(calculationIn(new URLSearchParams('of=magic'))).toBe('stock');
});

test('units are said as people write them', () => {
  expect(unitName('[gal_us]')).toBe('gal (US)');
  expect(unitName('hogshead')).toBe('hogshead');
});
