/** The mock's climate: hours, readings now, flags, sensors, set-points and recipes. */
import { DAY, HOUR, iso, notFound, problem, wobble } from './common.mjs';
import * as data from './data.mjs';

const UNITS = {
  'medium-temperature': 'Cel',
  'air-temperature': 'Cel',
  'relative-humidity': '%',
  light: 'umol/m2/s',
  'medium-moisture': '{level}',
  ec: 'mS/cm',
  'vapour-pressure-deficit': 'kPa',
  'dew-point': 'Cel',
  'daily-light-integral': 'mol/m2/d',
};

function valueAt(house, quantity, ms) {
  const sun = Math.max(0, Math.sin((((ms / HOUR) % 24) - 6) * (Math.PI / 12)));
  const jitter = wobble(house, quantity, Math.floor(ms / HOUR));
  const own = wobble(house, quantity) * 2;
  switch (quantity) {
    case 'medium-temperature':
      return 21.4 + own + sun * 0.8 + jitter * 0.4;
    case 'air-temperature':
      return 20 + own + sun * 5 + jitter;
    case 'relative-humidity':
      return 88 - sun * 14 + jitter * 4;
    case 'light':
      return sun * 280 + sun * jitter * 40;
    case 'medium-moisture':
      return Math.round(4 + own / 2);
    case 'ec':
      return 1.1 + own * 0.1;
    case 'dew-point':
      return 17.5 + own + jitter * 0.3;
    default: {
      const t = valueAt(house, 'air-temperature', ms);
      const saturation = 0.6108 * Math.exp((17.27 * t) / (t + 237.3));
      return saturation * (1 - valueAt(house, 'relative-humidity', ms) / 100);
    }
  }
}

const flags = new Map();
function flagsOf(house, quantity) {
  const key = `${house} ${quantity}`;
  if (!flags.has(key)) {
    const now = Date.now();
    const line = (i, kind, reason, more) => ({
      id: `${house}.${quantity}.${i}`,
      at: iso(now - (5 + i * 9) * HOUR),
      until: iso(now - (4 + i * 9) * HOUR),
      kind,
      reason,
      sensor: `${house}-a`,
      quantity,
      value: -127,
      leftOut: true,
      overridden: false,
      overrideReason: null,
      count: 4,
      ...more,
    });
    const some = quantity === 'medium-temperature' && wobble(house) > 0;
    flags.set(
      key,
      some
        ? [
            line(0, 'range', '−127 °C is what a probe without contact shows; 0 to 50 °C are taken.'),
            line(1, 'flat-line', '21.4 °C has not moved for 6 hours.', { value: 21.4 }),
            line(2, 'late', 'Came 3 h after it was measured.', { id: null, value: 21.1, leftOut: false, count: 1 }),
          ]
        : [],
    );
  }
  return flags.get(key);
}

function series(house, query) {
  const quantity = query.get('quantity') ?? 'medium-temperature';
  if (!UNITS[quantity]) return problem(400, 'malformed', `There is no quantity ${quantity}.`);
  const to = Date.parse(query.get('to') ?? iso(Date.now()));
  const from = Date.parse(query.get('from') ?? iso(to - DAY));
  const hours = [];
  if (quantity === 'daily-light-integral') {
    for (let at = Math.ceil(from / DAY) * DAY; at + DAY <= to; at += DAY)
      hours.push({ at: iso(at), value: 7.5 + wobble(house, at) * 3, source: 'measured' });
  } else if (quantity !== 'ec' || wobble(house) > 0) {
    for (let at = Math.ceil(from / HOUR) * HOUR; at < to; at += HOUR)
      hours.push({
        at: iso(at),
        value: valueAt(house, quantity, at),
        source: wobble(house, at, 'gap') > 0.47 ? 'filled' : 'measured',
      });
  }
  return [200, { house, quantity, unit: UNITS[quantity], hours, flags: flagsOf(house, quantity) }];
}

function now(house) {
  const measured = ['medium-temperature', 'air-temperature', 'relative-humidity', 'light', 'medium-moisture'];
  const quantities = measured.map((quantity) => {
    const value = valueAt(house, quantity, Date.now());
    const unit = UNITS[quantity];
    const at = iso(Date.now() - 3 * 60_000);
    return { quantity, value, unit, valueC: unit === 'Cel' ? value : null, at, sensor: `${house}-a` };
  });
  return { house, quantities };
}

