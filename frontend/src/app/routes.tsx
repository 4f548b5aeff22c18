import type { RouteObject } from 'react-router';
import { StartView } from '../people/start-view';
import { Loading } from '../shared/screen-states';
import { BrokenView, NotFoundView } from './broken-view';
import { screen, type Standing } from './screen';
import { screens } from './screens';
import { Shell } from './shell';

/** Every address of the application. */
export const routesFrom = (standing: Standing): RouteObject[] => [
  {
    path: '/sign-in',
    ErrorBoundary: BrokenView,
    HydrateFallback: Loading,
    ...screen(standing, screens.signIn),
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
          { path: 'board', ...screen(standing, screens.board) },
          { path: 'floor', ...screen(standing, screens.floor) },
          { path: 'batches', ...screen(standing, screens.batches) },
          {
            path: 'batches/:id',
            ...screen(standing, screens.batchStory),
          },
          { path: 'climate', ...screen(standing, screens.climate) },
          {
            path: 'climate/:house',
            ...screen(standing, screens.houseClimate),
          },
          { path: 'rounds', ...screen(standing, screens.rounds) },
          {
            path: 'warnings',
            ...screen(standing, screens.warnings),
          },
          {
            path: 'treatments',
            ...screen(standing, screens.treatments),
          },
          { path: 'feed', ...screen(standing, screens.feed) },
          { path: 'what-if', ...screen(standing, screens.whatIf) },
          {
            path: 'track-record',
            ...screen(standing, screens.trackRecord),
          },
          {
            path: 'account/password',
            ...screen(standing, screens.password),
          },
          {
            path: 'account/sessions',
            ...screen(standing, screens.sessions),
          },
          {
            path: 'setup/crops/:code/profiles/:version?',
            ...screen(standing, screens.profiles),
          },
          {
            path: 'setup/readings',
            ...screen(standing, screens.csvImport),
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
            ...screen(standing, screens.ingest),
          },
          {
            path: 'setup/crops/:code/recipe/:version?',
            ...screen(standing, screens.recipe),
          },
          {
            path: 'setup/people/:name?',
            ...screen(standing, screens.people),
          },
          {
            path: 'setup/keys/:key?',
            ...screen(standing, screens.keys),
          },
          {
            path: 'setup/changes',
            ...screen(standing, screens.changes),
          },
          { path: 'setup/audit', ...screen(standing, screens.audit) },
          {
            path: 'setup/:list?/:code?',
            ...screen(standing, screens.setup),
          },
          { path: '*', Component: NotFoundView },
        ],
      },
    ],
  },
];
