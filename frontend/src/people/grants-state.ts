import type { Grant, KeyRole, PersonRole, Role } from './people-types';

/** Roles given per site, as the form shows them: a row for all sites and one for each, a column per role. */

export const PERSON_ROLES = ['SALES', 'PRODUCTION', 'MANAGER', 'OWNER'] as const satisfies readonly PersonRole[];
export const KEY_ROLES = ['DEVICE', 'PARTNER'] as const satisfies readonly KeyRole[];
const ALL: readonly Role[] = [...PERSON_ROLES, ...KEY_ROLES];

/** An owner owns all sites. */
export function isPerSite(role: Role): boolean {
  return role !== 'OWNER';
}

export interface CellState {
  readonly given: boolean;
  /** Given through all sites, so there is nothing to choose at the one. */
  readonly covered: boolean;
}

export function cellOf(grants: readonly Grant[], role: Role, site: string | null): CellState {
  const has = (at: string | null) => grants.some((grant) => grant.role === role && grant.site === at);
  const covered = site !== null && has(null);
  return { given: covered || has(site), covered };
}

/**
 * With the role given or taken at `site`. Giving it for all sites drops it at the single ones: they say nothing then, and
 * taking "all" away later must not leave some behind unseen.
 */
export function toggled(grants: readonly Grant[], role: Role, site: string | null): readonly Grant[] {
  const { given, covered } = cellOf(grants, role, site);
  if (covered) return grants;
  const others = grants.filter((grant) => grant.role !== role || (site !== null && grant.site !== site));
  return given ? others : [...others, { role, site }];
}

/** In the order of the columns, each role with its sites. */
export function byRole(grants: readonly Grant[]): readonly { role: Role; sites: readonly (string | null)[] }[] {
  return ALL.flatMap((role) => {
    const sites = grants.filter((grant) => grant.role === role).map(({ site }) => site ?? null);
    if (sites.length === 0) return [];
    return [{ role, sites: sites.includes(null) ? [null] : sites }];
  });
}

/** Sites named in grants that are not (or no longer) in the list: they are shown, so that they can be taken away. */
export function unknownSites(grants: readonly Grant[], known: readonly string[]): readonly string[] {
  return [...new Set(grants.flatMap(({ site }) => (site && !known.includes(site) ? [site] : [])))];
}

export function sameGrants(one: readonly Grant[], other: readonly Grant[]): boolean {
  const text = (grants: readonly Grant[]) =>
    JSON.stringify(grants.map(({ role, site }) => [role, site ?? null]).sort());
  return text(one) === text(other);
}
