import type { Session } from './people-types';

/**
 * Who this page takes itself to be for: entries are stamped with it, and it stands in while the server does not answer.
 * Not a proof of anything; that is the cookie, which no script can read.
 */
const STORED_AS = 'rootcast.signed-in';
let current: Session | undefined = read();

export function rememberedSession(): Session | undefined {
  return current;
}

export function rememberSession(session: Session | undefined): void {
  current = session;
  try {
    if (session) localStorage.setItem(STORED_AS, JSON.stringify(session));
    else localStorage.removeItem(STORED_AS);
  } catch {
    // A full or forbidden store costs the memory, not the session.
  }
}

const NEXT = 'rootcast.next';

/** Where to go on after a sign-in that leaves the page for another server. */
export function keepNext(next: string): void {
  try {
    sessionStorage.setItem(NEXT, next);
  } catch {
    // Then one begins at the start.
  }
}

export function takeNext(): string | undefined {
  try {
    const next = sessionStorage.getItem(NEXT) ?? undefined;
    sessionStorage.removeItem(NEXT);
    return next;
  } catch {
    return undefined;
  }
}

function read(): Session | undefined {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(STORED_AS) ?? 'null');
    return stored !== null && typeof stored === 'object' && 'name' in stored && 'grants' in stored
      ? (stored as Session)
      : undefined;
  } catch {
    return undefined;
  }
}
