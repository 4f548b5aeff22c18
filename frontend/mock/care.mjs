/** The mock's rounds, warnings, treatments and feed arithmetic. */
import { HOUR, iso, notFound, problem } from './common.mjs';
import * as data from './data.mjs';
import { recordEntry } from './entries.mjs';

const today = () => iso(Date.now()).slice(0, 10);
const ASKS = { 'look-callus': ['cells', 'reached'], 'moisture-check': ['level'], count: ['plants'], move: ['house'] };
const closed = new Map();
const HEATED = {
  STICK: ['look-callus', 'prevention'],
  CALLUS: ['night-mist-off', 'feed-step'],
  ROOT: ['tone'],
  READY: ['count'],
};

function itemsOf(site) {
  const items = [];
  for (const house of data.houses.filter((each) => each.site === site)) {
    const add = (task, batch, more = {}) => {
      const id = `${task}.${batch?.id ?? house.code}.1`;
      items.push({
        id,
        house: house.code,
        houseName: house.name,
        batch: batch?.id ?? null,
        varietyName: batch?.varietyName ?? null,
        trays: batch?.trays ?? null,
        phase: batch ? 'CALLUSING' : null,
        task,
        dueOn: today(),
        state: closed.get(id)?.state ?? 'due',
        why: 'Every fourth day; last done on the 21st.',
        asks: ASKS[task] ?? (task === 'scouting' ? ['fungusGnats', 'shoreFlies'] : []),
        blockedUntil: null,
        fits: [],
        ...more,
      });
    };
    add('scouting');
    for (const batch of data.batches.filter((each) => each.house === house.code).slice(0, 4)) {
      for (const task of HEATED[batch.stage]) add(task, batch);
      add('moisture-check', batch, batch.trays % 3 ? {} : { dueOn: data.addDays(today(), -1), state: 'carried-over' });
    }
  }
  return items.map((item) => {
    const blockedUntil = closedUntil(item.house);
    const state = blockedUntil ? 'blocked' : item.state;
    return { ...item, blockedUntil, state: closed.get(item.id)?.state ?? state };
  });
}

function rounds(method, id, part, query, body) {
  if (id === 'houses')
    return [
      200,
      data.houses
        .filter(({ site }) => site === query.get('site'))
        .map(({ code, name }, i) => ({
          house: code,
          name,
          batches: data.batches.filter(({ house }) => house === code).length,
          blockedUntil: closedUntil(code),
          clashes:
            i === 1
              ? [
                  {
                    quantity: 'mist',
                    least: null,
                    most: null,
                    mist: ['NONE'],
                    stay: ['B1000'],
                    move: [{ batch: 'B1043', fits: ['quay-3'] }],
                  },
                ]
              : [],
        })),
    ];
  if (method === 'GET')
    return query.get('site')
      ? [200, itemsOf(query.get('site'))]
      : problem(400, 'malformed', 'site is missing; name the site of the round');
  const item = data.sites.flatMap(({ code }) => itemsOf(code)).find((each) => each.id === id);
  if (!item) return notFound;
  if (part === 'undo') {
    const { entry, batch } = closed.get(id) ?? {};
    if (entry) recordEntry(batch, { kind: 'reversal', entry, reason: body.reason, happenedAt: iso(Date.now()) });
    closed.delete(id);
  } else {
    const missing = part === 'done' ? item.asks.filter((field) => body[field] === undefined) : [];
    if (missing.length)
      return problem(400, 'malformed', `${missing[0]} is missing`, {
        errors: missing.map((field) => ({ field, message: `is missing; ${item.task} asks for it` })),
      });
    closed.set(id, { state: part });
    const batch = data.batches.find((each) => each.id === item.batch);
    if (item.task === 'look-callus' && part === 'done') {
      const [, recorded] = recordEntry(batch, {
        kind: 'look',
        stage: 'CALLUS',
        cells: body.cells,
        reached: body.reached,
        happenedAt: body.happenedAt,
      });
      closed.set(id, { state: part, entry: recorded.id, batch });
    }
  }
  return [200, { ...item, state: part === 'undo' ? 'due' : part, happenedAt: iso(Date.now()), entries: [] }];
}

const warnings = [
  ['medium-cold', 'lasting', 17.2, 20, 'Cel', null],
  ['dry-down', 'lasting', 1.1, 0.53, 'kPa', 'B1003'],
  ['over-misting', 'acknowledged', 97, 90, '%', null],
  ['light-high', 'ended', 412, 300, 'umol/m2/s', null],
  ['no-feed', 'lasting', null, null, null, 'B1010'],
  ['no-readings', 'ended', null, null, null, null],
].map(([kind, state, worst, limit, unit, batch], i) => {
  const found = data.batches.find(({ id }) => id === batch);
  const house = data.houses.find(({ code }) => code === found?.house) ?? data.houses[i] ?? { code: 'h', site: 's' };
  return {
    id: `w-${i}`,
    kind,
    site: house.site,
    house: house.code,
    batch,
    quantity: kind === 'no-readings' ? 'air-temperature' : null,
    state,
    since: iso(Date.now() - (6 + i * 7) * HOUR),
    raisedAt: iso(Date.now() - (5 + i * 7) * HOUR),
    until: state === 'ended' ? iso(Date.now() - i * HOUR) : null,
    worst,
    limit,
    unit,
    batches: batch ? [batch] : ['B1000', 'B1004'],
    text: `House ${house.code}: ${kind}`,
    acknowledgedAt: state === 'acknowledged' ? iso(Date.now() - HOUR) : null,
    acknowledgedBy: state === 'acknowledged' ? 'unsigned' : null,
    acknowledgement: state === 'acknowledged' ? 'Nozzle of line 2 changed.' : null,
    deliveries:
      i === 0
        ? [{ channel: 'mail', dueAt: iso(Date.now()), attempts: 2, lastError: 'no answer', deliveredAt: null }]
        : [],
  };
});