const sensors = data.houses.flatMap(({ code }) => [
  { code: `${code}-a`, house: code, quantity: 'medium-temperature', unit: 'Cel', topic: `${code}/medium`, offset: 0 },
  { code: `${code}-b`, house: code, quantity: 'air-temperature', unit: '[degF]', topic: `${code}/air`, offset: -0.4 },
  { code: `${code}-c`, house: code, quantity: 'relative-humidity', unit: '%', topic: `${code}/humidity`, offset: 0 },
]);

const health = ({ code, quantity }) => ({ sensor: code, quantity, lastAt: iso(Date.now() - 240_000), lastValue: 21.5 });

const raw = (sensor) => ({
  sensor,
  readings: [3, 2, 1].map((n) => ({ at: iso(Date.now() - n * 240_000), value: 21.5, sent: 21.9, unit: 'Cel' })),
  more: false,
});

const setpoints = new Map(
  data.houses.map(({ code, mediumSetpointC }) => [
    code,
    mediumSetpointC === null
      ? []
      : [{ mediumC: mediumSetpointC, from: iso(Date.now() - 40 * DAY), recordedAt: iso(Date.now() - 40 * DAY) }],
  ]),
);

const band = (least, most) => ({ least, most });
const phase = (name, medium, humidity, deficit, light, moisture, mist, nitrogen) => ({
  phase: name,
  mediumC: medium,
  dayAirC: band(20, 26.7),
  nightAirC: band(name === 'FILLING' || name === 'TONING' ? 16 : 20, 26.7),
  humidityPercent: humidity,
  deficitKpa: deficit,
  lightUmol: light,
  moistureLevel: moisture,
  mist,
  nitrogenPpm: nitrogen,
});
const recipe = (crop) => ({
  crop,
  version: 0,
  recordedAt: null,
  mistNeed: 'LIGHT',
  fullMistDays: 3,
  toneAfterDays: 7,
  lowLightMol: 5,
  lowLightMediumLeastC: 21,
  phases: [
    phase(
      'STICKING',
      band(20, 23.3),
      band(80, 90),
      band(null, 0.53),
      band(260, 300),
      band(4, 4),
      'RUNNING',
      band(0, 50),
    ),
    phase(
      'CALLUSING',
      band(20, 23.3),
      band(80, 90),
      band(null, 0.7),
      band(260, 300),
      band(4, 4),
      'WEANING',
      band(0, 50),
    ),
    phase(
      'ROOTING',
      band(20, 23.3),
      band(60, 90),
      band(null, 1.2),
      band(260, 300),
      band(3, 4),
      'NIGHT_OFF',
      band(75, 100),
    ),
    phase('FILLING', band(18, 23.3), band(50, 90), band(null, 1.6), band(260, 500), band(3, 4), 'NONE', band(75, 150)),
    phase('TONING', band(16, 23.3), band(40, 85), band(null, 2), band(300, 600), band(2, 4), 'NONE', band(50, 100)),
  ],
  note: 'common practice, no source',
});

function override(id, body, way) {
  const found = [...flags.values()].flat().find((flag) => flag.id === id);
  if (!found) return notFound;
  Object.assign(found, {
    overridden: way === 'override',
    leftOut: way !== 'override',
    overrideReason: way === 'override' ? body.reason : null,
  });
  return [200, { flags: found.count, overridden: found.overridden }];
}

/** The answer to a request about climate; undefined when it is none. */
export function answerClimate(method, path, query, body) {
  const [name, id, part] = path.split('/').slice(2).map(decodeURIComponent);
  if (name === 'sensors' && method === 'GET') return part === 'readings' ? [200, raw(id)] : [200, sensors];
  if (name === 'ingest') return [200, { ways: [], mqtt: { state: 'off', broker: null } }];
  if (name === 'flags') return override(id, body, part);
  if (name === 'crops' && part === 'recipe') return [200, recipe(id)];
  if (name !== 'houses' || part === undefined) return undefined;
  if (part === 'climate') return series(id, query);
  if (part === 'now') return [200, now(id)];
  if (part === 'sensors') return [200, sensors.filter(({ house }) => house === id).map(health)];
  if (part !== 'setpoints') return undefined;
  const plan = setpoints.get(id);
  if (!plan) return notFound;
  if (method !== 'POST') return [200, plan];
  if (body.mediumC !== null && (body.mediumC < 0 || body.mediumC > 45))
    return problem(422, 'not-allowed', `${body.mediumC} °C is out of range.`, {
      errors: [{ field: 'mediumC', message: `${body.mediumC} °C is out of range; 0 to 45.` }],
    });
  plan.push({ ...body, recordedAt: iso(Date.now()) });
  return [201, plan.at(-1)];
}
