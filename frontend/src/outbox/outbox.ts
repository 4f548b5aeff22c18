import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useSyncExternalStore } from 'react';
import { readSession } from '../people/session-api';
import { rememberedSession } from '../people/session-memory';
import { answer, api, once } from '../shared/http';
import { groups } from '../shared/query-keys';
import { tellUnauthorised } from '../shared/unauthorised';
import { Outbox, type Receipt } from './device-outbox';
import { laneOf, type OutboxView, type ReadingMessage, type RoundMessage, type Waiting } from './outbox-state';

/** The one outbox of the application. It starts with the shell, whatever the screen, and goes on while the page lives. */
export const outbox = new Outbox({
  post,
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

function post({ message, key }: Waiting): Promise<Receipt> {
  switch (message.to) {
    case 'batch':
      return answer(
        api.POST('/api/batches/{id}/entries', {
          params: { path: { id: message.batch }, header: once(key) },
          body: message.entry,
        }),
      );
    case 'round':
      return postRound(message, key);
    case 'reading':
      return postReading(message, key);
  }
}

/** Alone in its message: of several together some could be taken and others not. */
async function postReading({ reading }: ReadingMessage, key: string): Promise<Receipt> {
  await answer(api.POST('/api/readings', { params: { header: once(key) }, body: [reading] }));
  return { id: key };
}

function postRound({ item, answer: { verb, body } }: RoundMessage, key: string): Promise<Receipt> {
  const params = { path: { id: item }, header: once(key) };
  switch (verb) {
    case 'done':
      return answer(api.POST('/api/rounds/{id}/done', { params, body }));
    case 'skipped':
      return answer(api.POST('/api/rounds/{id}/skipped', { params, body }));
    case 'undo':
      return answer(api.POST('/api/rounds/{id}/undo', { params, body }));
  }
}

let started = false;

function startOutbox(): void {
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

/** Renews the figures of what a message was about as soon as it is acknowledged. Used once, by the shell. */
export function useRenewAfterSending(): void {
  const queries = useQueryClient();
  useEffect(
    () =>
      outbox.onSent(({ message }) => {
        void queries.invalidateQueries({ queryKey: groups.batch(laneOf(message)) });
        if (message.to === 'reading') void queries.invalidateQueries({ queryKey: groups.house(message.reading.house) });
        if (message.to === 'round') void queries.invalidateQueries({ queryKey: groups.roundsOf(message.site) });
        // What was done or carried out may have settled a warning.
        void queries.invalidateQueries({ queryKey: groups.warnings() });
      }),
    [queries],
  );
}
