import type { RouteObject } from 'react-router';
import { StartView } from '../people/start-view';
import { Loading } from '../shared/screen-states';
import { BrokenView, NotFoundView } from './broken-view';
import { screen, type Standing } from './screen';
import { Shell } from './shell';

/** Every address of the application. A screen's code is fetched when it is first opened. */
export const routesFrom = (standing: Standing): RouteObject[] => [
  {
    path: '/sign-in',
    ErrorBoundary: BrokenView,
    HydrateFallback: Loading,
    ...screen(standing, async () => (await import('../people/sign-in-view')).SignInView),
  },
  {
    path: '/',
    Component: Shell,
    ErrorBoundary: BrokenView,
    HydrateFallback: Loading,
    children: [
      { index: true, Component: StartView },
      {
        // A broken screen leaves the shell standing.
        ErrorBoundary: BrokenView,
        children: [
          { path: 'board', ...screen(standing, async () => (await import('../board/board-view')).BoardView) },
          { path: 'floor', ...screen(standing, async () => (await import('../floor/floor-view')).FloorView) },
          { path: 'batches', ...screen(standing, async () => (await import('../batches/batches-view')).BatchesView) },
          {
            path: 'batches/:id',
            ...screen(standing, async () => (await import('../batches/batch-view')).BatchStory),
          },
          { path: 'climate', ...screen(standing, async () => (await import('../climate/climate-view')).ClimateView) },
          {
            path: 'climate/:house',
            ...screen(standing, async () => (await import('../climate/house-view')).HouseClimateView),
          },
          { path: 'rounds', ...screen(standing, async () => (await import('../rounds/rounds-view')).RoundsView) },
          {
            path: 'warnings',
            ...screen(standing, async () => (await import('../warnings/warnings-view')).WarningsView),
          },
          {
            path: 'treatments',
            ...screen(standing, async () => (await import('../treatments/treatments-view')).TreatmentsView),
          },
          { path: 'feed', ...screen(standing, async () => (await import('../feed/feed-view')).FeedView) },
          { path: 'what-if', ...screen(standing, async () => (await import('../what-if/what-if-view')).WhatIfView) },
          {
            path: 'track-record',
            ...screen(standing, async () => (await import('../track-record/track-record-view')).TrackRecordView),
          },
          {
            path: 'account/password',
            ...screen(standing, async () => (await import('../people/password-view')).PasswordView),
          },
          {
            path: 'account/sessions',
            ...screen(standing, async () => (await import('../people/sessions-view')).SessionsView),
          },
          {
            path: 'setup/crops/:code/profiles/:version?',
            ...screen(standing, async () => (await import('../setup/profiles-view')).ProfilesView),
          },
          {
            path: 'setup/readings',
            ...screen(standing, async () => (await import('../readings/csv-import-view')).CsvImportView),
          },
          {
            path: 'setup/first-day',
            lazy: async () => ({ Component: (await import('../first-day/first-day-view')).FirstDayView }),
          },
          {
            path: 'setup/batches',
            lazy: async () => ({ Component: (await import('../first-day/batches-import-view')).BatchesImportView }),
          },
          {
            path: 'setup/ingest',
            ...screen(standing, async () => (await import('../readings/ingest-view')).IngestView),
          },
          {
            path: 'setup/crops/:code/recipe/:version?',
            ...screen(standing, async () => (await import('../setup/recipe-view')).RecipeView),
          },
          {
            path: 'setup/people/:name?',
            ...screen(standing, async () => (await import('../people/people-view')).PeopleView),
          },
          {
            path: 'setup/keys/:key?',
            ...screen(standing, async () => (await import('../people/keys-view')).KeysView),
          },
          {
            path: 'setup/changes',
            ...screen(standing, async () => (await import('../people/changes-view')).ChangesView),
          },
          { path: 'setup/audit', ...screen(standing, async () => (await import('../people/audit-view')).AuditView) },
          {
            path: 'setup/:list?/:code?',
            ...screen(standing, async () => (await import('../setup/setup-view')).SetupView),
          },
          { path: '*', Component: NotFoundView },
        ],
      },
    ],
  },
];
