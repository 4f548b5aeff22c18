import { expect, it } from 'vitest';
import { screenAt } from './screens';

it.each([
  ['/board', 'board'],
  ['/batches', 'batches'],
  ['/batches/N-2648-004', 'batchStory'],
  ['/climate/N-1', 'houseClimate'],
  ['/setup/sensors', 'setup'],
  ['/', undefined],
  ['/sign-in', undefined],
])('the screen at %s is %s', (pathname, screen) => {
  expect(screenAt(pathname)).toBe(screen);
});
