import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../shared/http';
import { Problem, problemOf, Unreachable } from '../shared/problem';
import { keys } from '../shared/query-keys';
import type { Door, FirstOwner, Session } from './people-types';
import type { SignInDraft } from './sign-in-state';

/** The session as the server keeps it. Whoever signs in or out uses `session-actions`, which knows of the outbox. */

/** Who is signed in; `null` is nobody. */
export async function readSession(signal?: AbortSignal): Promise<Session | null> {
  try {
    return await answer(api.GET('/api/session', signal ? { signal } : {}));
  } catch (failure) {
    if (failure instanceof Problem && failure.status === 401) return null;
    throw failure;
  }
}

/** One answer for every screen. It is asked for again when something is refused, and when the reader comes back. */
export function useSession() {
  return useQuery({
    queryKey: keys.session(),
    queryFn: ({ signal }) => readSession(signal),
    refetchOnWindowFocus: true,
  });
}

export const postSession = (body: SignInDraft) => answer(api.POST('/api/session', { body }));
export const postOwner = (body: FirstOwner) => answer(api.POST('/api/owner', { body }));
export const endSession = () => answer(api.DELETE('/api/session'));
export const endEverySession = () => answer(api.DELETE('/api/session/all'));
export const endOneSession = (id: string) => answer(api.DELETE('/api/session/all/{id}', { params: { path: { id } } }));
export const putPassword = (current: string, password: string) =>
  answer(api.PUT('/api/session/password', { body: { current, password } }));

/** Only the demo has doors, and the interface document is that of the application without it. */
export async function postDoor(door: Door): Promise<void> {
  let response: Response;
  try {
    response = await fetch('/api/session/door', {
      method: 'POST',
      headers: { Accept: 'application/problem+json', 'Content-Type': 'application/json' },
      body: JSON.stringify({ door }),
    });
  } catch (failure) {
    throw new Unreachable('no whole answer came', { cause: failure });
  }
  if (!response.ok) throw await problemOf(response);
}

export function useOpenSessions() {
  return useQuery({
    queryKey: keys.sessions(),
    queryFn: ({ signal }) => answer(api.GET('/api/session/all', { signal })),
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
