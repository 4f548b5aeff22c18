import type { ClimateQuantity, WarningView } from '../shared/climate-types';

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

const URGENCY: Readonly<Record<WarningView['state'], number>> = { lasting: 0, acknowledged: 1, ended: 2 };

/** What nobody has seen comes first, then what lasts; the newest first in each. */
export function shownWarnings(warnings: readonly WarningView[], scope: WarningScope): readonly WarningView[] {
  return warnings
    .filter(({ state }) => scope === 'all' || state !== 'ended')
    .sort((a, b) => URGENCY[a.state] - URGENCY[b.state] || b.since.localeCompare(a.since));
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
