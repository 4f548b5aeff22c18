import { useQuery } from '@tanstack/react-query';
import { at, deleteAt, getJson, postPlainly, putJson, SESSION_PATH } from '../shared/http';
import { Problem } from '../shared/problem';
import { peopleKeys } from './people-keys';
import type { Door, FirstOwner, OpenSession, Session } from './people-types';
import type { SignInDraft } from './sign-in-state';

/** The session as the server keeps it. Whoever signs in or out uses `session-actions`, which knows of the outbox. */

/** Who is signed in; `null` is nobody. */
export async function readSession(signal?: AbortSignal): Promise<Session | null> {
  try {
    return await getJson<Session>(SESSION_PATH, undefined, signal);
  } catch (failure) {
    if (failure instanceof Problem && failure.status === 401) return null;
    throw failure;
  }
}

/** One answer for every screen. It is asked for again when something is refused, and when the reader comes back. */
export function useSession() {
  return useQuery({
    queryKey: peopleKeys.session(),
    queryFn: ({ signal }) => readSession(signal),
    refetchOnWindowFocus: true,
  });
}

export const postSession = (body: SignInDraft) => postPlainly<undefined>(SESSION_PATH, body);
export const postDoor = (door: Door) => postPlainly<undefined>(at`/session/door`, { door });
export const postOwner = (owner: FirstOwner) => postPlainly<unknown>(at`/owner`, owner);
export const endSession = () => deleteAt(SESSION_PATH);
export const endEverySession = () => deleteAt(at`/session/all`);
export const endOneSession = (id: string) => deleteAt(at`/session/all/${id}`);
export const putPassword = (current: string, password: string) =>
  putJson<undefined>(at`/session/password`, { current, password });

export function useOpenSessions() {
  return useQuery({
    queryKey: peopleKeys.sessions(),
    queryFn: ({ signal }) => getJson<readonly OpenSession[]>(at`/session/all`, undefined, signal),
    staleTime: 0,
  });
}

// --- Other tabs of the same browser share the cookie, so they must hear of it ------------------------------------------

const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('rootcast-session');

export function tellOtherTabs(): void {
  channel?.postMessage(null);
}

export function onOtherTab(listener: () => void): () => void {
  channel?.addEventListener('message', listener);
  return () => channel?.removeEventListener('message', listener);
}
