import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';

/** The application as a business gets it: no demo, nothing set up, nobody who can sign in. */
export interface EmptyBusiness {
  readonly url: string;
  /** What its log shows to whoever may make the first owner. */
  readonly secret: string;
  readonly end: () => void;
}

const START_MS = 290_000;
const JAR = join(import.meta.dirname, '..', '..', 'backend', 'app', 'target', 'quarkus-app', 'quarkus-run.jar');
const SECRET = /owner's account with this secret: (?<secret>\S+)/;

export async function emptyBusiness(): Promise<EmptyBusiness> {
  const data = mkdtempSync(join(tmpdir(), 'rootcast-first-day-'));
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const app = spawn('java', ['-Xmx384m', `-Drootcast.data=${data}`, `-Dquarkus.http.port=${port}`, '-jar', JAR], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const end = () => {
    app.kill('SIGKILL');
    rmSync(data, { recursive: true, force: true });
  };
  process.once('exit', end);
  return { url, secret: await secretOf(app, url), end };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

/** Resolves once the application has said it and answers. */
function secretOf(app: ChildProcess, url: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let log = '';
    const late = setTimeout(() => reject(new Error(`not ready in time:\n${log}`)), START_MS);
    app.once('exit', (code) => reject(new Error(`the application ended with ${code}:\n${log}`)));
    app.stdout?.on('data', (chunk: Buffer) => {
      log += chunk.toString();
      const secret = SECRET.exec(log)?.groups?.['secret'];
      if (secret !== undefined && log.includes(`Listening on: ${url}`)) {
        clearTimeout(late);
        resolve(secret);
      }
    });
  });
}
