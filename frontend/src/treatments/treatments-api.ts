import { useQuery } from '@tanstack/react-query';
import type { NewTreatment, TreatmentView } from '../shared/climate-types';
import { answer, api, newKey, once } from '../shared/http';
import { keys } from '../shared/query-keys';

export interface TreatmentQuery {
  readonly site: string | undefined;
  readonly house?: string | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** Newest first; of the last 90 days where no time is named. */
export function useTreatments(query: TreatmentQuery) {
  return useQuery({
    queryKey: keys.treatmentList(query.site, query.house, query.from),
    queryFn: ({ signal }) => answer(api.GET('/api/treatments', { params: { query }, signal })),
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
