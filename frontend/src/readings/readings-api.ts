import { useQuery } from '@tanstack/react-query';
import { answer, api, once } from '../shared/http';
import { keys } from '../shared/query-keys';
import type { CsvQuestion, CsvReport } from '../shared/reading-types';

/** Does the whole work and takes it back: nothing is written. */
export function previewCsv(question: CsvQuestion): Promise<CsvReport> {
  return answer(api.POST('/api/readings/csv', { params: { query: { dryRun: true } }, body: question }));
}

export function importCsv(question: CsvQuestion, idempotencyKey: string): Promise<CsvReport> {
  return answer(
    api.POST('/api/readings/csv', {
      params: { query: { dryRun: false }, header: once(idempotencyKey) },
      body: question,
    }),
  );
}

const AGAIN_MS = 10_000;

export function useIngest() {
  return useQuery({
    queryKey: keys.ingest(),
    queryFn: ({ signal }) => answer(api.GET('/api/ingest', { signal })),
    refetchInterval: AGAIN_MS,
    staleTime: 0,
  });
}
