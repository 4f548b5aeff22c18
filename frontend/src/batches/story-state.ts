import type { EntryView } from '../shared/api-types';

/** As it happened, the newest first; what happened at one moment in the order it was recorded. */
export function newestFirst(entries: readonly EntryView[]): readonly EntryView[] {
  return [...entries].sort((a, b) => Date.parse(b.happenedAt) - Date.parse(a.happenedAt) || b.position - a.position);
}

/** The entries that posted to a cause, and those that undid them. */
export function ofCause(entries: readonly EntryView[], cause: string): readonly EntryView[] {
  const posted = new Set(
    entries
      .filter((entry) => entry.cause === cause || entry.postings.some((posting) => posting.cause === cause))
      .map(({ id }) => id),
  );
  return entries.filter(({ id, reverses }) => posted.has(id) || (reverses !== null && posted.has(reverses)));
}
