import { useEffect, useSyncExternalStore } from 'react';

/** The one h1 stands in the shell's header; a screen says what it reads with `useScreenTitle('Floor')`. */
let current = '';
const listeners = new Set<() => void>();

export function useScreenTitle(title: string): void {
  useEffect(() => {
    current = title;
    document.title = title ? `${title} · Rootcast` : 'Rootcast';
    for (const changed of listeners) changed();
  }, [title]);
}

export function useCurrentTitle(): string {
  return useSyncExternalStore(
    (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    () => current,
  );
}
