import type { ClimateQuantity, RoundItem, WarningView } from '../shared/climate-types';

/** Which warnings are shown, in which order, and how their figures are to be read. */

export type WarningScope = 'open' | 'all';

export interface WarningFilter {
  readonly site: string | undefined;
  readonly house: string | undefined;
  readonly scope: WarningScope;
}

export function filterFrom(params: URLSearchParams): WarningFilter {
  return {
    site: params.get('site') || undefined,
    house: params.get('house') || undefined,
    scope: params.get('scope') === 'all' ? 'all' : 'open',
  };
}

export function paramsFor({ house, scope }: WarningFilter, before: URLSearchParams): URLSearchParams {
  const params = new URLSearchParams(before);
  if (house) params.set('house', house);
  else params.delete('house');
  if (scope === 'all') params.set('scope', 'all');
  else params.delete('scope');
  return params;
}

const STATES: Readonly<Record<WarningView['state'], number>> = { lasting: 0, acknowledged: 1, ended: 2 };

export type Urgency = 'now' | 'today' | 'week';

/** How soon plants suffer from it. Common practice, no source. */
const URGENCY: Readonly<Record<WarningView['kind'], Urgency>> = {
  'dry-down': 'now',
  'medium-dry': 'now',
  'medium-cold': 'now',
  'air-cold': 'now',
  'light-high': 'now',
  'no-readings': 'today',
  'over-misting': 'today',
  'medium-saturated': 'today',
  'air-wet': 'today',
  'night-mist-on': 'today',
  'mist-not-weaned': 'today',
  leached: 'today',
  'no-feed': 'today',
  'prevention-missed': 'week',
  'scouting-missed': 'week',
};

const RANK: Readonly<Record<Urgency, number>> = { now: 0, today: 1, week: 2 };

export function urgencyOf({ kind }: Pick<WarningView, 'kind'>): Urgency {
  return URGENCY[kind];
}

/** What nobody has seen comes first, then what lasts; the most urgent in each, of these the newest. */
export function shownWarnings(warnings: readonly WarningView[], scope: WarningScope): readonly WarningView[] {
  return warnings
    .filter(({ state }) => scope === 'all' || state !== 'ended')
    .sort(
      (a, b) =>
        STATES[a.state] - STATES[b.state] || RANK[urgencyOf(a)] - RANK[urgencyOf(b)] || b.since.localeCompare(a.since),
    );
}

export interface WarningsOfHouse {
  readonly house: string;
  readonly site: string;
  readonly warnings: readonly WarningView[];
}

/** House by house in the order of their first warning, so that the house that cannot wait stands on top. */
export function byHouse(shown: readonly WarningView[]): readonly WarningsOfHouse[] {
  const houses = new Map<string, WarningView[]>();
  for (const warning of shown) {
    const own = houses.get(warning.house);
    if (own) own.push(warning);
    else houses.set(warning.house, [warning]);
  }
  return [...houses].map(([house, own]) => ({ house, site: own[0]?.site ?? '', warnings: own }));
}

/** The open checks of the round that settle a warning: of its batch, or of the batches it concerns. */
export function settlingItems<T extends Pick<RoundItem, 'task' | 'house' | 'batch' | 'state'>>(
  warning: Pick<WarningView, 'settledBy' | 'house' | 'batch' | 'batches'>,
  items: readonly T[],
): readonly T[] {
  const concerned = warning.batch === null ? warning.batches : [warning.batch];
  return items.filter(
    ({ task, house, batch, state }) =>
      state !== 'done' &&
      state !== 'skipped' &&
      house === warning.house &&
      warning.settledBy.includes(task) &&
      (batch === null ? warning.batch === null : concerned.includes(batch)),
  );
}

/** What the bell counts: lasting, and seen by nobody. */
export function unseen(warnings: readonly WarningView[]): number {
  return warnings.filter(({ state }) => state === 'lasting').length;
}

const BY_UNIT: Readonly<Record<string, ClimateQuantity>> = {
  Cel: 'medium-temperature',
  '%': 'relative-humidity',
  kPa: 'vapour-pressure-deficit',
  'umol/m2/s': 'light',
  '{level}': 'medium-moisture',
  'mS/cm': 'ec',
};

/** A quantity in whose words figures of this unit are said; undefined for a unit it does not know. */
export function spokenAs(unit: string | null): ClimateQuantity | undefined {
  return unit === null ? undefined : BY_UNIT[unit];
}

/** A letter or call that could not be delivered, and is still being tried. */
export function undelivered({ deliveries }: Pick<WarningView, 'deliveries'>): readonly string[] {
  return deliveries
    .filter(({ deliveredAt, lastError }) => deliveredAt === null && lastError !== null)
    .map(({ channel }) => channel);
}
