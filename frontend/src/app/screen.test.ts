import { createMemoryRouter, createPath } from 'react-router';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { dismiss, noticesNow } from '../shared/notice-list';
import { appMessages } from './app-messages';
import { screen, ScreenNotFetched } from './screen';

/** Opening a screen whose code does not come. */

const Floor = () => null;
const Feed = () => null;

describe('a screen', () => {
  let reachable = true;
  const fetched = vi.fn(async () => {
    if (!reachable) throw new TypeError('Failed to fetch dynamically imported module');
    return Feed;
  });
  const standing = () => {
    const { initialized, errors, location } = router.state;
    return initialized && errors === null ? createPath(location) : undefined;
  };
  const opened = (at: string) =>
    createMemoryRouter(
      [
        { path: '/floor', ...screen(standing, async () => Floor) },
        { path: '/feed', ...screen(standing, fetched) },
      ],
      { initialEntries: [at] },
    ).initialize();
  let router = createMemoryRouter([{ path: '/' }]);

  beforeEach(async () => {
    vi.stubGlobal('location', { pathname: '/floor' });
    reachable = true;
    fetched.mockClear();
    router = opened('/floor?site=NORTH');
    await vi.waitFor(() => expect(router.state.initialized).toBe(true));
  });
  afterEach(() => {
    noticesNow().forEach(({ id }) => dismiss(id));
    router.dispose();
    vi.unstubAllGlobals();
  });

  it('that was not fetched leaves one where one is, and says so once', async () => {
    reachable = false;
    await router.navigate('/feed');
    await router.navigate('/feed');
    expect(createPath(router.state.location)).toBe('/floor?site=NORTH');
    expect(router.state.errors).toBeNull();
    expect(noticesNow().map(({ text }) => text)).toEqual([appMessages.en.screenNotHere]);
  });

  it('opens when it is asked for again with a connection, and is fetched no more than once then', async () => {
    reachable = false;
    await router.navigate('/feed');
    reachable = true;
    await router.navigate('/feed');
    expect(router.state.location.pathname).toBe('/feed');
    await router.navigate('/floor');
    await router.navigate('/feed');
    expect(fetched).toHaveBeenCalledTimes(2);
  });

  it('that is the first of all breaks as what it is', async () => {
    reachable = false;
    router.dispose();
    router = opened('/feed');
    await vi.waitFor(() => expect(router.state.initialized).toBe(true));
    expect(Object.values(router.state.errors ?? {})).toEqual([expect.any(ScreenNotFetched)]);
  });
});
