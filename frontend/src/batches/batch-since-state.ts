import type { BatchView, EntryView, Instant } from '../shared/api-types';
import { dateIn } from '../shared/weeks';
import { newestFirst } from './story-state';

/** A figure at the head of a batch's page that is otherwise now than it was then. */
export type FigureSince =
  | { readonly figure: 'alive' | 'trays' | 'saleable'; readonly before: number | null; readonly after: number | null }
  | { readonly figure: 'stage'; readonly before: BatchView['stage']; readonly after: BatchView['stage'] }
  | { readonly figure: 'house'; readonly before: string; readonly after: string }
  | { readonly figure: 'ready'; readonly before: Instant | null; readonly after: Instant | null };

/** In the order of the page. That it will be ready some hours sooner on the same day is no change. */
export function figuresSince(then: BatchView, now: BatchView, timeZone: string | undefined): readonly FigureSince[] {
  const day = (at: Instant | null) => at && dateIn(timeZone, Date.parse(at));
  const readyAt = ({ outlook }: BatchView) => outlook?.readyAt.p50 ?? null;
  const saleable = ({ outlook }: BatchView) => outlook?.saleableTrays.p50 ?? null;
  const all: readonly FigureSince[] = [
    { figure: 'alive', before: then.plants.alive, after: now.plants.alive },
    { figure: 'trays', before: then.trays, after: now.trays },
    { figure: 'stage', before: then.stage, after: now.stage },
    { figure: 'house', before: then.house, after: now.house },
    { figure: 'ready', before: readyAt(then), after: readyAt(now) },
    { figure: 'saleable', before: saleable(then), after: saleable(now) },
  ];
  return all.filter((each) =>
    each.figure === 'ready' ? day(each.before) !== day(each.after) : each.before !== each.after,
  );
}

/** What happened after `asOf`, newest first. */
export function entriesSince(entries: readonly EntryView[], asOf: Instant): readonly EntryView[] {
  return newestFirst(entries.filter(({ happenedAt }) => Date.parse(happenedAt) > Date.parse(asOf)));
}
