import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { arrivedAt, dismiss, hold, notice, noticesNow, release } from './notice-list';

const texts = () => noticesNow().map(({ text }) => text);
const undo = () => undefined;

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  for (const { id } of noticesNow()) dismiss(id);
  vi.useRealTimers();
});

describe('a notice with an undo', () => {
  test('goes by itself', () => {
    notice({ text: 'Count 190 of 2 016', undo }, '/rounds');
    vi.advanceTimersByTime(9_000);
    expect(texts()).toEqual(['Count 190 of 2 016']);
    vi.advanceTimersByTime(2_000);
    expect(texts()).toEqual([]);
  });

  test('stays while somebody points at it, and goes after', () => {
    notice({ text: 'counted', undo }, '/rounds');
    const id = noticesNow()[0]?.id ?? -1;
    hold(id);
    vi.advanceTimersByTime(60_000);
    expect(texts()).toEqual(['counted']);
    release(id);
    vi.advanceTimersByTime(11_000);
    expect(texts()).toEqual([]);
  });

  test('goes with the screen it was made on', () => {
    notice({ text: 'counted', undo }, '/rounds');
    notice({ text: 'stuck', undo }, '/batches/N-1');
    notice({ text: 'copied' }, '/rounds');
    arrivedAt('/batches/N-1');
    expect(texts()).toEqual(['stuck', 'copied']);
  });

  test('is not held on to by the time of one before it', () => {
    notice({ text: 'first', topic: 'rounds', undo }, '/rounds');
    vi.advanceTimersByTime(9_000);
    notice({ text: 'second', topic: 'rounds', undo }, '/rounds');
    vi.advanceTimersByTime(9_000);
    expect(texts()).toEqual(['second']);
  });
});
