import type { ComponentType } from 'react';

/** How the code of each screen is fetched, when it is first opened. */
export const screens = {
  signIn: async () => (await import('../people/sign-in-view')).SignInView,
  board: async () => (await import('../board/board-view')).BoardView,
  floor: async () => (await import('../floor/floor-view')).FloorView,
  batches: async () => (await import('../batches/batches-view')).BatchesView,
  batchStory: async () => (await import('../batches/batch-view')).BatchStory,
  climate: async () => (await import('../climate/climate-view')).ClimateView,
  houseClimate: async () => (await import('../climate/house-view')).HouseClimateView,
  rounds: async () => (await import('../rounds/rounds-view')).RoundsView,
  warnings: async () => (await import('../warnings/warnings-view')).WarningsView,
  treatments: async () => (await import('../treatments/treatments-view')).TreatmentsView,
  feed: async () => (await import('../feed/feed-view')).FeedView,
  whatIf: async () => (await import('../what-if/what-if-view')).WhatIfView,
  trackRecord: async () => (await import('../track-record/track-record-view')).TrackRecordView,
  password: async () => (await import('../people/password-view')).PasswordView,
  sessions: async () => (await import('../people/sessions-view')).SessionsView,
  profiles: async () => (await import('../setup/profiles-view')).ProfilesView,
  csvImport: async () => (await import('../readings/csv-import-view')).CsvImportView,
  ingest: async () => (await import('../readings/ingest-view')).IngestView,
  recipe: async () => (await import('../setup/recipe-view')).RecipeView,
  people: async () => (await import('../people/people-view')).PeopleView,
  keys: async () => (await import('../people/keys-view')).KeysView,
  changes: async () => (await import('../people/changes-view')).ChangesView,
  audit: async () => (await import('../people/audit-view')).AuditView,
  setup: async () => (await import('../setup/setup-view')).SetupView,
} satisfies Readonly<Record<string, () => Promise<ComponentType>>>;

type Screen = keyof typeof screens;

const OF_ROOM: Readonly<Record<string, Screen>> = {
  board: 'board',
  floor: 'floor',
  batches: 'batches',
  climate: 'climate',
  rounds: 'rounds',
  warnings: 'warnings',
  treatments: 'treatments',
  feed: 'feed',
  'what-if': 'whatIf',
  'track-record': 'trackRecord',
  setup: 'setup',
};
const OF_ONE_THING: Readonly<Record<string, Screen>> = { batches: 'batchStory', climate: 'houseClimate' };

/** The screen that an address will show, of those that people open every day; the router knows them all. */
export function screenAt(pathname: string): Screen | undefined {
  const [, room = '', thing] = pathname.split('/');
  return thing ? (OF_ONE_THING[room] ?? OF_ROOM[room]) : OF_ROOM[room];
}
