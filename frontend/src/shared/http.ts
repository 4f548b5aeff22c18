import createClient, { type Middleware } from 'openapi-fetch';
import type { paths } from '../../target/generated/contract';
import { askedAhead } from './asked-ahead';
import type { Asked, PathOf, Verb, Answered } from './contract';
import { Problem, problemOf, Unreachable } from './problem';
import { tellUnauthorised } from './unauthorised';

/**
 * Requests to our own backend, typed by the interface document: `answer(api.GET('/api/batches/{id}', …))`. Each either
 * answers the body, or throws a `Problem` (refused) or `Unreachable`. A path, a parameter or a member that the document
 * does not have does not compile.
 */
const client = createClient<paths>({
  // The page's own; there is none where only the logic is tested.
  baseUrl: globalThis.location?.origin ?? '',
  headers: { Accept: 'application/json, application/problem+json' },
  querySerializer: (query) => queryString(query as Query),
  // Looked up at each request, so that whoever stands in for the network can do so late.
  fetch: (request) => askedAhead(request) ?? fetch(request),
});

interface Answer<T> {
  readonly data?: T;
}

/** The client's own types take any further parameter or member along without a word; these do not. */
type Api = {
  readonly [V in Verb]: <P extends PathOf<V>>(
    path: P,
    ...asked: object extends Asked<P, V> ? [asked?: Asked<P, V>] : [asked: Asked<P, V>]
  ) => Promise<Answer<Answered<P, V>>>;
};

export const api = client as unknown as Api;

/** Where one asks who is signed in, and signs in and out; a 401 from here is an answer, not news. */
const SESSION_PATH = '/api/session';

const refusals: Middleware = {
  async onResponse({ response, schemaPath }) {
    if ((response.status === 401 || response.status === 403) && schemaPath !== SESSION_PATH) tellUnauthorised();
    if (!response.ok) throw await problemOf(response);
  },
};
client.use(refusals);

/** What was answered, once it is whole. */
export async function answer<T>(asked: Promise<Answer<T>>): Promise<T> {
  try {
    const { data } = await asked;
    return data as T;
  } catch (failure) {
    if (failure instanceof Problem || (failure instanceof DOMException && failure.name === 'AbortError')) throw failure;
    throw new Unreachable('no whole answer came', { cause: failure });
  }
}

/**
 * The header of whatever creates something. Make the key once per thing a person wants (`newKey()`) and keep it while
 * retrying: the same key with the same body happens once.
 */
export function once(idempotencyKey: string): { readonly 'Idempotency-Key': string } {
  return { 'Idempotency-Key': idempotencyKey };
}

export function newKey(): string {
  // randomUUID exists only in secure contexts, and a phone on the nursery's own network may come by plain http.
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

export type Query = Readonly<Record<string, string | number | boolean | undefined>>;

/** `?a=1&b=2` without the values that are undefined or empty. */
export function queryString(query: Query = {}): string {
  const given = Object.entries(query).filter(([, value]) => value !== undefined && value !== '');
  return given.length === 0 ? '' : `?${new URLSearchParams(given.map(([name, value]) => [name, String(value)]))}`;
}

/** A refusal will not change by asking again; silence might. */
export function worthRetrying(failure: unknown): boolean {
  return (
    failure instanceof Unreachable || (failure instanceof Problem && failure.status >= 500 && !failure.isNotComputed)
  );
}
