// Measures a running Rootcast from outside: board latency against a static file of the same bytes, the time until every
// outlook and every row of the board have taken in readings of all houses, and how long an entry waits. Node 20, no
// packages. Usage and results: docs/measurements.md.
//
//   node deploy/measure.mjs fill    --url http://127.0.0.1:8080 [--batches 6000]
//   node deploy/measure.mjs board   --url … [--static /measured-board.json] [--save FILE]
//   node deploy/measure.mjs refresh --url … [--rounds 7]
//   node deploy/measure.mjs entries --url … [--writers 8] [--each 150]
//   and --token T, or ROOTCAST_TOKEN, as the server was started with
import { writeFile } from 'node:fs/promises';

const [task, ...rest] = process.argv.slice(2);
const options = Object.fromEntries(
  rest.flatMap((word, i) => (word.startsWith('--') ? [[word.slice(2), rest[i + 1]]] : [])),
);
const url = options.url ?? 'http://127.0.0.1:8080';
const token = options.token ?? process.env.ROOTCAST_TOKEN;
const signedIn = token ? { Authorization: `Bearer ${token}` } : {};
const SITES = 12;
const HOUSES_PER_SITE = 20;
const VARIETIES = 1500;
const CROPS = 15;
const DAYS_OF_READINGS = 30;
const HOUR_MS = 3_600_000;

async function post(path, body) {
  const response = await fetch(url + path, {
    method: 'POST',
    headers: { ...signedIn, 'Content-Type': 'application/json', 'Idempotency-Key': crypto.randomUUID() },
    body: JSON.stringify(body),
  });
  const text = await response.text();
  if (!response.ok) throw new Error(`${path}: ${response.status} ${text}`);
  return JSON.parse(text);
}

const houses = () =>
  Array.from({ length: SITES * HOUSES_PER_SITE }, (_, i) => ({
    site: `S${Math.floor(i / HOUSES_PER_SITE)}`,
    code: `S${Math.floor(i / HOUSES_PER_SITE)}-H${i % HOUSES_PER_SITE}`,
  }));

const stage = (name, daysAtReference, optimumC) => ({
  stage: name, daysAtReference, referenceC: 22, minC: 10, optimumC, maxC: 36, survivalMean: 0.97, survivalWeight: 200,
});

function readings(quantity, hoursAgo) {
  const hour = Math.floor(Date.now() / HOUR_MS) - hoursAgo;
  return houses().map(({ code }, i) => ({
    house: code, quantity, unit: 'Cel',
    value: Math.round((21.5 + Math.sin(hour / 4 + i) * 1.5) * 10) / 10,
    at: new Date(hour * HOUR_MS + 600_000).toISOString(),
  }));
}

async function fill() {
  const batches = Number(options.batches ?? 6000);
  for (let i = 0; i < SITES; i++) await post('/api/sites', { code: `S${i}`, name: `Site ${i}`, timeZone: 'America/Chicago' });
  for (const { site, code } of houses()) await post('/api/houses', { code, site, name: code, mediumSetpointC: 22 });
  for (const [cells, saleCount] of [[105, 100], [84, 80], [72, 70], [50, 48]])
    await post('/api/tray-formats', { code: `T${cells}`, cells, saleCount, lengthMm: 540, widthMm: 280 });
  for (let i = 0; i < CROPS; i++)
    await post('/api/crops', {
      code: `C${i}`, name: `Crop ${i}`,
      profile: { stages: [stage('STICK', 5 + i / 4, 28), stage('CALLUS', 8 + i / 3, 28), stage('ROOT', 10 + i / 2, 26)], rateSpread: 0.08, holdDays: 12 },
    });
  for (let i = 0; i < VARIETIES; i++) await post('/api/varieties', { code: `V${i}`, crop: `C${i % CROPS}`, name: `Genus species 'Plain ${i}'` });
  let sent = [];
  for (let hoursAgo = DAYS_OF_READINGS * 24; hoursAgo > 2; hoursAgo--) {
    sent.push(...readings('medium-temperature', hoursAgo));
    if (sent.length > 8_000 || hoursAgo === 3) {
      await post('/api/readings', sent);
      sent = [];
    }
  }
  const all = houses();
  const formats = ['T105', 'T84', 'T72', 'T50'];
  for (let i = 0; i < batches; i++) {
    const house = all[i % all.length];
    await post('/api/batches', {
      site: house.site, house: house.code, variety: `V${(i * 7) % VARIETIES}`, trayFormat: formats[i % 4],
      stuckAt: new Date(Date.now() - (1 + (i % 28)) * 24 * HOUR_MS).toISOString(), trays: 20 + (i % 60),
    });
    if (i % 1000 === 999) console.log(`${i + 1} batches`);
  }
}

async function times(path, rounds) {
  const taken = [];
  let bytes = 0;
  for (let i = 0; i < rounds; i++) {
    const began = performance.now();
    bytes = (await (await fetch(url + path, { headers: signedIn })).arrayBuffer()).byteLength;
    taken.push(performance.now() - began);
  }
  taken.sort((a, b) => a - b);
  return { bytes, medianMs: taken[rounds >> 1], p95Ms: taken[Math.floor(rounds * 0.95)] };
}

