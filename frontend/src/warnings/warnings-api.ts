import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { WarningView } from '../shared/climate-types';
import { answer, api, newKey, once } from '../shared/http';
import { useLiveEvent } from '../shared/live-stream';
import { useNow } from '../shared/now';
import { groups, keys } from '../shared/query-keys';

const HOUR_MS = 3_600_000;
const AGAIN_MS = 60_000;

interface WarningQuery {
  readonly site?: string | undefined;
  readonly house?: string | undefined;
  readonly from?: string | undefined;
}

/** The log of the last 14 days, or from a moment on. */
export function useWarnings(query: WarningQuery, enabled = true) {
  return useQuery({
    queryKey: keys.warningLog(query),
    queryFn: ({ signal }) => answer(api.GET('/api/warnings', { params: { query }, signal })),
    refetchInterval: AGAIN_MS,
    enabled,
  });
}

/** What a warning rests on, hour by hour; asked for when it is opened. */
export function useEvidence(id: string) {
  return useQuery({
    queryKey: keys.warningEvidence(id),
    queryFn: ({ signal }) => answer(api.GET('/api/warnings/{id}/evidence', { params: { path: { id } }, signal })),
  });
}

/** Those that stand now: what stood at some moment of the last hour. */
export function useStandingWarnings(site: string | undefined, enabled = true) {
  const from = new Date(Math.floor(useNow() / HOUR_MS) * HOUR_MS - HOUR_MS).toISOString();
  return useWarnings({ site, from }, enabled);
}

/** Renews every list of warnings when one was raised, ended or acknowledged. */
export function useLiveWarnings(): void {
  const queries = useQueryClient();
  useLiveEvent('warnings', () => void queries.invalidateQueries({ queryKey: groups.warnings() }));
}

export function acknowledge(id: string, text: string): Promise<WarningView> {
  return answer(
    api.POST('/api/warnings/{id}/acknowledgement', {
      params: { path: { id }, header: once(newKey()) },
      body: text === '' ? {} : { text },
    }),
  );
}
