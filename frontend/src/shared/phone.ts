import { useSyncExternalStore } from 'react';

/** Whether the screen is a phone's: the same width at which the layout changes its shape. Paper is no phone. */
export const usePhone = narrowerThan('screen and (width <= 800px)');

/** Whether the screen has no room for a table of a dozen columns: a phone or a tablet. */
export const useTablet = narrowerThan('screen and (width <= 1100px)');

function narrowerThan(query: string): () => boolean {
  const narrow = typeof matchMedia === 'undefined' ? undefined : matchMedia(query);
  const subscribe = (changed: () => void) => {
    narrow?.addEventListener('change', changed);
    return () => narrow?.removeEventListener('change', changed);
  };
  return () => useSyncExternalStore(subscribe, () => narrow?.matches ?? false);
}
