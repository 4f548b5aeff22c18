import { useSyncExternalStore } from 'react';

/** Whether the screen is a phone's: the same width at which the layout changes its shape. */
const narrow = typeof matchMedia === 'undefined' ? undefined : matchMedia('(width <= 800px)');

export function usePhone(): boolean {
  return useSyncExternalStore(
    (changed) => {
      narrow?.addEventListener('change', changed);
      return () => narrow?.removeEventListener('change', changed);
    },
    () => narrow?.matches ?? false,
  );
}
