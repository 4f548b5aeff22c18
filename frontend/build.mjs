/**
 * Installs and builds the screens, each only when something is newer than last time: a Maven build that changes
 * nothing here must not cost half a minute. `node build.mjs --force` builds whatever the dates say.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';

const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
const SOURCES = [
  'src',
  // The wire types are made from it.
  '../docs/openapi.json',
  'public',
  'index.html',
  'package-lock.json',
  'package.json',
  'vite.config.ts',
  'tsconfig.json',
  'build.mjs',
];
const INSTALLED = 'node_modules/.package-lock.json';
const BUILT = 'dist/index.html';

function changedMs(path) {
  if (!existsSync(path)) return 0;
  const found = statSync(path);
  return found.isDirectory()
    ? Math.max(0, ...readdirSync(path).map((name) => changedMs(join(path, name))))
    : found.mtimeMs;
}

if (changedMs(INSTALLED) < changedMs('package-lock.json')) {
  execFileSync(npm, ['ci', '--no-audit', '--no-fund'], {
    stdio: 'inherit',
    // The browser of the end-to-end tests is the system's.
    env: { ...process.env, PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1' },
  });
}
if (process.argv.includes('--force') || changedMs(BUILT) < Math.max(...SOURCES.map(changedMs))) {
  // Built files carry a hash in their names; those of the build before would stay in the jar beside the new ones.
  rmSync('target/classes/META-INF', { recursive: true, force: true });
  execFileSync(npm, ['run', 'build'], { stdio: 'inherit' });
}
