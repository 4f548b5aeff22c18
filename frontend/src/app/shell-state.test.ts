import { expect, test } from 'vitest';
import { menuStaysOpen } from './shell-state';

test('the side menu stands open where there is room, on the board too, and never on a phone', () => {
  expect(menuStaysOpen('board', 1440)).toBe(true);
  expect(menuStaysOpen('board', 1024)).toBe(false);
  expect(menuStaysOpen('rounds', 820)).toBe(true);
  expect(menuStaysOpen('rounds', 390)).toBe(false);
});
