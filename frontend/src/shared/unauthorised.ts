/**
 * Who must know when the server refuses us for who we are (401, 403): the session may have ended, or its rights may have
 * changed. A listener asks the server again; a refusal alone proves neither.
 */
const listeners = new Set<() => void>();

export function onUnauthorised(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function tellUnauthorised(): void {
  for (const listener of listeners) listener();
}
