// The measuring part of measure-ingest.sh. Node 20, no packages; psql does the talking.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { connect } from 'node:net';

const [url, sensorsText, readingsText, bodyText, broker, db] = process.argv.slice(2);
const BODY = Number(bodyText);
const SENSORS = Number(sensorsText);
const READINGS = Number(readingsText);
const HOUSES = 240;
const ROWS = 256;
const [host, port] = (broker ?? '').split(':');
const STEP_MS = 30_000;

const AUTHORIZED = process.env.ROOTCAST_TOKEN ? { Authorization: `Bearer ${process.env.ROOTCAST_TOKEN}` } : {};

async function post(path, body) {
  const response = await fetch(url + path, {
    method: 'POST',
    headers: {
      'Content-Type': 'application/json',
      'Idempotency-Key': crypto.randomUUID(),
      ...AUTHORIZED,
    },
    body: JSON.stringify(body),
  });
  if (!response.ok && response.status !== 409) throw new Error(`${path}: ${response.status} ${await response.text()}`);
  return response.json();
}

const house = (sensor) => `M-H${sensor % HOUSES}`;
const quantity = (sensor) => ['medium-temperature', 'air-temperature', 'relative-humidity'][Math.floor(sensor / HOUSES) % 3];
const unit = (sensor) => (quantity(sensor) === 'relative-humidity' ? '%' : 'Cel');
const value = (i) => (21 + ((i * 7919) % 7) / 10).toFixed(1);

async function setUp() {
  await post('/api/sites', { code: 'M', name: 'Measured', timeZone: 'Etc/UTC' });
  for (let i = 0; i < HOUSES; i++) await post('/api/houses', { code: `M-H${i}`, site: 'M', name: `House ${i}` });
  for (let i = 0; i < SENSORS; i++)
    await post('/api/sensors', { code: `M-S${i}`, house: house(i), quantity: quantity(i), unit: unit(i), topic: `m/${i}` });
}

/** Feeds a program's input chunk by chunk and waits until it ends. */
async function feed(command, args, chunks) {
  const child = spawn(command, args, { stdio: ['pipe', 'ignore', 'inherit'] });
  for (const chunk of chunks) if (!child.stdin.write(chunk)) await once(child.stdin, 'drain');
  child.stdin.end();
  const [code] = await once(child, 'exit');
  if (code !== 0) throw new Error(`${command} ended with ${code}`);
}

function* inserts(begin) {
  for (let from = 0; from < READINGS; from += ROWS) {
    const rows = [];
    for (let i = from; i < Math.min(READINGS, from + ROWS); i++) {
      const s = i % SENSORS;
      const at = new Date(begin + Math.floor(i / SENSORS) * STEP_MS).toISOString();
      rows.push(`('${house(s)}','${quantity(s)}','M-S${s}','${at}',${value(i)},${value(i)},'${unit(s)}',false,'${at}',${i})`);
    }
    yield `insert into reading_raw_measure values ${rows.join(',')};\n`;
  }
}

/** A device at QoS 1, as little of MQTT 3.1.1 as it takes: CONNECT, PUBLISH, and counting PUBACK. */
async function sendAll(begin) {
  const socket = connect(Number(port), host);
  await once(socket, 'connect');
  const text = (word) => {
    const bytes = Buffer.from(word);
    return Buffer.concat([Buffer.from([bytes.length >> 8, bytes.length & 255]), bytes]);
  };
  const packet = (type, body) => {
    const length = [];
    let left = body.length;
    do {
      length.push((left & 127) | (left > 127 ? 128 : 0));
      left >>= 7;
    } while (left > 0);
    return Buffer.concat([Buffer.from([type, ...length]), body]);
  };
  let bytesBack = 0;
  let wake = () => {};
  socket.on('data', (data) => {
    bytesBack += data.length; // CONNACK and PUBACK are four bytes each
    wake();
  });
  const acknowledged = () => Math.floor(bytesBack / 4) - 1;
  const until = async (n) => {
    while (acknowledged() < n) await new Promise((done) => (wake = done));
  };
  socket.write(packet(0x10, Buffer.concat([text('MQTT'), Buffer.from([4, 2, 0, 0]), text('measure-ingest')])));
  await until(0);
  for (let i = 0; i < READINGS; i++) {
    const s = i % SENSORS;
    const at = new Date(begin + Math.floor(i / SENSORS) * STEP_MS).toISOString();
    const id = (i % 65_535) + 1;
    const body = Buffer.concat([
      text(`m/${s}`), Buffer.from([id >> 8, id & 255]), Buffer.from(`{"value":${value(i)},"at":"${at}"}`),
    ]);
    if (!socket.write(packet(0x32, body))) await once(socket, 'drain');
    if (i % 500 === 499) await until(i - 5_000);
  }
  await until(READINGS);
  socket.end();
}

const stored = async () =>
  (await (await fetch(`${url}/api/ingest`, { headers: AUTHORIZED })).json()).ways.find((way) => way.way === 'mqtt')?.stored ?? 0;

await setUp();
const span = Math.ceil(READINGS / SENSORS) * STEP_MS;
const begin = Math.floor((Date.now() - 2 * span) / 1000) * 1000;
const rates = {};

async function measure(name, work) {
  const began = performance.now();
  await work();
  rates[name] = READINGS / ((performance.now() - began) / 1000);
  console.log(`${name}: ${Math.round(rates[name])} rows/s`);
}

if (db) {
  await feed('psql', ['-q', '-v', 'ON_ERROR_STOP=1', db], [
    'drop table if exists reading_raw_measure; create table reading_raw_measure (like reading including all);\n',
  ]);
  await measure('raw batched inserts', () => feed('psql', ['-q', '-v', 'ON_ERROR_STOP=1', db], inserts(begin)));
  await feed('psql', ['-q', db], ['drop table reading_raw_measure;\n']);
}

// Made before the clock starts: it is the server that is measured.
const bodies = [];
for (let from = 0; from < READINGS; from += BODY) {
  const rows = [];
  for (let i = from; i < Math.min(READINGS, from + BODY); i++) {
    const s = i % SENSORS;
    const at = new Date(begin + Math.floor(i / SENSORS) * STEP_MS).toISOString();
    rows.push({ house: house(s), quantity: quantity(s), sensor: `M-S${s}`, value: Number(value(i)), unit: unit(s), at });
  }
  bodies.push(rows);
}
await measure(`over HTTP, ${BODY} to a request`, async () => {
  for (const rows of bodies) {
    const { accepted } = await post('/api/readings', rows);
    if (accepted !== rows.length) throw new Error(`${accepted} of ${rows.length} were accepted`);
  }
});

if (broker) {
  const before = await stored();
  await measure('through the broker, stored', async () => {
    await sendAll(begin + span);
    while ((await stored()) - before < READINGS) await new Promise((done) => setTimeout(done, 100));
  });
}

const raw = rates['raw batched inserts'];
if (raw) for (const [name, rate] of Object.entries(rates)) console.log(`ratio ${(rate / raw).toFixed(2)}  ${name}`);