function answerWarnings(method, id, query, body) {
  if (method === 'GET') {
    const wanted = (each) =>
      (!query.get('site') || each.site === query.get('site')) &&
      (!query.get('house') || each.house === query.get('house'));
    return [200, warnings.filter(wanted)];
  }
  const found = warnings.find((each) => each.id === id);
  if (!found) return notFound;
  Object.assign(found, {
    state: found.state === 'ended' ? 'ended' : 'acknowledged',
    acknowledgedAt: iso(Date.now()),
    acknowledgedBy: 'unsigned',
    acknowledgement: body?.text ?? null,
  });
  return [200, found];
}

const treatments = [];
const closedUntil = (house) =>
  treatments
    .filter((each) => each.house === house && each.closed && !each.reversedAt)
    .map((each) => each.reentryAt)[0] ?? null;

function answerTreatments(method, id, part, query, body) {
  if (method === 'GET')
    return [200, treatments.filter((each) => !query.get('site') || each.site === query.get('site'))];
  if (part === 'reversal') {
    const found = treatments.find((each) => each.id === id);
    if (!found) return notFound;
    Object.assign(found, { reversedAt: iso(Date.now()), reversalReason: body.reason, closed: false });
    return [200, found];
  }
  if (body.reentryHours < 0 || body.reentryHours > 1000)
    return problem(422, 'not-allowed', 'out of range', {
      errors: [{ field: 'reentryHours', message: 'must lie between 0 and 1000' }],
    });
  const reentryMs = Date.parse(body.appliedAt) + body.reentryHours * HOUR;
  treatments.unshift({
    batch: null,
    note: null,
    ...body,
    id: `t-${treatments.length}`,
    site: data.houses.find(({ code }) => code === body.house)?.site,
    reentryAt: iso(reentryMs),
    closed: reentryMs > Date.now(),
    recordedAt: iso(Date.now()),
    recordedBy: 'unsigned',
    reversedAt: null,
    reversalReason: null,
    cautions: [
      'The label and the law of your place decide.',
      'Keep people out until the re-entry interval has passed.',
    ],
  });
  return [201, treatments[0]];
}

const VOLUMES = { L: 1, mL: 0.001, '[gal_us]': 3.785411784, '[foz_us]': 0.0295735295625 };
const WEIGHTS = { g: 1, kg: 1000, '[oz_av]': 28.349523125, '[lb_av]': 453.59237 };
const all = (base, measures) => Object.entries(measures).map(([unit, size]) => ({ value: base / size, unit }));

function feed(kind, body) {
  const litres = (amount) => amount.value * VOLUMES[amount.unit];
  if (kind === 'ec') {
    const feedMsPerCm = body.measuredMsPerCm - body.clearWaterMsPerCm;
    return [200, { feedMsPerCm, ppm: (feedMsPerCm / body.msPerCmPer100Ppm) * 100 }];
  }
  if (kind === 'dilution') {
    const spray = body.sprayVolume ? litres(body.sprayVolume) : body.areaM2 * body.litresPerM2;
    const isLiquid = body.product.unit in VOLUMES;
    const perLitre = (body.product.value * (isLiquid ? VOLUMES : WEIGHTS)[body.product.unit]) / litres(body.perVolume);
    return [
      200,
      {
        label: body.label,
        product: all(perLitre * spray, isLiquid ? VOLUMES : WEIGHTS),
        sprayVolume: all(spray, VOLUMES),
        cautions: ['The label decides.'],
      },
    ];
  }
  if (kind === 'stock') {
    if (body.nitrogenPercent <= 0 || body.nitrogenPercent > 100)
      return problem(422, 'not-allowed', 'nitrogen', {
        errors: [{ field: 'nitrogenPercent', message: 'must lie above 0 and up to 100' }],
      });
    const gramsPerLitre = (body.ppm * body.injector) / (body.nitrogenPercent * 10);
    return [
      200,
      {
        gramsPerLitre,
        ouncesPerGallon: gramsPerLitre * 0.13352,
        fertilizer: all(gramsPerLitre * litres(body.stockVolume), WEIGHTS),
        feedVolume: all(litres(body.stockVolume) * body.injector, VOLUMES),
        expectedMsPerCm:
          body.msPerCmPer100Ppm === undefined
            ? null
            : body.clearWaterMsPerCm + (body.ppm / 100) * body.msPerCmPer100Ppm,
      },
    ];
  }
  const gramsPerLitre = (body.fertilizer.value * WEIGHTS[body.fertilizer.unit]) / litres(body.stockVolume);
  if (kind === 'strength')
    return [200, { gramsPerLitre, ppm: (gramsPerLitre * body.nitrogenPercent * 10) / body.injector }];
  const injector = (gramsPerLitre * body.nitrogenPercent * 10) / body.ppm;
  return [200, { injector, ratio: `1:${injector.toFixed(1)}` }];
}

/** The answer to a request about care; undefined when it is none. */
export function answerCare(method, path, query, body) {
  const [name, id, part] = path.split('/').slice(2).map(decodeURIComponent);
  if (name === 'rounds') return rounds(method, id, part, query, body);
  if (name === 'warnings') return answerWarnings(method, id, query, body);
  if (name === 'treatments') return answerTreatments(method, id, part, query, body);
  if (name === 'feed') return feed(id, body);
  return undefined;
}
