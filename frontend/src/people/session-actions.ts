import { useQueryClient, type QueryClient } from '@tanstack/react-query';
import { useMemo } from 'react';
import { outbox } from '../outbox/outbox';
import { Problem } from '../shared/problem';
import { keys } from '../shared/query-keys';
import type { Door, FirstOwner } from './people-types';
import {
  endEverySession,
  endSession,
  postDoor,
  postOwner,
  postSession,
  readSession,
  tellOtherTabs,
} from './session-api';
import { rememberSession } from './session-memory';
import { handOverAddress, type SignInDraft } from './sign-in-state';

/**
 * Signing in and out. The cookie decides under whose name anything is recorded, so it changes only while the outbox
 * rests. Leaving loads the page anew: nothing of one person stays in the memory of the next one's page.
 */
export function useSessionActions() {
  const queries = useQueryClient();
  return useMemo(
    () => ({
      signIn: (draft: SignInDraft) => entered(queries, () => postSession(draft)),
      enterDoor: (door: Door) => entered(queries, () => postDoor(door)),
      becomeOwner: async (owner: FirstOwner) => {
        await postOwner(owner);
        await entered(queries, () => postSession({ name: owner.name, password: owner.password }));
        await queries.invalidateQueries({ queryKey: keys.about() });
      },
    }),
    [queries],
  );
}

async function entered(queries: QueryClient, enter: () => Promise<unknown>): Promise<void> {
  await outbox.betweenSends(enter);
  tellOtherTabs();
  await queries.fetchQuery({
    queryKey: keys.session(),
    queryFn: ({ signal }) => readSession(signal),
    staleTime: 0,
  });
  void outbox.send();
}

export async function signOut(): Promise<void> {
  await left(endSession);
  location.assign('/sign-in');
}

export async function signOutEverywhere(): Promise<void> {
  await left(endEverySession);
  location.assign('/sign-in');
}

/** At most this long is waited for entries to go out; what is left then waits under its maker's name. */
const SEND_FOR_MS = 5_000;

/** Sends what can be sent, ends the session and asks for the next person. */
export async function handOver(next: string): Promise<void> {
  await Promise.race([outbox.send(), new Promise((resolve) => setTimeout(resolve, SEND_FOR_MS))]);
  await left(endSession);
  location.assign(handOverAddress(next));
}

async function left(end: () => Promise<unknown>): Promise<void> {
  try {
    await outbox.betweenSends(end);
  } catch (failure) {
    // Ended already: that is what was wanted.
    if (!(failure instanceof Problem && failure.status === 401)) throw failure;
  }
  rememberSession(undefined);
  tellOtherTabs();
}
