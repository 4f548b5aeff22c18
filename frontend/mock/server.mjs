/** A stand-in for the backend while a screen is being drawn: `npm run mock`, then `npm run dev`. Not used by tests. */
import { createServer } from 'node:http';
import * as data from './data.mjs';
import { board, cellOf, explain, rowOf, sameKey, weeksFrom } from './board.mjs';
import { answerCare } from './care.mjs';
import { answerClimate } from './climate.mjs';
import { answerLearning } from './learning.mjs';

const port = Number(process.env.PORT ?? 8080);
let position = 5000;
const streams = new Set();
const lists = {
  sites: data.sites,
  houses: data.houses,
  'tray-formats': data.trayFormats,
  crops: data.crops,
  varieties: data.varieties,
};
if (process.env.EMPTY) for (const list of [...Object.values(lists), data.batches, data.orders]) list.length = 0;

const now = () => new Date().toISOString();
function takeOrder(body) {
  const short = body.lines
    .map((line, i) => ({
      ...line,
      line: i + 1,
      asked: line.trays,
      open: cellOf(line, data.weekOf(line.shipOn), 0.9).open,
    }))
    .filter((line) => line.asked > line.open)
    .map((line) => {
      const later = weeksFrom(data.weekOf(line.shipOn), 10)
        .map(({ week }) => cellOf(line, week, 0.9))
        .find((cell) => cell.open >= line.asked);
      return { ...line, nearestDate: later?.date ?? null, nearestOpen: later?.open ?? null };
    });
  if (short.length)
    return [
      409,
      {
        type: '/problems/not-enough-open',
        title: 'Not enough open',
        status: 409,
        detail: `${short[0].asked} trays asked, ${short[0].open} open`,
        lines: short,
      },
    ];
  const order = {
    id: `O${200 + data.orders.length}`,
    customer: body.customer,
    note: body.note ?? null,
    recordedAt: now(),
    confidence: body.confidence ?? 0.9,
    released: false,
    position: ++position,
    promises: body.lines.map((line, i) => ({
      ...line,
      line: i + 1,
      shipped: 0,
      confidence: 0.9,
      kept: true,
      lots: [],
    })),
  };
  data.orders.push(order);
  tellRows(body.lines);
  return [201, order];
}

function send(stream, name, body) {
  stream.response.write(`id: ${body.position ?? position}\nevent: ${name}\ndata: ${JSON.stringify(body)}\n\n`);
}

function tellRows(keys) {
  for (const stream of streams) {
    const weeks = weeksFrom(stream.query.get('from') ?? undefined, Number(stream.query.get('weeks') ?? 12));
    const rows = keys
      .flatMap((key) => data.batches.filter((b) => sameKey(b, key)).slice(0, 1))
      .map((b) => rowOf(b, weeks, Number(stream.query.get('confidence') ?? 0.9)));
    send(stream, 'board', { position, asOf: now(), rows });
    send(stream, 'orders', { position });
  }
}

function tell(name) {
  position++;
  for (const stream of streams) send(stream, name, { position });
}

function tellChange(path) {
  const [, , name, id] = path.split('/');
  if (name === 'crops') return tell('setup');
  if (name !== 'batches') return;
  position++;
  for (const stream of streams) send(stream, 'batches', { position, ids: [decodeURIComponent(id)] });
}

setInterval(() => streams.forEach((stream) => send(stream, 'beat', { at: now() })), 10_000);
setInterval(() => {
  const batch = data.batches[Math.floor(Math.random() * data.batches.length)];
  if (!batch || process.env.STILL) return;
  position++;
  batch.outlook.saleableTrays.p10 = Math.max(0, batch.outlook.saleableTrays.p10 + (Math.random() < 0.5 ? -1 : 1));
  tellRows([batch]);
}, 4_000);

const notFound = [
  404,
  { type: '/problems/not-found', title: 'Not found', status: 404, detail: 'There is no such thing.' },
];

function answer(method, path, query, body) {
  const asOf = query.get('asOf');
  if (asOf && Date.parse(asOf) > Date.now())
    return [
      422,
      { type: '/problems/in-the-future', title: 'In the future', status: 422, detail: `${asOf} is still to come.` },
    ];
  const learned =
    answerLearning(method, path, query, body) ??
    answerClimate(method, path, query, body) ??
    answerCare(method, path, query, body);
  if (learned) {
    if (method === 'POST' && learned[0] === 201) tellChange(path);
    return learned;
  }
  const [name, id] = path.split('/').slice(2).map(decodeURIComponent);
  if (name === 'about') return [200, { version: 'mock', asOf: now(), position, demo: true }];
  if (name === 'board') return [200, id === 'cell' ? explain(query, position) : board(query, position)];
  if (name === 'orders') {
    if (method === 'POST') return takeOrder(body);
    const order = data.orders.find((o) => o.id === id);
    if (method !== 'DELETE') return id ? (order ? [200, order] : notFound) : [200, data.orders];
    if (order && !order.released) {
      order.released = true;
      position++;
      tellRows(order.promises);
    }
    return [204];
  }
  if (name === 'batches') {
    if (method === 'POST')
      return [422, { type: '/problems/mock', title: 'Only looking', status: 422, detail: 'The mock records nothing.' }];
    const batch = data.batches.find((b) => b.id === id);
    if (id) return batch ? [200, batch] : notFound;
    const text = (query.get('text') ?? '').toLowerCase();
    const found = data.batches.filter((b) =>
      `${b.id} ${b.variety} ${b.varietyName} ${b.house}`.toLowerCase().includes(text),
    );
    return [
      200,
      { asOf: now(), position, batches: found.filter((b) => !query.get('site') || b.site === query.get('site')) },
    ];
  }
  const list = lists[name];
  if (!list) return notFound;
  const index = list.findIndex((each) => each.code === id);
  if (method === 'POST') {
    if (!/^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/.test(body.code ?? ''))
      return [
        400,
        {
          type: '/problems/malformed',
          title: 'Malformed',
          status: 400,
          detail: 'A code is 1 to 32 letters, digits, dots, dashes or underscores.',
          field: 'code',
        },
      ];
    if (list.some((each) => each.code === body.code))
      return [
        409,
        {
          type: '/problems/code-taken',
          title: 'Code taken',
          status: 409,
          detail: `${body.code} is taken.`,
          field: 'code',
        },
      ];
    list.push(body);
    tell('setup');
    return [201, body];
  }
  if (method === 'PUT') {
    if (index < 0) return notFound;
    list[index] = body;
    tell('setup');
    return [200, body];
  }
  return id ? (index < 0 ? notFound : [200, list[index]]) : [200, list];
}

createServer((request, response) => {
  const url = new URL(request.url, 'http://mock');
  if (url.pathname === '/api/live') {
    response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-cache' });
    const stream = { response, query: url.searchParams };
    streams.add(stream);
    request.on('close', () => streams.delete(stream));
    send(stream, 'hello', { position, asOf: now() });
    return;
  }
  let raw = '';
  request.on('data', (chunk) => (raw += chunk));
  request.on('end', () => {
    const [status, body] = answer(request.method, url.pathname, url.searchParams, raw ? JSON.parse(raw) : undefined);
    response.writeHead(status, { 'content-type': status < 400 ? 'application/json' : 'application/problem+json' });
    response.end(body === undefined ? undefined : JSON.stringify(body));
  });
}).listen(port, '127.0.0.1', () => console.log(`mock on http://127.0.0.1:${port}`));
