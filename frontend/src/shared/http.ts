import { Problem, problemOf, Unreachable } from './problem';
import { tellUnauthorised } from './unauthorised';

/** Requests to our own backend. Each either answers the body, or throws a `Problem` (refused) or `Unreachable`. */

export type Query = Readonly<Record<string, string | number | undefined>>;

export function getJson<T>(path: string, query?: Query, signal?: AbortSignal): Promise<T> {
  return request<T>('GET', path + queryString(query), undefined, {}, signal);
}

/**
 * Creates something. Make `idempotencyKey` once per thing a person wants (`newKey()`) and keep it while retrying: the
 * same key with the same body happens once.
 */
export function postJson<T>(path: string, body: unknown, idempotencyKey: string): Promise<T> {
  return request<T>('POST', path, body, { 'Idempotency-Key': idempotencyKey });
}

/** Asks for something that may be asked twice without harm, such as signing in; it has no key. */
export function postPlainly<T>(path: string, body: unknown): Promise<T> {
  return request<T>('POST', path, body);
}

export function putJson<T>(path: string, body: unknown): Promise<T> {
  return request<T>('PUT', path, body);
}

export async function deleteAt(path: string): Promise<void> {
  await request<undefined>('DELETE', path);
}

export function newKey(): string {
  // randomUUID exists only in secure contexts, and a phone on the nursery's own network may come by plain http.
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** `?a=1&b=2` without the values that are undefined or empty. */
export function queryString(query: Query = {}): string {
  const given = Object.entries(query).filter(([, value]) => value !== undefined && value !== '');
  return given.length === 0 ? '' : `?${new URLSearchParams(given.map(([name, value]) => [name, String(value)]))}`;
}

/** A path under /api with its parts escaped: ``at`/batches/${id}` ``. */
export function at(strings: TemplateStringsArray, ...parts: readonly (string | number)[]): string {
  return '/api' + strings.reduce((path, piece, i) => path + encodeURIComponent(String(parts[i - 1])) + piece);
}

/** Where one asks who is signed in, and signs in and out; a 401 from here is an answer, not news. */
export const SESSION_PATH = '/api/session';

async function request<T>(
  method: string,
  path: string,
  body?: unknown,
  headers: Readonly<Record<string, string>> = {},
  signal?: AbortSignal,
): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, {
      method,
      headers: {
        Accept: 'application/json, application/problem+json',
        ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      ...(signal ? { signal } : {}),
    });
  } catch (failure) {
    if (signal?.aborted) throw failure;
    throw new Unreachable(`${method} ${path}`, { cause: failure });
  }
  if ((response.status === 401 || response.status === 403) && path !== SESSION_PATH) tellUnauthorised();
  if (!response.ok) throw await problemOf(response);
  if (response.status === 204 || response.headers.get('Content-Length') === '0') return undefined as T;
  try {
    return (await response.json()) as T;
  } catch (failure) {
    throw new Unreachable(`${method} ${path} was cut short`, { cause: failure });
  }
}

/** A refusal will not change by asking again; silence might. */
export function worthRetrying(failure: unknown): boolean {
  return failure instanceof Unreachable || (failure instanceof Problem && failure.status >= 500);
}
