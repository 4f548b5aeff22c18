import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** Where `npm run dev` finds the running application. */
const api = process.env['ROOTCAST_API'] ?? 'http://127.0.0.1:8080';

/** The host stays as the browser named it: changes are taken from pages of the host asked only. */
const proxy = { '/api': { target: api, changeOrigin: false } };

/** The parts of the components' look that belong to components in use; each page would match its elements against the others too. */
const LOOK_OF = [
  'app-layout',
  'button',
  'date-picker',
  'dialog',
  'input-container',
  'item-overlay',
  'overlay',
  'popover',
  'side-nav',
];

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

export default defineConfig({
  plugins: [lookOfWhatIsUsed, react()],
  resolve: {
    // The component library reports its use to its maker in development mode. Nothing leaves this program unasked.
    alias: {
      '@vaadin/vaadin-usage-statistics/vaadin-usage-statistics.js': new URL(
        './src/shared/no-telemetry.ts',
        import.meta.url,
      ).pathname,
      '@vaadin/vaadin-usage-statistics': new URL('./src/shared/no-telemetry.ts', import.meta.url).pathname,
    },
  },
  server: { host: '127.0.0.1', port: 5173, proxy },
  preview: { host: '127.0.0.1', port: 4173, proxy },
  build: { target: 'es2022', sourcemap: false, reportCompressedSize: false },
  test: {
    include: ['src/**/*.test.ts'],
    environment: 'node',
    reporters: ['default', ['junit', { outputFile: 'target/reports/vitest.xml' }]],
  },
});
