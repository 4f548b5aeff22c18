import type { components } from '../../generated/contract';

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
