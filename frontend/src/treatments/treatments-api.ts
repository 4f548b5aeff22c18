import { useQuery } from '@tanstack/react-query';
import type { NewTreatment, TreatmentView } from '../shared/climate-types';
import { at, getJson, newKey, postJson } from '../shared/http';
import { keys } from '../shared/query-keys';

/** Newest first, of the last 90 days. */
export function useTreatments(site: string | undefined) {
  return useQuery({
    queryKey: keys.treatmentList(site),
    queryFn: ({ signal }) => getJson<readonly TreatmentView[]>(at`/treatments`, { site }, signal),
    refetchInterval: 60_000,
  });
}

export function recordTreatment(treatment: NewTreatment, key: string): Promise<TreatmentView> {
  return postJson(at`/treatments`, treatment, key);
}

export function reverseTreatment(id: string, reason: string): Promise<TreatmentView> {
  return postJson(at`/treatments/${id}/reversal`, { reason }, newKey());
}
