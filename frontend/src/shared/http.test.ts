import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Problem, Unreachable } from './problem';
import { onUnauthorised } from './unauthorised';

vi.stubGlobal('location', { origin: 'http://rootcast.test' });
const { answer, api, once, worthRetrying } = await import('./http');

const network = vi.fn<(request: Request) => Promise<Response>>();
beforeEach(() => vi.stubGlobal('fetch', network));
afterEach(() => network.mockReset());

const json = (body: unknown, status = 200) =>
  new Response(JSON.stringify(body), { status, headers: { 'Content-Type': 'application/json' } });
const asked = () => network.mock.calls[0]?.[0] as Request;

describe('a request', () => {
  test('escapes what stands in its path, and leaves out what is not asked for', async () => {
    network.mockResolvedValue(json({}));
    await answer(
      api.GET('/api/batches/{id}', { params: { path: { id: 'a/b c' }, query: { asOf: undefined, knownAt: '' } } }),
    );
    expect(asked().url).toBe('http://rootcast.test/api/batches/a%2Fb%20c');
  });

  test('carries its key and its body', async () => {
    network.mockResolvedValue(json({ id: 'B1' }, 201));
    const body = { kind: 'count', plants: 3, happenedAt: '2026-11-25T09:41:00Z' } as const;
    await answer(api.POST('/api/batches/{id}/entries', { params: { path: { id: 'B1' }, header: once('k1') }, body }));
    expect(asked().headers.get('Idempotency-Key')).toBe('k1');
    expect(await asked().json()).toEqual(body);
  });

  test('answers what came', async () => {
    network.mockResolvedValue(json([{ code: 'S1' }]));
    expect(await answer(api.GET('/api/sites'))).toEqual([{ code: 'S1' }]);
  });

  test('that is refused throws the problem with its numbers', async () => {
    network.mockResolvedValue(
      json({ type: '/problems/more-than-alive', title: 'More', detail: '5, 2', asked: 5 }, 422),
    );
    const refused = await answer(api.GET('/api/sites')).catch((failure: unknown) => failure);
    expect(refused).toBeInstanceOf(Problem);
    expect(refused).toMatchObject({ status: 422, kind: 'more-than-alive', members: { asked: 5 } });
  });

  test('that is refused for who we are has somebody ask who is signed in; asking that itself does not', async () => {
    const told = vi.fn();
    const leave = onUnauthorised(told);
    network.mockImplementation(() => Promise.resolve(json({ title: 'Signed out' }, 401)));
    await expect(answer(api.GET('/api/session'))).rejects.toMatchObject({ status: 401 });
    expect(told).not.toHaveBeenCalled();
    await expect(answer(api.GET('/api/sites'))).rejects.toMatchObject({ status: 401 });
    expect(told).toHaveBeenCalledTimes(1);
    leave();
  });

  test('about a batch that cannot be computed is not asked again; another fault of the server is', () => {
    const fault = (type: string) => new Problem(500, `/problems/${type}`, '', '', {});
    expect(worthRetrying(fault('batch-not-computed'))).toBe(false);
    expect(worthRetrying(fault('internal'))).toBe(true);
  });

  test('without an answer, or with half of one, may or may not have happened', async () => {
    network.mockRejectedValueOnce(new TypeError('Failed to fetch'));
    await expect(answer(api.GET('/api/sites'))).rejects.toBeInstanceOf(Unreachable);
    network.mockResolvedValueOnce(new Response('[{"code":', { status: 200 }));
    await expect(answer(api.GET('/api/sites'))).rejects.toBeInstanceOf(Unreachable);
  });

  test('that was called off says so, and is not taken for silence', async () => {
    network.mockRejectedValue(new DOMException('called off', 'AbortError'));
    await expect(answer(api.GET('/api/sites'))).rejects.toMatchObject({ name: 'AbortError' });
  });

  test('for what the contract does not have does not compile', () => {
    const wrong = [
      // @ts-expect-error there is no such path
      () => api.GET('/api/batch'),
      // @ts-expect-error there is no such parameter
      () => api.GET('/api/rounds', { params: { query: { sight: 'S1' } } }),
      // @ts-expect-error there is no such parameter beside one that there is
      () => api.GET('/api/rounds', { params: { query: { site: 'S1', sight: 'S1' } } }),
      // @ts-expect-error there is no such member of an order
      () => api.POST('/api/orders', { params: {}, body: { customer: 'C', lines: [], colour: 'red' } }),
      // @ts-expect-error an order needs its lines
      () => api.POST('/api/orders', { params: {}, body: { customer: 'C' } }),
      // @ts-expect-error a batch has no such figure
      async () => (await answer(api.GET('/api/batches/{id}', { params: { path: { id: 'B1' } } }))).plantsAlive,
    ];
    expect(wrong).toHaveLength(6);
  });
});
