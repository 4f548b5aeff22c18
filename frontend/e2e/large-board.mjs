/* global console, performance, requestAnimationFrame */
// Measures the board of a large business in a headless Chromium: how soon its first row is there and how long frames
// last while it is scrolled. For a business made with deploy/measure.mjs; results: docs/measurements.md.
//   node frontend/e2e/large-board.mjs URL NAME PASSWORD
import process from 'node:process';
import { chromium } from '@playwright/test';

const VISITS = 5;
const SCROLLED_MS = 4_000;

const [url, name, password] = process.argv.slice(2);
if (!password) throw new Error('Say URL, NAME and PASSWORD of somebody who may see the board.');

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
});
const context = await browser.newContext({ baseURL: url, viewport: { width: 1440, height: 900 } });
const page = await context.newPage();
const signedIn = await page.request.post('/api/session', { data: { name, password }, headers: { Origin: url } });
if (!signedIn.ok()) throw new Error(`not signed in: ${signedIn.status()} ${await signedIn.text()}`);

const tookMs = [];
for (let visit = 0; visit <= VISITS; visit++) {
  await page.goto('about:blank');
  const began = performance.now();
  await page.goto('/board', { waitUntil: 'commit' });
  await page.locator('[role=gridcell]').first().waitFor();
  tookMs.push(performance.now() - began);
}
const [first, ...later] = tookMs.map(Math.round);
console.log(`first row after ${first} ms, later ${later.sort((a, b) => a - b).join(', ')} ms`);

const grid = page.locator('[role=grid]').first();
const seen = () => grid.evaluate((host) => Math.round(host.scrollTop));

await page.mouse.move(700, 600);
const before = await seen();
const frames = page.evaluate(
  (forMs) =>
    new Promise((done) => {
      const lengths = [];
      let before = performance.now();
      const until = before + forMs;
      const next = (now) => {
        lengths.push(now - before);
        before = now;
        if (now < until) requestAnimationFrame(next);
        else done(lengths);
      };
      requestAnimationFrame(next);
    }),
  SCROLLED_MS,
);
const until = performance.now() + SCROLLED_MS - 200;
while (performance.now() < until) {
  await page.mouse.wheel(0, 400);
  await page.evaluate(() => new Promise(requestAnimationFrame));
}
const lengths = (await frames).slice(1).sort((a, b) => a - b);
const at = (share) => lengths[Math.floor(share * (lengths.length - 1))].toFixed(0);
const after = await seen();
if (after === before) throw new Error('nothing was scrolled');
console.log(
  `${lengths.length} frames while scrolling ${after - before} pixels down: median ${at(0.5)} ms, p99 ${at(0.99)} ms,` +
    ` longest ${at(1)} ms, ${lengths.filter((ms) => ms > 50).length} over 50 ms`,
);
await browser.close();
