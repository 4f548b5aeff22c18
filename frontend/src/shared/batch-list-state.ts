import type { BatchList, BatchStage, BatchView, EntryView, Instant } from './api-types';

/** A list of batches that follows the live stream without being asked for again as a whole. */

export interface BatchListQuery {
  readonly site?: string | undefined;
  readonly house?: string | undefined;
  readonly crop?: string | undefined;
  readonly stage?: BatchStage | undefined;
  readonly state: 'live' | 'finished' | 'all';
}

export function belongs(query: BatchListQuery, batch: BatchView): boolean {
  const finished = batch.plants.alive === 0;
  return (
    (query.site === undefined || batch.site === query.site) &&
    (query.house === undefined || batch.house === query.house) &&
    (query.crop === undefined || batch.crop === query.crop) &&
    (query.stage === undefined || batch.stage === query.stage) &&
    (query.state === 'all' || finished === (query.state === 'finished'))
  );
}

/** The list with `fetched` in place of what it held of them; those that no longer belong go, new ones come. */
export function patched(list: BatchList, fetched: readonly BatchView[], query: BatchListQuery): BatchList {
  const fresh = new Map(fetched.map((batch) => [batch.id, batch]));
  const kept = list.batches.flatMap((old) => {
    const batch = fresh.get(old.id) ?? old;
    fresh.delete(old.id);
    return belongs(query, batch) ? [batch] : [];
  });
  const added = [...fresh.values()].filter((batch) => belongs(query, batch));
  return {
    ...list,
    position: Math.max(list.position, ...fetched.map((batch) => batch.position)),
    batches: [...kept, ...added],
    // Whoever was answered for has been computed.
    faulty: list.faulty.filter(({ id }) => !fetched.some((batch) => batch.id === id)),
  };
}

/** The entries that had happened by `asOf`. An undo that came later has not yet undone anything. */
export function happenedBy(entries: readonly EntryView[], asOf: Instant): readonly EntryView[] {
  const untilMs = Date.parse(asOf);
  const then = entries.filter(({ happenedAt }) => Date.parse(happenedAt) <= untilMs);
  const there = new Set(then.map(({ id }) => id));
  return then.map((entry) =>
    entry.reversedBy === null || there.has(entry.reversedBy) ? entry : { ...entry, reversedBy: null },
  );
}
