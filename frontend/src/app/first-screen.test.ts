import { expect, it } from 'vitest';

/** What each screen has to have read before it can draw: what its modules import, and not what they fetch later. */

const modules = import.meta.glob<string>('../**/*.{ts,tsx}', { eager: true, query: '?raw', import: 'default' });

/** Imports of code; those of types are gone when it runs. */
const IMPORT = /^(?:import|export) (?!type\b)(?:[^'";]*? from )?'([^']+)';/gm;

function moduleAt(from: string, to: string): string | undefined {
  const parts = [...from.split('/').slice(0, -1), ...to.split('/')];
  const path: string[] = [];
  for (const part of parts) {
    if (part === '.') continue;
    if (part === '..' && path.length > 0 && path.at(-1) !== '..') path.pop();
    else path.push(part);
  }
  const joined = path.join('/');
  // Names of this folder's own modules begin with a dot.
  const named = joined.startsWith('..') ? joined : `./${joined}`;
  return [named, `${named}.ts`, `${named}.tsx`].find((each) => each in modules);
}

/** The packages that a module and all it imports come with. */
function packagesOf(module: string, seen = new Set<string>()): ReadonlySet<string> {
  const found = new Set<string>();
  if (seen.has(module)) return found;
  seen.add(module);
  for (const [, to = ''] of (modules[module] ?? '').matchAll(IMPORT)) {
    if (!to.startsWith('.')) found.add(to);
    else {
      const next = moduleAt(module, to);
      if (next) packagesOf(next, seen).forEach((each) => found.add(each));
    }
  }
  return found;
}

const ofVaadin = (module: string) =>
  [...packagesOf(module)].filter((each) => each.startsWith('@vaadin/react-components'));

it.each([
  './shell.tsx',
  '../board/board-view.tsx',
  '../floor/floor-view.tsx',
  '../batches/batches-view.tsx',
  '../batches/batch-view.tsx',
  '../climate/climate-view.tsx',
  '../climate/house-view.tsx',
  '../rounds/rounds-view.tsx',
  '../warnings/warnings-view.tsx',
  '../treatments/treatments-view.tsx',
  '../track-record/track-record-view.tsx',
  '../setup/setup-view.tsx',
])('%s is drawn without components that nobody has opened', (screen) => {
  expect(modules[screen]).toBeDefined();
  expect(ofVaadin(screen)).toEqual([]);
});

it('and those are found where they are imported', () => {
  expect(ofVaadin('../batches/stick-dialog.tsx')).toContain('@vaadin/react-components/Dialog.js');
});
