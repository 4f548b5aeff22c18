import { useQuery } from '@tanstack/react-query';
import { at, getJson, newKey, postJson } from '../shared/http';
import type { LearningEvidence, ProfileVersion } from '../shared/learning-types';
import { keys } from '../shared/query-keys';

/** Versions of a crop's profile, newest first; renewed with the other lists of Setup. */
export function useProfileVersions(crop: string) {
  return useQuery({
    queryKey: keys.profileVersions(crop),
    queryFn: ({ signal }) => getJson<readonly ProfileVersion[]>(at`/crops/${crop}/profiles`, undefined, signal),
  });
}

export interface Proposal {
  readonly version: number;
  readonly evidence: LearningEvidence;
}

/** Asks for a proposal from the batches so far. It takes effect only when it is adopted. */
export function proposeLearning(crop: string): Promise<Proposal> {
  return postJson(at`/crops/${crop}/learning`, undefined, newKey());
}

export function adoptProfile(crop: string, version: number, pinned: boolean): Promise<ProfileVersion> {
  return postJson(at`/crops/${crop}/profiles/${version}/adoption`, { pinned }, newKey());
}
