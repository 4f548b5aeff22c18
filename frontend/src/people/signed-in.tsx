import { createContext, useContext } from 'react';
import type { Grant, Session } from './people-types';
import { may, type Right } from './rights-state';

/** Who the screens are drawn for. It stays while a session has ended, so that no form goes away under its reader. */
const SignedIn = createContext<Session | undefined>(undefined);
export const SignedInProvider = SignedIn.Provider;

const NONE: readonly Grant[] = [];

export function useSignedIn(): Session | undefined {
  return useContext(SignedIn);
}

export function useGrants(): readonly Grant[] {
  return useSignedIn()?.grants ?? NONE;
}

/** Whether the reader may do that at `site`; without a site, anywhere. Decides what is offered, not what happens. */
export function useMay(right: Right, site?: string): boolean {
  return may(useGrants(), right, site);
}
