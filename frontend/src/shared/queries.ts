import { QueryClient, useQueryClient } from '@tanstack/react-query';
import { worthRetrying } from './http';
import { useLiveEvent } from './live-stream';

/** One cache of server answers. Keys begin with the capability: `['batches', …]`, `['orders', …]`, `['setup', …]`. */
export function newQueryClient(): QueryClient {
  return new QueryClient({
    defaultOptions: {
      queries: {
        retry: (failures, failure) => failures < 2 && worthRetrying(failure),
        // The stream says when something changed; asking again on every focus would only move things under the reader.
        staleTime: 60_000,
        refetchOnWindowFocus: false,
      },
      mutations: { retry: false, networkMode: 'always' },
    },
  });
}

/** Renews what the stream says has changed. Used once, by the shell. */
export function useLiveQueries(): void {
  const queries = useQueryClient();
  useLiveEvent('batches', () => void queries.invalidateQueries({ queryKey: ['batches'] }));
  useLiveEvent('orders', () => void queries.invalidateQueries({ queryKey: ['orders'] }));
  useLiveEvent('setup', () => void queries.invalidateQueries({ queryKey: ['setup'] }));
  // After a gap too long to replay everything may have changed; the board takes the snapshot itself.
  useLiveEvent(
    'snapshot',
    () => void queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'board' }),
  );
}
