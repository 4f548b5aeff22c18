import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { askAhead, askedAhead, firstQuestions } from './asked-ahead';

const BASE = 'http://nursery.test';
const fetched = vi.fn((request: Request) => Promise.resolve(new Response(request.url)));

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('fetch', fetched);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  fetched.mockClear();
});

describe('what was asked ahead', () => {
  it('serves the same question once', async () => {
    askAhead([`${BASE}/api/sites`]);
    const taken = askedAhead(new Request(`${BASE}/api/sites`));
    expect(await (await taken)?.text()).toBe(`${BASE}/api/sites`);
    expect(fetched).toHaveBeenCalledTimes(1);
    expect(askedAhead(new Request(`${BASE}/api/sites`))).toBeUndefined();
  });

  it('serves no write and no other question', () => {
    askAhead([`${BASE}/api/batches`]);
    expect(askedAhead(new Request(`${BASE}/api/batches`, { method: 'POST' }))).toBeUndefined();
    expect(askedAhead(new Request(`${BASE}/api/batches?state=live`))).toBeUndefined();
  });

  it('serves nobody who comes when it may be old', () => {
    askAhead([`${BASE}/api/sites`]);
    vi.advanceTimersByTime(10_000);
    expect(askedAhead(new Request(`${BASE}/api/sites`))).toBeUndefined();
  });

  it('fails only for who takes it', async () => {
    fetched.mockRejectedValueOnce(new TypeError('no network'));
    askAhead([`${BASE}/api/sites`]);
    await expect(askedAhead(new Request(`${BASE}/api/sites`))).rejects.toThrow('no network');
  });
});

it('asks for what the address shows, and for no list that its filters narrow', () => {
  expect(firstQuestions('/batches/N-1', '')).toContain('/api/batches/N-1');
  expect(firstQuestions('/floor', '?batch=N-1')).toContain('/api/batches/N-1');
  expect(firstQuestions('/batches', '')).toContain('/api/batches?state=live');
  expect(firstQuestions('/batches', '?site=N')).not.toContain('/api/batches?state=live');
  expect(firstQuestions('/', '')).toContain('/api/session');
  expect(firstQuestions('/setup/sensors', '')).toContain('/api/sensors');
  expect(firstQuestions('/setup/readings', '')).not.toContain('/api/sensors');
  // What the search finds in can wait until something stands there.
  expect(firstQuestions('/board', '')).not.toContain('/api/varieties');
});
