import { describe, expect, it } from 'vitest';
import { celsiusTyped, lengthShown, mmTyped, numberTyped, temperatureShown } from './units';

describe('temperatures and lengths', () => {
  // Fixed points of the two scales, and 25.4 mm to the inch by definition.
  it.each([
    [0, 32],
    [100, 212],
    [-40, -40],
    [22, 71.6],
  ])('%d °C is %d °F', (celsius, fahrenheit) => {
    expect(temperatureShown(celsius, 'F')).toBeCloseTo(fahrenheit, 9);
    expect(celsiusTyped(fahrenheit, 'F')).toBeCloseTo(celsius, 4);
  });

  it('21 inch is 533.4 mm, kept as whole 533', () => {
    expect(mmTyped(21, 'in')).toBe(533);
    expect(lengthShown(533.4, 'in')).toBeCloseTo(21, 9);
  });

  it('leave stored units alone', () => {
    expect([temperatureShown(22.5, 'C'), celsiusTyped(22.5, 'C'), lengthShown(533, 'mm'), mmTyped(533, 'mm')]).toEqual([
      22.5, 22.5, 533, 533,
    ]);
  });
});

describe('a typed number', () => {
  it.each([
    ['12', 12],
    ['12,5', 12.5],
    ['12.5', 12.5],
    [' 1 200 ', 1200],
    ['-3', -3],
    ['.5', 0.5],
  ])('"%s" reads as %d', (text, value) => {
    expect(numberTyped(text)).toBe(value);
  });

  it.each(['', 'x', '1,200.5', '12a', '1e3', '--1', '.', '1..2', 'NaN', 'Infinity'])(
    '"%s" is not one number',
    (text) => {
      expect(numberTyped(text)).toBeUndefined();
    },
  );
});
