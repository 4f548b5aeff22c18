import { expect, it } from 'vitest';
import { codeFor, formatOf, NO_FORMAT, placeOf } from './first-day-state';

it('codes are made of names', () => {
  expect(codeFor('House 1')).toBe('house-1');
  expect(codeFor('Invernadero Ñandú', 'norte')).toBe('norte-invernadero-nandu');
  expect(codeFor('A very long name of a house that nobody says')).toBe('a-very-long-name-of-a-house-that');
  expect(codeFor('…')).toBe('');
});

it('a site and its house are made of two names and a zone', () => {
  expect(placeOf({ site: ' Main ', timeZone: 'America/Chicago', house: 'House 1' })).toEqual({
    site: { code: 'main', name: 'Main', timeZone: 'America/Chicago', shipDay: 'MONDAY' },
    house: { code: 'main-house-1', site: 'main', name: 'House 1' },
  });
  expect(placeOf({ site: '', timeZone: '', house: '!' })).toEqual({ missing: ['site', 'timeZone', 'house'] });
});

it('a tray is called by its cells, and is kept in whole millimetres', () => {
  const typed = { ...NO_FORMAT, cells: '105', saleCount: '100', length: '21', width: '10.5' };
  expect(formatOf(typed, 'in')).toEqual({
    // 25.4 mm to the inch: 533.4 and 266.7.
    format: { code: '105', cells: 105, saleCount: 100, lengthMm: 533, widthMm: 267 },
  });
  expect(formatOf({ ...typed, code: 'deep 105' }, 'in')).toEqual({ wrong: ['code'] });
  expect(formatOf({ ...NO_FORMAT, cells: '10.5', saleCount: 'x' }, 'mm')).toEqual({
    wrong: ['cells', 'saleCount', 'length', 'width'],
  });
});
