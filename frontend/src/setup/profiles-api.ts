import { useQuery } from '@tanstack/react-query';
import { answer, api, newKey, once } from '../shared/http';
import type { Schemas } from '../shared/contract';
import type { ProfileVersion } from '../shared/learning-types';
import { keys } from '../shared/query-keys';

/** Versions of a crop's profile, newest first; renewed with the other lists of Setup. */
export function useProfileVersions(crop: string) {
  return useQuery({
    queryKey: keys.profileVersions(crop),
    queryFn: ({ signal }) =>
      answer(api.GET('/api/crops/{code}/profiles', { params: { path: { code: crop } }, signal })),
  });
}

export type Weighed = Schemas['WeighedWire'];

/** What adopting a version would change. Every past batch is foretold anew for it, so it is asked once and kept. */
export function useWeighedVersion(crop: string, version: number) {
  return useQuery({
    queryKey: keys.weighedVersion(crop, version),
    queryFn: ({ signal }) =>
      answer(
        api.GET('/api/crops/{code}/profiles/{version}/weighed', { params: { path: { code: crop, version } }, signal }),
      ),
  });
}

export type Proposal = Schemas['ProposalWire'];

/** Asks for a proposal from the batches so far. It takes effect only when it is adopted. */
export function proposeLearning(crop: string): Promise<Proposal> {
  return answer(api.POST('/api/crops/{code}/learning', { params: { path: { code: crop }, header: once(newKey()) } }));
}

export function adoptProfile(crop: string, version: number, pinned: boolean): Promise<ProfileVersion> {
  return answer(
    api.POST('/api/crops/{code}/profiles/{version}/adoption', {
      params: { path: { code: crop, version }, header: once(newKey()) },
      body: { pinned },
    }),
  );
}