async function board() {
  const path = '/api/board?weeks=26&confidence=0.9';
  const first = await times(path, 1);
  console.log(`board made anew: ${first.medianMs.toFixed(0)} ms, ${first.bytes} bytes`);
  if (options.save) await writeFile(options.save, Buffer.from(await (await fetch(url + path, { headers: signedIn })).arrayBuffer()));
  await times(path, 20);
  if (options.static) await times(options.static, 20);
  const live = await times(path, 60);
  console.log(`board read: median ${live.medianMs.toFixed(1)} ms, p95 ${live.p95Ms.toFixed(1)} ms`);
  if (options.static) {
    const still = await times(options.static, 60);
    console.log(`static file of ${still.bytes} bytes: median ${still.medianMs.toFixed(1)} ms, p95 ${still.p95Ms.toFixed(1)} ms`);
    console.log(`ratio of medians: ${(live.medianMs / still.medianMs).toFixed(2)}`);
  }
}

/**
 * From just before readings of all houses are sent until every outlook has taken them in, and until a board of 26 weeks has: a read
 * waits for what its node has acknowledged. For the first, one batch is read, since all outlooks are published in one step; what they offer is
 * computed when a board asks. Air temperatures move no outlook and are the blank: the same requests and bytes without the work.
 */
async function refresh() {
  const board = '/api/board?weeks=26&confidence=0.9';
  const { batches } = await (await fetch(`${url}/api/batches`, { headers: signedIn })).json();
  const outlooks = `/api/batches/${batches[0].id}`;
  const timed = async (path, quantity, hoursAgo, rounds) => {
    const taken = [];
    for (let round = 0; round < rounds; round++) {
      // At other seconds and a little warmer each time: the same readings again would change nothing.
      const now = Date.now();
      const sent = readings(quantity, hoursAgo).map((reading) => ({
        ...reading,
        value: reading.value + (now % 1000) / 1000,
        at: new Date(Date.parse(reading.at) + (now % 2_400_000)).toISOString(),
      }));
      const began = performance.now();
      await post('/api/readings', sent);
      await (await fetch(url + path, { headers: signedIn })).arrayBuffer();
      taken.push(performance.now() - began);
    }
    return taken.sort((a, b) => a - b)[rounds >> 1];
  };
  const rounds = Number(options.rounds ?? 7);
  await times(board, 5);
  await timed(board, 'medium-temperature', 2, 5);
  for (const [what, path] of [['outlooks', outlooks], ['board', board]]) {
    for (const [hour, hoursAgo] of [['past', 2], ['last', 1]]) {
      const without = await timed(path, 'air-temperature', hoursAgo, rounds);
      const refreshed = await timed(path, 'medium-temperature', hoursAgo, rounds);
      console.log(
        `${what}, ${hour} hour, median of ${rounds}: ${without.toFixed(0)} ms without a refresh, ${refreshed.toFixed(0)} ms with`
          + ` one, ${(refreshed - without).toFixed(0)} ms for it`,
      );
    }
  }
}

/** Several people record losses, each the next as soon as the one before is answered; then the same while every house reports. */
async function entries() {
  const writers = Number(options.writers ?? 8);
  const each = Number(options.each ?? 150);
  const { batches } = await (await fetch(`${url}/api/batches`, { headers: signedIn })).json();
  const run = async () => {
    const taken = [];
    const began = performance.now();
    await Promise.all(
      Array.from({ length: writers }, async (_, writer) => {
        for (let i = 0; i < each; i++) {
          const batch = batches[(writer * each + i) % batches.length];
          const asked = performance.now();
          await post(`/api/batches/${batch.id}/entries`, {
            kind: 'loss', plants: 1, cause: 'other', happenedAt: new Date().toISOString(),
          });
          taken.push(performance.now() - asked);
        }
      }),
    );
    const perSecond = (writers * each) / ((performance.now() - began) / 1000);
    taken.sort((a, b) => a - b);
    const at = (share) => taken[Math.floor(share * (taken.length - 1))].toFixed(0);
    return `${perSecond.toFixed(0)} entries/s, median ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${at(1)} ms`;
  };
  await run();
  console.log(`${writers} writers: ${await run()}`);
  let reporting = true;
  let sent = 0;
  const houses = (async () => {
    for (; reporting; sent++) {
      const shifted = readings('medium-temperature', 1).map((reading) => ({
        ...reading,
        at: new Date(Date.parse(reading.at) + (sent % 2_400) * 1_000).toISOString(),
        value: reading.value + (sent % 7) / 10,
      }));
      await post('/api/readings', shifted);
    }
  })();
  console.log(`${writers} writers while every house reports without pause: ${await run()}`);
  reporting = false;
  await houses;
  console.log(`meanwhile ${sent} readings of each of ${SITES * HOUSES_PER_SITE} houses`);
}

const tasks = { fill, board, refresh, entries };
if (!tasks[task]) throw new Error('Say fill, board, refresh or entries; see the head of this file.');
await tasks[task]();
