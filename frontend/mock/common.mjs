/** What the parts of the mock have in common. */

export const DAY = 86_400_000;
export const HOUR = 3_600_000;
export const iso = (ms) => new Date(ms).toISOString();
export const problem = (status, kind, detail, more = {}) => [
  status,
  { type: `/problems/${kind}`, title: kind, status, detail, ...more },
];
export const notFound = problem(404, 'not-found', 'There is no such thing.');

/** Between −0.5 and 0.5, the same for the same things, so that a page looks the same twice. */
export function wobble(...parts) {
  let hash = 2166136261;
  for (const char of parts.join(' ')) hash = Math.imul(hash ^ char.charCodeAt(0), 16777619);
  hash ^= hash >>> 13;
  hash = Math.imul(hash, 1540483477);
  return ((hash ^ (hash >>> 15)) >>> 0) / 4294967296 - 0.5;
}
