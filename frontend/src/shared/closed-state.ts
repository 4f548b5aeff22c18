import type { Schemas } from './contract';

/** Which houses must not be entered. What closes a house is the server's to say; that time has passed is seen here. */

export type ClosedHouse = Schemas['ClosedHouseView'];

export function stillClosed(houses: readonly ClosedHouse[], nowMs: number): ReadonlyMap<string, ClosedHouse> {
  return new Map(houses.filter(({ until }) => nowMs < Date.parse(until)).map((each) => [each.house, each]));
}
