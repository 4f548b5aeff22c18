// Measures a running Rootcast from outside: board latency against a static file of the same bytes, and the time to
// refresh every outlook after one hour of readings. Node 20, no packages. Usage and results: docs/measurements.md.
//
//   node deploy/measure.mjs fill    --url http://127.0.0.1:8080 [--batches 6000]
//   node deploy/measure.mjs board   --url … [--static /measured-board.json] [--save FILE]
//   node deploy/measure.mjs refresh --url …
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

async function refresh() {
  // Air temperatures move no outlook: the same request without the refresh.
  for (const hoursAgo of [4, 3]) await post('/api/readings', readings('air-temperature', hoursAgo));
  const timed = async (quantity, hoursAgo) => {
    const sent = readings(quantity, hoursAgo);
    const began = performance.now();
    await post('/api/readings', sent);
    return performance.now() - began;
  };
  const without = [await timed('air-temperature', 2), await timed('air-temperature', 1)];
  const withRefresh = [await timed('medium-temperature', 2), await timed('medium-temperature', 1)];
  console.log(`one hour of 240 houses taken in: ${without.map((ms) => ms.toFixed(0)).join(', ')} ms without refresh`);
  console.log(`the same with every outlook and board row refreshed: ${withRefresh.map((ms) => ms.toFixed(0)).join(', ')} ms`);
}

const tasks = { fill, board, refresh };
if (!tasks[task]) throw new Error('Say fill, board or refresh; see the head of this file.');
await tasks[task]();
