import { useQuery } from '@tanstack/react-query';
import { at, getJson, newKey, postJson, queryString } from '../shared/http';
import { keys } from '../shared/query-keys';
import type { Ingest, TableQuestion, TableReport } from '../shared/reading-types';

const csv = (dryRun: boolean) => at`/readings/csv` + queryString({ dryRun: String(dryRun) });

/** Does the whole work and takes it back: nothing is written. */
export function previewTable(question: TableQuestion): Promise<TableReport> {
  return postJson(csv(true), question, newKey());
}

export function takeTable(question: TableQuestion, idempotencyKey: string): Promise<TableReport> {
  return postJson(csv(false), question, idempotencyKey);
}

const AGAIN_MS = 10_000;

export function useIngest() {
  return useQuery({
    queryKey: keys.ingest(),
    queryFn: ({ signal }) => getJson<Ingest>(at`/ingest`, undefined, signal),
    refetchInterval: AGAIN_MS,
    staleTime: 0,
  });
}
