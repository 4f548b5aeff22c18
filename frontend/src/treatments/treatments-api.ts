import { useQuery } from '@tanstack/react-query';
import type { NewTreatment, TreatmentView } from '../shared/climate-types';
import { answer, api, newKey, once } from '../shared/http';
import { keys } from '../shared/query-keys';

/** Newest first, of the last 90 days. */
export function useTreatments(site: string | undefined) {
  return useQuery({
    queryKey: keys.treatmentList(site),
    queryFn: ({ signal }) => answer(api.GET('/api/treatments', { params: { query: { site } }, signal })),
    refetchInterval: 60_000,
  });
}

export function recordTreatment(treatment: NewTreatment, key: string): Promise<TreatmentView> {
  return answer(api.POST('/api/treatments', { params: { header: once(key) }, body: treatment }));
}

export function reverseTreatment(id: string, reason: string): Promise<TreatmentView> {
  return answer(
    api.POST('/api/treatments/{id}/reversal', { params: { path: { id }, header: once(newKey()) }, body: { reason } }),
  );
}
