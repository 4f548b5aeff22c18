import { defineConfig } from '@playwright/test';
import { ENTERED } from './enter';

/**
 * The stories of the screens through a real browser, against a running application with its demo data.
 * BASE_URL names it; the Maven build starts it and sets that.
 */
export default defineConfig({
  testDir: '.',
  // What is only measured runs on demand: MEASURE=1 node frontend/e2e/run.mjs
  testMatch: process.env['MEASURE'] ? '*.measure.ts' : '*.spec.ts',
  globalSetup: './enter.ts',
  outputDir: '../test-results',
  fullyParallel: false,
  workers: 1,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 10_000 },
  reporter: [['list'], ['junit', { outputFile: '../target/reports/playwright.xml' }]],
  use: {
    baseURL: process.env['BASE_URL'] ?? 'http://127.0.0.1:8080',
    storageState: ENTERED,
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    // A trace copies the page at every step, a third of the time of a long list: ask for one with --trace.
    trace: 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
