import type { ComponentType } from 'react';
import { replace, type RouteObject } from 'react-router';
import { notice } from '../shared/notice-list';
import { preferences } from '../shared/preferences';
import { appMessages } from './app-messages';

/** The code of a screen could not be fetched: most often there is no network. */
export class ScreenNotFetched extends Error {}

/** Where one stands on a screen that is whole; undefined before the first and on a broken one. */
export type Standing = () => string | undefined;

/**
 * A screen whose code is fetched when it is first opened. Where that fails one stays on the screen one has, with what
 * was typed there, and may press again: a failed fetch is not kept, as the router's own `lazy` keeps it until the page
 * is loaded anew.
 */
export function screen(
  standing: Standing,
  fetchCode: () => Promise<ComponentType>,
): Pick<RouteObject, 'loader' | 'Component' | 'shouldRevalidate'> {
  let code: ComponentType | undefined;
  return {
    loader: async () => {
      try {
        code ??= await fetchCode();
        return null;
      } catch (failed) {
        const here = standing();
        if (here === undefined) throw new ScreenNotFetched('a screen was not fetched', { cause: failed });
        notice({ text: appMessages[preferences().language].screenNotHere, topic: 'screen' });
        return replace(here);
      }
    },
    // The code of a screen does not change with its address.
    shouldRevalidate: () => false,
    Component: () => {
      const Screen = code;
      if (!Screen) throw new ScreenNotFetched('a screen was drawn before it was fetched');
      return <Screen />;
    },
  };
}
