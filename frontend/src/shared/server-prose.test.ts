import { describe, expect, it } from 'vitest';

/** Read a problem off the wire, and keep one on the device. */
const CARRIERS = ['/problem.ts', 'outbox/device-outbox.ts', 'outbox/outbox-state.ts'];

/** All that draws or makes words, without the tests. */
const sources = Object.entries(
  import.meta.glob<string>('../**/*.{ts,tsx}', { eager: true, query: '?raw', import: 'default' }),
).filter(([path]) => !path.endsWith('.test.ts') && !CARRIERS.some((carrier) => path.endsWith(carrier)));

/**
 * Where English of a program stands, and is marked as such: what broke on the device, to whoever mends it, and what a
 * learned profile says of its evidence.
 */
const MARKED = ['app/broken-view.tsx', 'setup/version-evidence.tsx'];

describe('no sentence of the server reaches a reader', () => {
  const offending = (pattern: RegExp) =>
    sources
      .filter(([path]) => !MARKED.some((each) => path.endsWith(each)))
      .flatMap(([path, text]) =>
        text.split('\n').flatMap((line, i) => (pattern.test(line) ? [`${path}:${i + 1} ${line.trim()}`] : [])),
      );

  it('looks at the screens', () => {
    expect(sources.length).toBeGreaterThan(200);
  });

  it('neither the detail of a problem', () => {
    expect(offending(/\b(failure|problem|error)\??\.(detail|title|message)\b/)).toEqual([]);
    expect(offending(/\b(refused|refusal|told)\??\.(detail|title)\b/)).toEqual([]);
  });

  it('nor the reason of a line of a table', () => {
    expect(offending(/\bline\.reason\b/)).toEqual([]);
  });

  it('nor the English beside a code', () => {
    expect(offending(/\.english\b/)).toEqual([]);
  });

  it('nor anything that is said to be English within another language', () => {
    expect(offending(/lang="en"|lang: 'en'/)).toEqual([]);
  });
});
