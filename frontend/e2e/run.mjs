/* global fetch */
// Tells the stories of the screens through a real browser: installs it if it is missing, starts the packaged application
// with its demo on a free loopback port and a folder of its own, runs Playwright, and stops what it started.
//   node frontend/e2e/run.mjs [Playwright's own arguments]
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, openSync, rmSync, existsSync, mkdirSync } from 'node:fs';
import { createServer } from 'node:net';
import process from 'node:process';
import { setTimeout as pause } from 'node:timers/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const START_MS = 300_000;
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const frontend = join(root, 'frontend');
const demo = join(root, 'backend', 'demo', 'target', 'quarkus-app');
const jar = join(demo, 'quarkus-run.jar');
const archive = join(demo, 'classes.jsa');

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

async function untilReady(url, app) {
  const deadline = Date.now() + START_MS;
  while (Date.now() < deadline) {
    if (app.exitCode !== null) throw new Error(`the application ended with ${app.exitCode}`);
    const ready = await fetch(`${url}/q/health/ready`).then(
      (answer) => answer.ok,
      () => false,
    );
    if (ready) return;
    await pause(500);
  }
  throw new Error(`the application was not ready within ${START_MS / 1000} s`);
}

if (!existsSync(jar)) throw new Error(`${jar} is not built; run mvn package first`);
const browser = spawnSync('sh', [join(root, 'deploy', 'ensure-browser.sh')], { stdio: 'inherit' });
if (browser.status !== 0) process.exit(browser.status ?? 1);

const data = mkdtempSync(join(tmpdir(), 'rootcast-e2e-'));
const reports = join(frontend, 'target', 'reports');
mkdirSync(reports, { recursive: true });
const log = openSync(join(reports, 'application.log'), 'w');
const port = await freePort();
const url = `http://127.0.0.1:${port}`;
const app = spawn(
  'java',
  [
    `@${join(frontend, '..', 'deploy', 'java.options')}`,
    ...(existsSync(archive) ? [`-XX:SharedArchiveFile=${archive}`] : []),
    `-Drootcast.data=${data}`,
    // Dates would move in the middle of a story.
    '-Drootcast.calibration.make-every=off',
    `-Dquarkus.http.port=${port}`,
    '-jar',
    jar,
  ],
  { stdio: ['ignore', log, log] },
);
process.once('exit', () => app.kill('SIGKILL'));
try {
  await untilReady(url, app);
  const run = spawnSync(
    join(frontend, 'node_modules', '.bin', 'playwright'),
    ['test', '-c', join(frontend, 'e2e', 'playwright.config.ts'), ...process.argv.slice(2)],
    { cwd: frontend, stdio: 'inherit', env: { ...process.env, BASE_URL: url } },
  );
  process.exitCode = run.status ?? 1;
} finally {
  app.kill('SIGTERM');
  rmSync(data, { recursive: true, force: true });
}
