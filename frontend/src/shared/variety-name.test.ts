import { expect, it } from 'vitest';
import { nameParts } from './variety-name';

it.each([
  ["Salvia nemorosa 'Blue Hour'", "'Blue Hour'", 'Salvia nemorosa'],
  ["Calibrachoa 'Joiner's Gold'", "'Joiner's Gold'", 'Calibrachoa'],
  ['Petunia ‘Low Tide’', '‘Low Tide’', 'Petunia'],
  ['Thymus vulgaris', 'Thymus vulgaris', ''],
  ["'Low Tide'", "'Low Tide'", ''],
])('%s is %s of %s', (name, cultivar, kind) => {
  expect(nameParts(name)).toEqual({ cultivar, kind });
});
