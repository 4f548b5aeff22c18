import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

/** Where `npm run dev` finds the running application. */
const api = process.env['ROOTCAST_API'] ?? 'http://127.0.0.1:8080';

/** The host stays as the browser named it: changes are taken from pages of the host asked only. */
const proxy = { '/api': { target: api, changeOrigin: false } };

export default defineConfig({
  plugins: [react()],
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
