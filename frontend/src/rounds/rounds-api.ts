import { useQuery } from '@tanstack/react-query';
import type { HouseOnTheWalk, RoundDone, RoundItem } from '../shared/climate-types';
import { at, getJson, postJson, putJson, queryString } from '../shared/http';
import { keys } from '../shared/query-keys';

/** What is due at a site by the end of a day, and what was closed on it. */
export function useRound(site: string, on: string) {
  return useQuery({
    queryKey: keys.round(site, on),
    queryFn: ({ signal }) => getJson<readonly RoundItem[]>(at`/rounds`, { site, on }, signal),
    refetchInterval: 120_000,
  });
}

/** The houses of a site in walking order, with what keeps people out. */
export function useWalk(site: string) {
  return useQuery({
    queryKey: keys.walk(site),
    queryFn: ({ signal }) => getJson<readonly HouseOnTheWalk[]>(at`/rounds/houses`, { site }, signal),
  });
}

export function saveWalk(site: string, houses: readonly string[]): Promise<unknown> {
  return putJson(at`/rounds/houses` + queryString({ site }), { houses });
}

export function closeDone(id: string, done: RoundDone, key: string): Promise<unknown> {
  return postJson(at`/rounds/${id}/done`, done, key);
}

export function closeSkipped(id: string, reason: string, happenedAt: string, key: string): Promise<unknown> {
  return postJson(at`/rounds/${id}/skipped`, { reason, happenedAt }, key);
}

export function reopen(id: string, reason: string, key: string): Promise<unknown> {
  return postJson(at`/rounds/${id}/undo`, { reason }, key);
}
