import { describe, expect, it } from 'vitest';
import {
  areaShown,
  areaTyped,
  celsiusTyped,
  lengthShown,
  lightShown,
  mmTyped,
  numberTyped,
  sprayShown,
  sprayTyped,
  temperatureShown,
  umolTyped,
} from './units';

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

describe('light', () => {
  // Full sun of 2 000 µmol/m²/s is about 10 020 fc and 300 about 1 503: 54 lx per µmol (Thimijan & Heins 1983), 10.764 lx
  // to the foot-candle; two figures are shown.
  it.each([
    [2_000, 10_000],
    [300, 1_500],
    [12, 60],
    [0, 0],
  ])('%d µmol/m²/s is shown as %d fc', (umol, footCandles) => {
    expect(lightShown(umol, 'F')).toBe(footCandles);
  });

  it('is typed in foot-candles and kept in µmol', () => {
    expect(umolTyped(1_503, 'F')).toBeCloseTo(300, 0);
    expect([umolTyped(300, 'C'), lightShown(300, 'C')]).toEqual([300, 300]);
  });
});

describe('areas and the spray on them', () => {
  // A foot is 0.3048 m by definition.
  it('1 000 ft² are 92.903 m²', () => {
    expect(areaTyped(1_000, 'in')).toBe(92.903);
    expect(areaShown(92.90304, 'in')).toBeCloseTo(1_000, 6);
    expect([areaTyped(50, 'mm'), areaShown(50, 'mm')]).toEqual([50, 50]);
  });

  // 2 quarts are 0.5 gal = 1.893 L, 100 ft² are 9.290 m²; labels round it to 204 mL/m².
  it('2 quarts to 100 ft² are 204 mL to the m²', () => {
    expect(sprayTyped(0.5, 'in')).toBeCloseTo(0.204, 3);
    expect(sprayShown(0.20373, 'in')).toBeCloseTo(0.5, 4);
    expect([sprayTyped(0.2, 'mm'), sprayShown(0.2, 'mm')]).toEqual([0.2, 0.2]);
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
