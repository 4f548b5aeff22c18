/** What this device remembers for the next time: the site, and the batches used last. Losing it costs a tap. */
const SITE = 'rootcast.floor.site';
const LAST_USED = 'rootcast.floor.last-used';

export function rememberedSite(): string | undefined {
  return localStorage.getItem(SITE) ?? undefined;
}

export function rememberSite(site: string): void {
  keep(SITE, site);
}

export function lastUsedBatches(): readonly string[] {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(LAST_USED) ?? '[]');
    return Array.isArray(stored) ? stored.filter((each): each is string => typeof each === 'string') : [];
  } catch {
    return [];
  }
}

export function rememberBatches(ids: readonly string[]): void {
  keep(LAST_USED, JSON.stringify(ids));
}

function keep(name: string, value: string): void {
  try {
    localStorage.setItem(name, value);
  } catch {
    // A full store must not stop anybody from counting.
  }
}
