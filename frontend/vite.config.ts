import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** Where `npm run dev` finds the running application. */
const api = process.env['ROOTCAST_API'] ?? 'http://127.0.0.1:8080';

/** The host stays as the browser named it: changes are taken from pages of the host asked only. */
const proxy = { '/api': { target: api, changeOrigin: false } };

/** The parts of the components' look that belong to components in use; each page would match its elements against the others too. */
const LOOK_OF = ['date-picker', 'dialog', 'input-container', 'item-overlay', 'overlay', 'popover'];

const lookOfWhatIsUsed: Plugin = {
  name: 'look-of-what-is-used',
  enforce: 'pre',
  transform(css, id) {
    if (!id.endsWith('/@vaadin/aura/aura.css')) return undefined;
    return css.replaceAll(/@import '\.\/src\/components\/([a-z-]+)\.css';\n/g, (line, part: string) =>
      LOOK_OF.includes(part) ? line : '',
    );
  },
};

/** What runs first, and what is there before any screen; each is one file. */
const ofStart = new Set<string>();
const ofProgram = new Set<string>();

/** The small script that runs first asks for the program; the page asks for it in the same moment, and for its look. */
const programBesideStart: Plugin = {
  name: 'program-beside-start',
  apply: 'build',
  buildEnd() {
    const reach = (id: string, into: Set<string>): Set<string> => {
      if (into.has(id)) return into;
      into.add(id);
      this.getModuleInfo(id)?.importedIds.forEach((each) => reach(each, into));
      return into;
    };
    const at = (file: string) => [...this.getModuleIds()].find((id) => id.endsWith(`/src/${file}`)) ?? '';
    reach(at('main.tsx'), ofProgram);
    reach(at('start.ts'), ofStart);
  },
  generateBundle: {
    order: 'post',
    handler(_, bundle) {
      for (const chunk of Object.values(bundle)) {
        // Browsers that know the hint read these whole beside the page's own thread, not function by function on it.
        if (chunk.type === 'chunk' && /^(program|first|.*-view)$/.test(chunk.name)) {
          chunk.code = `//# allFunctionsCalledOnLoad\n${chunk.code}`;
        }
      }
    },
  },
  transformIndexHtml: {
    order: 'post',
    handler(_, { bundle = {} }) {
      const chunks = Object.values(bundle).filter((each) => each.type === 'chunk');
      const files = new Set<string>();
      const looks = new Set<string>();
      const take = (fileName: string): void => {
        const chunk = chunks.find((each) => each.fileName === fileName);
        if (!chunk || files.has(fileName)) return;
        files.add(fileName);
        chunk.viteMetadata?.importedCss.forEach((css) => looks.add(css));
        chunk.imports.forEach(take);
      };
      take(chunks.find(({ name }) => name === 'program')?.fileName ?? '');
      if (files.size === 0) throw new Error('there is no chunk called program');
      return [
        ...[...looks].map((css) => ({
          tag: 'link',
          attrs: { rel: 'stylesheet', crossorigin: true, href: `/${css}` },
          injectTo: 'head' as const,
        })),
        ...[...files].map((file) => ({
          tag: 'link',
          attrs: { rel: 'modulepreload', crossorigin: true, href: `/${file}` },
          injectTo: 'head' as const,
        })),
      ];
    },
  },
};

const ours = (file: string): string => new URL(`./src/shared/${file}`, import.meta.url).pathname;

export default defineConfig({
  plugins: [lookOfWhatIsUsed, programBesideStart, react()],
  resolve: {
    // The component library reports its use to its maker in development mode. Nothing leaves this program unasked.
    alias: [
      { find: /^@vaadin\/vaadin-usage-statistics(\/.*)?$/, replacement: ours('no-telemetry.ts') },
      { find: /^.*\/lumo-injection-mixin\.js$/, replacement: ours('no-other-look.ts') },
    ],
  },
  server: { host: '127.0.0.1', port: 5173, proxy },
  preview: { host: '127.0.0.1', port: 4173, proxy },
  build: {
    target: 'es2022',
    sourcemap: false,
    reportCompressedSize: false,
    rolldownOptions: {
      output: {
        // Each of forty small files costs a slow device more than its own bytes do.
        codeSplitting: {
          groups: [
            // What runs first must not wait for the rest.
            { name: 'first', priority: 2, test: (id) => ofStart.has(id) || id.includes('vite/preload-helper') },
            { name: 'program', priority: 1, test: (id) => ofProgram.has(id) },
          ],
        },
      },
    },
  },
  test: {
    include: ['src/**/*.test.ts'],
    environment: 'node',
    reporters: ['default', ['junit', { outputFile: 'target/reports/vitest.xml' }]],
  },
});
