import { QueryClient, useQueryClient } from '@tanstack/react-query';
import { worthRetrying } from './http';
import { useLiveEvent } from './live-stream';
import { groups, isOfBoard } from './query-keys';

/** One cache of server answers. Its keys are made in query-keys.ts. */
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
  useLiveEvent('batches', () => void queries.invalidateQueries({ queryKey: groups.batchSearches() }));
  useLiveEvent('orders', () => void queries.invalidateQueries({ queryKey: groups.orders() }));
  useLiveEvent('setup', () => void queries.invalidateQueries({ queryKey: groups.setup() }));
  // After a gap too long to replay everything may have changed; the board takes the snapshot itself.
  useLiveEvent('snapshot', () => void queries.invalidateQueries({ predicate: ({ queryKey }) => !isOfBoard(queryKey) }));
}
