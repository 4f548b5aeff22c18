import { describe, expect, it } from 'vitest';
import { found } from './loose-words';

const NAMES = [
  "Petunia 'Low Tide'",
  "Salvia nemorosa 'Blue Hour'",
  "Sálvia 'Red Hour'",
  "Calibrachoa 'Amber 12'",
  "Calibrachoa 'Amber 13'",
];
const finds = (typed: string) => found(NAMES, typed, (name) => name);

describe('what was typed', () => {
  it('finds by several words in any order, without accents and case', () => {
    expect(finds('hour SALVIA')).toEqual(["Salvia nemorosa 'Blue Hour'", "Sálvia 'Red Hour'"]);
    expect(finds('tide petunia low')).toEqual(["Petunia 'Low Tide'"]);
  });

  it.each([
    ['petnuia', "Petunia 'Low Tide'"],
    ['petuna', "Petunia 'Low Tide'"],
    ['pettunia tide', "Petunia 'Low Tide'"],
    ['nemarosa', "Salvia nemorosa 'Blue Hour'"],
    ['callibrachoa 12', "Calibrachoa 'Amber 12'"],
    ['calibrocoa 13', "Calibrachoa 'Amber 13'"],
  ])('"%s" finds %s', (typed, name) => {
    expect(finds(typed)).toEqual([name]);
  });

  it('that is right brings nothing along that is only near', () => {
    expect(finds('amber 12')).toEqual(["Calibrachoa 'Amber 12'"]);
    expect(found(['mint-red', 'mint-bed'], 'mint-red', (code) => code)).toEqual(['mint-red']);
  });

  it.each(['verbena', 'lox', '14', 'petunia hour'])('"%s" finds nothing', (typed) => {
    expect(finds(typed)).toEqual([]);
  });

  it('when empty finds everything', () => {
    expect(finds('  ')).toEqual(NAMES);
  });
});
