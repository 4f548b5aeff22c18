import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../shared/http';
import { keys } from '../shared/query-keys';
import type { RoundList } from './rounds-state';

/** What is due at a site by the end of a day, and what was closed on it. Answers to it go by the outbox. */
export function useRound(site: string, on: string) {
  return useQuery({
    queryKey: keys.round(site, on),
    queryFn: ({ signal }) => roundOf(site, on, signal),
    refetchInterval: 120_000,
  });
}

/** The list with when it was asked for: what was sent after that need not be in it, however late it came. */
export async function roundOf(site: string, on: string, signal: AbortSignal): Promise<RoundList> {
  const askedAtMs = Date.now();
  return { askedAtMs, items: await answer(api.GET('/api/rounds', { params: { query: { site, on } }, signal })) };
}

/** The houses of a site in walking order, with what keeps people out. */
export function useWalk(site: string) {
  return useQuery({
    queryKey: keys.walk(site),
    queryFn: ({ signal }) => answer(api.GET('/api/rounds/houses', { params: { query: { site } }, signal })),
  });
}

export function saveWalk(site: string, houses: readonly string[]): Promise<unknown> {
  return answer(api.PUT('/api/rounds/houses', { params: { query: { site } }, body: { houses } }));
}
