import { useQuery } from '@tanstack/react-query';
import type { About } from './api-types';
import { at, getJson } from './http';

/** What this server is and how one gets in: open to all. */
export interface Entrance extends About {
  /** Nobody has an account yet: the first start. */
  readonly needsOwner?: boolean;
  /** The business signs in through its own identity provider too. */
  readonly oidc?: boolean;
}

export const ABOUT_KEY = ['about'] as const;

export function useAbout() {
  return useQuery({
    queryKey: ABOUT_KEY,
    queryFn: ({ signal }) => getJson<Entrance>(at`/about`, undefined, signal),
    staleTime: Infinity,
  });
}
