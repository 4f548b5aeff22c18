import { useEffect, useSyncExternalStore } from 'react';
import type { Site } from './api-types';
import { useSites } from './setup-lists';
import { useSiteFilter } from './site-filter';

/**
 * The zone of times that belong to no site of their own, such as "as of 09:41": that of the chosen site, or of all sites
 * where they share one. Only a reader of several zones at once sees the device's clock.
 */
export function homeZoneOf(
  sites: readonly Pick<Site, 'code' | 'timeZone'>[],
  chosen: string | undefined,
): string | undefined {
  const site = sites.find(({ code }) => code === chosen);
  if (site) return site.timeZone;
  const zones = new Set(sites.map(({ timeZone }) => timeZone));
  return zones.size === 1 ? sites[0]?.timeZone : undefined;
}

/** The zone of the device, where a business has no site yet; empty where the browser does not tell one. */
export function deviceZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone ?? '';
}

const listeners = new Set<() => void>();
let zone: string | undefined;

/** Kept by the shell, which knows the chosen site. */
export function useKeepHomeZone(): void {
  const sites = useSites().data;
  const [chosen] = useSiteFilter();
  const next = sites && homeZoneOf(sites, chosen);
  useEffect(() => {
    if (zone === next) return;
    zone = next;
    for (const changed of listeners) changed();
  }, [next]);
}

export function useHomeZone(): string | undefined {
  return useSyncExternalStore(
    (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    () => zone,
  );
}
