/** "Ana Ruiz" → "AR"; of one word its first letter. What a phone has room for. */
export function initialsOf(displayName: string): string {
  const words = displayName.trim().split(/\s+/).filter(Boolean);
  const letters = words.length > 1 ? [words[0], words.at(-1)] : words;
  return letters.map((word) => [...(word ?? '')][0]?.toUpperCase() ?? '').join('');
}

/** Where the next person begins: at the same site, with nothing half done. */
export function floorAfterHandOver(params: URLSearchParams): string {
  const site = params.get('site');
  return site ? `/floor?${new URLSearchParams({ site })}` : '/floor';
}
