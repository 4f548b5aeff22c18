import { useSyncExternalStore } from 'react';

/** How this reader likes to see things; kept on the device, never sent. */
export interface Preferences {
  readonly language: Language;
  readonly temperature: 'C' | 'F';
  readonly length: 'mm' | 'in';
  readonly theme: 'system' | 'light' | 'dark';
}

export type Language = 'en' | 'es';

const STORED_AS = 'rootcast.preferences';
const listeners = new Set<() => void>();
let current = read();

export function preferences(): Preferences {
  return current;
}

export function prefer(change: Partial<Preferences>): void {
  current = { ...current, ...change };
  try {
    localStorage.setItem(STORED_AS, JSON.stringify(current));
  } catch {
    // A full or forbidden store costs the memory of the choice, not the choice.
  }
  for (const changed of listeners) changed();
}

export function usePreferences(): Preferences {
  return useSyncExternalStore(subscribe, preferences);
}

function subscribe(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}

function read(): Preferences {
  const locale = typeof navigator === 'undefined' ? 'en' : navigator.language;
  const american = locale.endsWith('-US');
  const usual: Preferences = {
    language: locale.startsWith('es') ? 'es' : 'en',
    temperature: american ? 'F' : 'C',
    length: american ? 'in' : 'mm',
    theme: 'system',
  };
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(STORED_AS) ?? '{}');
    return typeof stored === 'object' && stored !== null ? { ...usual, ...stored } : usual;
  } catch {
    return usual;
  }
}
