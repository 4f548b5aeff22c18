/**
 * Under which key the answer to a question is kept, and which keys are renewed together: the only place where one is
 * made. A key written by hand does not compile, so no question can be missed by the renewal that was meant for it.
 *
 * A group names what is renewed as a whole; it is the beginning of its members' keys and of no others. What a member is
 * stands at a fixed place before its own arguments, so that no argument can make it look like another.
 */

declare const made: unique symbol;
export type Key = readonly unknown[] & { readonly [made]: true };

declare module '@tanstack/react-query' {
  interface Register {
    queryKey: Key;
  }
}

const key = (...parts: readonly [string, ...unknown[]]) => parts as unknown as Key;

/** Keys that are renewed as a whole. */
export const groups = {
  setup: () => key('setup'),
  profiles: (crop: string) => key('setup', 'profiles', crop),
  recipe: (crop: string) => key('setup', 'recipe', crop),
  /** Every list of batches, kept up batch by batch. */
  batchLists: () => key('batch-lists'),
  batch: (id: string) => key('batch', id),
  /** What names batches and is asked for anew when any changes. */
  batchSearches: () => key('batch-searches'),
  orders: () => key('orders'),
  climate: () => key('climate'),
  house: (house: string) => key('climate', house),
  /** All houses together; no house is called null. */
  glances: () => key('climate', null),
  rounds: () => key('rounds'),
  roundsOf: (site: string) => key('rounds', site),
  warnings: () => key('warnings'),
  treatments: () => key('treatments'),
} as const;

/** Keys under which one answer each is kept. An argument left out is `null`, which no name is. */
export const keys = {
  about: () => key('about'),
  session: () => key('session'),
  sessions: () => key('sessions'),
  people: () => key('people'),
  accessKeys: () => key('access-keys'),
  audit: () => key('audit'),
  setupChanges: (text: string) => key('setup-changes', text),
  setupList: (list: string) => key('setup', 'list', list),
  setpoints: (house: string) => key('setup', 'setpoints', house),
  profileVersions: (crop: string) => key('setup', 'profiles', crop, 'versions'),
  weighedVersion: (crop: string, version: number) => key('setup', 'profiles', crop, 'weighed', version),
  recipeInForce: (crop: string) => key('setup', 'recipe', crop, 'in-force'),
  recipeVersions: (crop: string) => key('setup', 'recipe', crop, 'versions'),
  batchList: (query: object) => key('batch-lists', query),
  batchSearch: (text: string) => key('batch-searches', text),
  batchView: (id: string, asOf: string | undefined) => key('batch', id, 'view', asOf ?? null),
  batchEntries: (id: string) => key('batch', id, 'entries'),
  batchDevelopment: (id: string, asOf: string | undefined) => key('batch', id, 'development', asOf ?? null),
  batchExplanation: (id: string, asOf: string | undefined) => key('batch', id, 'explanation', asOf ?? null),
  boardRows: (request: object) => key(BOARD, 'rows', request),
  boardCell: (cell: object, confidence: number, asOf: string | undefined) =>
    key(BOARD, 'cell', cell, confidence, asOf ?? null),
  boardNow: (request: object) => key('board-now', request),
  standIns: (week: string, confidence: number) => key('stand-ins', week, confidence),
  openOrdersOf: (variety: string, trayFormat: string, site: string) => key('orders', 'open', variety, trayFormat, site),
  oneOrder: (id: string) => key('orders', 'one', id),
  climateGlance: (asked: object) => key('climate', null, asked),
  climateNow: (house: string) => key('climate', house, 'now'),
  climateSeries: (house: string, quantity: string, from: string, to: string) =>
    key('climate', house, 'series', quantity, from, to),
  sensorHealth: (house: string) => key('climate', house, 'sensors'),
  sensorReadings: (house: string, sensor: string, from: string) => key('climate', house, 'readings', sensor, from),
  round: (site: string, on: string) => key('rounds', site, 'items', on),
  walk: (site: string) => key('rounds', site, 'walk'),
  warningLog: (query: object) => key('warnings', query),
  warningEvidence: (id: string) => key('warnings', 'evidence', id),
  treatmentList: (site: string | undefined, house: string | undefined, from: string | undefined) =>
    key('treatments', 'list', site ?? null, house ?? null, from ?? null),
  closedHouses: () => key('treatments', 'closed-houses'),
  trackRecord: (leadDays: number, crop: string | undefined) => key('track-record', leadDays, crop ?? null),
  whatIf: (wish: object, confidence: number, weeks: number) => key('what-if', wish, confidence, weeks),
  ingest: () => key('ingest'),
} as const;

const BOARD = 'board';

/** The board follows its stream by itself. */
export function isOfBoard(of: Key): boolean {
  return of[0] === BOARD;
}

/** What does not depend on who is signed in, and the question who it is. */
export function isOfNobody(of: Key): boolean {
  return of[0] === keys.session()[0] || of[0] === keys.about()[0];
}
