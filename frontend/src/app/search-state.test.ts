import { describe, expect, it } from 'vitest';
import { findsFor } from './search-state';

const variety = (code: string, name: string) => ({ code, name, crop: 'c' });
const VARIETIES = [
  variety('v1', "Salvia nemorosa 'Blue Hour'"),
  variety('v2', "Blue fescue 'Tin Roof'"),
  variety('v3', "Verbena 'Nimblue'"),
  variety('blue', "Petunia 'Low Tide'"),
];

describe('the search', () => {
  it('puts an exact code first, then names that begin so, then words, then the rest', () => {
    expect(findsFor('blue', VARIETIES, []).map((find) => find.detail)).toEqual(['blue', 'v2', 'v1', 'v3']);
  });

  it('finds without accents', () => {
    expect(findsFor('salvia', [variety('x', 'Sálvia')], []).map((find) => find.name)).toEqual(['Sálvia']);
  });

  it('finds by several words and through a small slip', () => {
    expect(findsFor('hour salvia', VARIETIES, []).map((find) => find.detail)).toEqual(['v1']);
    expect(findsFor('petnuia', VARIETIES, []).map((find) => find.detail)).toEqual(['blue']);
  });

  it('opens a variety on the board by its code', () => {
    expect(findsFor('v1', VARIETIES, [])[0]?.path).toBe('/board?text=v1');
  });

  it('finds nothing for nothing', () => {
    expect(findsFor('  ', VARIETIES, [])).toEqual([]);
  });
});
