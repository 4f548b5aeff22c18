import { useSyncExternalStore } from 'react';

/** The device's clock as a value that renews itself: `useNow()` in ms, to the quarter minute. */
const STEP_MS = 15_000;

export function useNow(): number {
  return useSyncExternalStore(subscribe, current);
}

function current(): number {
  return Math.floor(Date.now() / STEP_MS) * STEP_MS;
}

function subscribe(changed: () => void): () => void {
  const timer = setInterval(changed, STEP_MS);
  return () => clearInterval(timer);
}
