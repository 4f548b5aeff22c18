import type { components, paths } from '../../target/generated/contract';

/**
 * The shapes that cross the wire, as the interface document names them (docs/openapi.json, from which they are made at
 * each build). Instants are ISO 8601 in UTC, dates `YYYY-MM-DD`, weeks `YYYY-Www`, temperatures °C, lengths mm; a
 * quantity's unit is the last word of its name. The reader's units and language are put on only when something is drawn.
 */
export type Schemas = components['schemas'];

/** A record with some of its members given: of those that may be left out, the ones that this kind needs. */
export type Needing<T, K extends keyof T> = { readonly [Name in K]-?: NonNullable<T[Name]> };

/** A list of words that leaves none of `T` out and names no other. */
export function everyWord<T extends string>() {
  return <const L extends readonly T[]>(list: L & ([T] extends [L[number]] ? unknown : never)): L => list;
}

// --- Requests ------------------------------------------------------------------------------------------------------

export type Verb = 'GET' | 'POST' | 'PUT' | 'DELETE';

/** The paths that take a verb. */
export type PathOf<V extends Verb> = {
  [P in keyof paths]: paths[P] extends { readonly [Name in Lowercase<V>]: object } ? P : never;
}[keyof paths];

type OperationOf<P extends keyof paths, V extends Verb> = paths[P] extends {
  readonly [Name in Lowercase<V>]: infer Operation;
}
  ? Operation
  : never;

interface Json<T> {
  readonly content: { readonly 'application/json': T };
}

/** What is sent with a request: parameters by their place, a body if it takes one. */
export type Asked<P extends keyof paths, V extends Verb> = ParamsOf<OperationOf<P, V>> &
  BodyOf<OperationOf<P, V>> & { readonly signal?: AbortSignal };

type ParamsOf<Operation> = Operation extends { readonly parameters: infer Params }
  ? object extends Params
    ? { readonly params?: Params }
    : { readonly params: Params }
  : never;

type BodyOf<Operation> = Operation extends { readonly requestBody?: never }
  ? { readonly body?: never }
  : Operation extends { readonly requestBody: Json<infer Body> }
    ? { readonly body: Body }
    : Operation extends { readonly requestBody?: Json<infer Body> }
      ? { readonly body?: Body }
      : never;

/** What a request answers when it succeeds; undefined where it answers nothing. */
export type Answered<P extends keyof paths, V extends Verb> =
  OperationOf<P, V> extends { readonly responses: infer Responses }
    ? Extract<Responses[keyof Responses & (200 | 201)], Json<unknown>> extends Json<infer Body>
      ? Body
      : undefined
    : never;
