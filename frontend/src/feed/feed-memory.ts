import type { FeedDraft } from './feed-state';

/** What this device last mixed; kept on it, never sent. Losing it costs typing it again. */
const STORED_AS = 'rootcast.feed';

export function rememberedFeed(): FeedDraft {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(STORED_AS) ?? '{}');
    if (typeof stored !== 'object' || stored === null) return {};
    return Object.fromEntries(
      Object.entries(stored).filter((each): each is [string, string] => typeof each[1] === 'string'),
    );
  } catch {
    return {};
  }
}

export function rememberFeed(draft: FeedDraft): void {
  try {
    localStorage.setItem(STORED_AS, JSON.stringify(draft));
  } catch {
    // A full or forbidden store must not stop anybody from mixing feed.
  }
}
