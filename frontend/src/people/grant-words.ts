import { useMemo } from 'react';
import { useMessages } from '../shared/messages';
import { useSites } from '../shared/setup-lists';
import { accountMessages } from './account-messages';
import { byRole } from './grants-state';
import type { Grant } from './people-types';

/** Grants in a line: "Sales, all sites; Production, North Field". */
export function useGrantWords(): (grants: readonly Grant[]) => string {
  const t = useMessages(accountMessages);
  const sites = useSites().data;
  return useMemo(() => {
    const nameOf = (code: string | null) =>
      code === null ? t.everySite : (sites?.find((each) => each.code === code)?.name ?? code);
    return (grants) =>
      byRole(grants)
        .map(({ role, sites: at }) => t.atSite(t[`role${role}`], at.map(nameOf).join(', ')))
        .join('; ') || t.noRoles;
  }, [t, sites]);
}
