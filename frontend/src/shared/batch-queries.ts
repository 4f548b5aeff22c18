import { keepPreviousData, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import type { BatchList, Instant } from './api-types';
import { happenedBy, patched, type BatchListQuery } from './batch-list-state';
import { answer, api } from './http';
import { useLiveEvent } from './live-stream';
import { groups, keys } from './query-keys';

/** Batches as the screens ask for them: an event that names a few of them renews only those. */

/** More changed batches than this are fetched as a list. */
const MOST_SINGLY = 20;
const GATHER_MS = 200;
const WHOLE_LIST_EVERY_MS = 10_000;

export function useBatchList(query: BatchListQuery) {
  const queries = useQueryClient();
  const changed = useRef(new Set<string>());
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const lastWhole = useRef(0);
  useEffect(() => () => clearTimeout(timer.current), []);

  const renew = async (): Promise<void> => {
    timer.current = undefined;
    const ids = [...changed.current];
    if (ids.length > MOST_SINGLY) {
      const wait = lastWhole.current + WHOLE_LIST_EVERY_MS - Date.now();
      if (wait > 0) {
        timer.current = setTimeout(() => void renew(), wait);
        return;
      }
      lastWhole.current = Date.now();
      changed.current.clear();
      await queries.invalidateQueries({ queryKey: groups.batchLists() });
      return;
    }
    changed.current.clear();
    try {
      const fetched = await Promise.all(
        ids.map((id) => answer(api.GET('/api/batches/{id}', { params: { path: { id } } }))),
      );
      queries.setQueryData<BatchList>(keys.batchList(query), (list) => list && patched(list, fetched, query));
    } catch {
      await queries.invalidateQueries({ queryKey: groups.batchLists() });
    }
  };
  useLiveEvent('batches', ({ ids }) => {
    for (const id of ids) changed.current.add(id);
    timer.current ??= setTimeout(() => void renew(), GATHER_MS);
  });

  return useQuery({
    queryKey: keys.batchList(query),
    queryFn: ({ signal }) => answer(api.GET('/api/batches', { params: { query }, signal })),
    placeholderData: keepPreviousData,
  });
}

/** A batch as it is, or with `asOf` as it was then. */
export function useBatch(id: string, asOf?: Instant) {
  const queries = useQueryClient();
  useLiveEvent('batches', ({ ids }) => {
    if (ids.includes(id)) void queries.invalidateQueries({ queryKey: groups.batch(id) });
  });
  return useQuery({
    queryKey: keys.batchView(id, asOf),
    queryFn: ({ signal }) =>
      answer(api.GET('/api/batches/{id}', { params: { path: { id }, query: { asOf } }, signal })),
    // Another moment of the same batch may stand in for a moment; another batch may not.
    placeholderData: (before, query) => (query?.queryKey[1] === id ? before : undefined),
  });
}

/** Oldest first, as they happened; with `asOf` those that had happened by then. */
export function useBatchEntries(id: string, asOf?: Instant) {
  return useQuery({
    queryKey: keys.batchEntries(id),
    queryFn: ({ signal }) => answer(api.GET('/api/batches/{id}/entries', { params: { path: { id } }, signal })),
    select: (entries) => (asOf === undefined ? entries : happenedBy(entries, asOf)),
  });
}

export function useDevelopment(id: string, asOf?: Instant) {
  return useQuery({
    queryKey: keys.batchDevelopment(id, asOf),
    queryFn: ({ signal }) =>
      answer(api.GET('/api/batches/{id}/development', { params: { path: { id }, query: { asOf } }, signal })),
  });
}

/** Why its ready date is not the one it was planned with. */
export function useExplanation(id: string, asOf?: Instant) {
  return useQuery({
    queryKey: keys.batchExplanation(id, asOf),
    queryFn: ({ signal }) =>
      answer(api.GET('/api/batches/{id}/explanation', { params: { path: { id }, query: { asOf } }, signal })),
  });
}
