import type { RouteObject } from 'react-router';
import { StartView } from '../people/start-view';
import { Loading } from '../shared/screen-states';
import { BrokenView, NotFoundView } from './broken-view';
import { Shell } from './shell';

/** Every address of the application. A screen's code is fetched when it is first opened. */
export const routes: RouteObject[] = [
  {
    path: '/sign-in',
    ErrorBoundary: BrokenView,
    HydrateFallback: Loading,
    lazy: async () => ({ Component: (await import('../people/sign-in-view')).SignInView }),
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
          { path: 'board', lazy: async () => ({ Component: (await import('../board/board-view')).BoardView }) },
          { path: 'floor', lazy: async () => ({ Component: (await import('../floor/floor-view')).FloorView }) },
          { path: 'batches', lazy: async () => ({ Component: (await import('../batches/batches-view')).BatchesView }) },
          {
            path: 'batches/:id',
            lazy: async () => ({ Component: (await import('../batches/batch-view')).BatchStory }),
          },
          { path: 'climate', lazy: async () => ({ Component: (await import('../climate/climate-view')).ClimateView }) },
          {
            path: 'climate/:house',
            lazy: async () => ({ Component: (await import('../climate/house-view')).HouseClimateView }),
          },
          { path: 'rounds', lazy: async () => ({ Component: (await import('../rounds/rounds-view')).RoundsView }) },
          {
            path: 'warnings',
            lazy: async () => ({ Component: (await import('../warnings/warnings-view')).WarningsView }),
          },
          {
            path: 'treatments',
            lazy: async () => ({ Component: (await import('../treatments/treatments-view')).TreatmentsView }),
          },
          { path: 'feed', lazy: async () => ({ Component: (await import('../feed/feed-view')).FeedView }) },
          { path: 'what-if', lazy: async () => ({ Component: (await import('../what-if/what-if-view')).WhatIfView }) },
          {
            path: 'track-record',
            lazy: async () => ({ Component: (await import('../track-record/track-record-view')).TrackRecordView }),
          },
          {
            path: 'account/password',
            lazy: async () => ({ Component: (await import('../people/password-view')).PasswordView }),
          },
          {
            path: 'account/sessions',
            lazy: async () => ({ Component: (await import('../people/sessions-view')).SessionsView }),
          },
          {
            path: 'setup/crops/:code/profiles/:version?',
            lazy: async () => ({ Component: (await import('../setup/profiles-view')).ProfilesView }),
          },
          {
            path: 'setup/readings',
            lazy: async () => ({ Component: (await import('../readings/csv-import-view')).CsvImportView }),
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
            lazy: async () => ({ Component: (await import('../readings/ingest-view')).IngestView }),
          },
          {
            path: 'setup/crops/:code/recipe/:version?',
            lazy: async () => ({ Component: (await import('../setup/recipe-view')).RecipeView }),
          },
          {
            path: 'setup/people/:name?',
            lazy: async () => ({ Component: (await import('../people/people-view')).PeopleView }),
          },
          {
            path: 'setup/keys/:key?',
            lazy: async () => ({ Component: (await import('../people/keys-view')).KeysView }),
          },
          { path: 'setup/audit', lazy: async () => ({ Component: (await import('../people/audit-view')).AuditView }) },
          {
            path: 'setup/:list?/:code?',
            lazy: async () => ({ Component: (await import('../setup/setup-view')).SetupView }),
          },
          { path: '*', Component: NotFoundView },
        ],
      },
    ],
  },
];
