import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useSyncExternalStore } from 'react';
import { readSession } from '../people/session-api';
import { rememberedSession } from '../people/session-memory';
import { at, postJson } from '../shared/http';
import { tellUnauthorised } from '../shared/unauthorised';
import { Outbox, type Receipt } from './floor-outbox';
import type { OutboxView } from './outbox-state';

/** The one outbox of the application. It starts with the first screen that needs it and goes on while the page lives. */
export const outbox = new Outbox({
  post: ({ batch, entry, key }) => postJson<Receipt>(at`/batches/${batch}/entries`, entry, key),
  pressedBy: () => {
    const session = rememberedSession();
    return session ? { name: session.name, displayName: session.displayName } : null;
  },
  signedIn: async () => {
    const name = (await readSession())?.name;
    // Another tab may have signed somebody else in: the page must learn that too.
    if (name !== rememberedSession()?.name) tellUnauthorised();
    return name;
  },
});

let started = false;

export function startOutbox(): void {
  if (started) return;
  started = true;
  const again = () => void outbox.send();
  addEventListener('online', again);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') again();
  });
  void outbox.start();
}

export function useOutbox(): OutboxView {
  useEffect(startOutbox, []);
  return useSyncExternalStore(outbox.subscribe, outbox.current);
}

/** Renews a batch's figures as soon as an entry about it is acknowledged. */
export function useRenewAfterSending(): void {
  const queries = useQueryClient();
  useEffect(
    () => outbox.onSent(({ batch }) => void queries.invalidateQueries({ queryKey: ['batch', batch] })),
    [queries],
  );
}
