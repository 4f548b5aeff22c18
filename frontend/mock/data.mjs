/** Invented data for looking at the screens without a backend. The arithmetic here is only good enough to look alive. */

let seed = 20261125;
export function random() {
  seed = (seed * 1664525 + 1013904223) % 4294967296;
  return seed / 4294967296;
}
const between = (low, high) => Math.round(low + random() * (high - low));

export const sites = [
  { code: 'north', name: 'North Field', timeZone: 'Europe/Amsterdam', shipDay: 'MONDAY' },
  { code: 'quay', name: 'Quay Glass', timeZone: 'Europe/Amsterdam', shipDay: 'TUESDAY' },
  { code: 'upland', name: 'Upland', timeZone: 'Europe/Lisbon', shipDay: 'MONDAY' },
];
export const houses = sites.flatMap((site, s) =>
  [1, 2, 3, 4].map((n) => ({
    code: `${site.code}-${n}`,
    site: site.code,
    name: `House ${s * 4 + n}`,
    mediumSetpointC: n === 4 ? null : 21 + (n % 2),
  })),
);
export const trayFormats = [
  { code: '72', cells: 72, saleCount: 70, lengthMm: 533, widthMm: 267 },
  { code: '105', cells: 105, saleCount: 102, lengthMm: 533, widthMm: 267 },
  { code: '128', cells: 128, saleCount: 125, lengthMm: 533, widthMm: 267 },
  { code: '50', cells: 50, saleCount: 48, lengthMm: 533, widthMm: 267 },
];
const genera = [
  'Salvia nemorosa',
  'Lavandula angustifolia',
  'Coreopsis grandiflora',
  'Heuchera',
  'Pelargonium peltatum',
  'Petunia',
  'Verbena',
  'Osteospermum',
  'Fuchsia',
  'Lantana camara',
  'Angelonia angustifolia',
  'Calibrachoa',
  'Dianthus',
  'Sedum',
  'Gaura',
];
const epithets = [
  'Harbour Dusk',
  'Low Tide',
  'First Lamp',
  'Paper Moon',
  'Slow River',
  'Tin Roof',
  'Chalk Line',
  'Copper Kettle',
  'Long Lane',
  'Blue Hour',
  'Quiet Bell',
  'Apple Loft',
  'Small Hours',
];
const slug = (text) =>
  text
    .toLowerCase()
    .replace(/[^a-z]+/g, '-')
    .replace(/^-|-$/g, '');
const stage = (name, days, mean) => ({
  stage: name,
  daysAtReference: days,
  referenceC: 22,
  minC: 8,
  optimumC: 24,
  maxC: 36,
  survivalMean: mean,
  survivalWeight: 60,
  form: 'BETA',
  source: 'common practice',
});
export const crops = genera.map((name) => ({
  code: slug(name),
  name,
  profile: {
    stages: [
      stage('STICK', between(4, 9), 0.96),
      stage('CALLUS', between(7, 14), 0.95),
      stage('ROOT', between(10, 18), 0.98),
    ],
    rateSpread: 0.12,
    holdDays: 14,
    version: 1,
    note: null,
  },
}));
export const varieties = Array.from({ length: 60 }, (_, i) => {
  const genus = genera[i % genera.length];
  const epithet = epithets[(i * 5 + Math.floor(i / genera.length)) % epithets.length];
  return { code: `${slug(genus).slice(0, 8)}-${slug(epithet)}`, crop: slug(genus), name: `${genus} '${epithet}'` };
});

export const TODAY = new Date().toISOString().slice(0, 10);
const DAY = 86_400_000;
export const addDays = (date, days) => new Date(Date.parse(date) + days * DAY).toISOString().slice(0, 10);
export const mondayOf = (date) => addDays(date, -((new Date(date).getUTCDay() + 6) % 7));
export function weekOf(date) {
  const thursday = new Date(Date.parse(mondayOf(date)) + 3 * DAY);
  const number = 1 + Math.floor((thursday - Date.UTC(thursday.getUTCFullYear(), 0, 1)) / (7 * DAY));
  return `${thursday.getUTCFullYear()}-W${String(number).padStart(2, '0')}`;
}
export function mondayOfWeek(week) {
  const fourth = `${week.slice(0, 4)}-01-04`;
  return addDays(mondayOf(fourth), (Number(week.slice(6)) - 1) * 7);
}

const instant = (days) => new Date(Date.now() + days * DAY).toISOString();
const around = (days, spread) => ({
  p10: instant(days - spread),
  p50: instant(days),
  p90: instant(days + spread * 1.3),
});
const STAGES = ['STICK', 'CALLUS', 'ROOT', 'READY'];
export const batches = Array.from({ length: 150 }, (_, i) => {
  const variety = varieties[between(0, varieties.length - 1)];
  const house = houses[between(0, houses.length - 1)];
  const format = trayFormats[i % 3];
  const trays = between(6, 120);
  const age = between(1, 60);
  const step = Math.min(3, Math.floor(age / 11));
  const stuck = trays * format.cells;
  const lost = Math.round(stuck * random() * 0.03 * (step + 1));
  const alive = stuck - lost;
  const saleable = Math.floor((alive * (0.93 + 0.02 * step)) / format.saleCount);
  const ready = 34 - age;
  return {
    id: `B${1000 + i}`,
    site: house.site,
    house: house.code,
    variety: variety.code,
    varietyName: variety.name,
    crop: variety.crop,
    cropName: crops.find((c) => c.code === variety.crop).name,
    trayFormat: format.code,
    stuckAt: instant(-age),
    stage: STAGES[step],
    stageSince: instant(-(age % 11)),
    trays,
    traysStuck: trays,
    plants: { stuck, alive, lost, shipped: 0 },
    lostByCause: lost ? { rot: Math.ceil(lost / 2), 'dry-down': Math.floor(lost / 2) } : {},
    lastCount: step ? { at: instant(-2), alive, sampledCells: i % 2 ? 420 : null } : null,
    outlook: {
      asOf: instant(0),
      callusedAt: around(7 - age, 1.2),
      rootedAt: around(19 - age, 2),
      readyAt: around(ready, 0.5 + Math.max(0, ready) * 0.12),
      saleableTrays: { p10: Math.max(0, saleable - 2 - (3 - step)), p50: saleable, p90: saleable + 1 },
      usableUntil: instant(ready + 16).slice(0, 10),
      missingHours: i % 9 ? 0 : 5,
      filledFrom: i % 9 ? null : 'house pattern',
    },
    position: 4000 + i,
  };
});

export const orders = [];
const customers = ['Garden Row', 'Hillside Plants', 'Marsh Lane Nursery', 'Old Orchard Market'];
for (let i = 0; i < 60; i++) {
  const batch = batches[between(0, batches.length - 1)];
  const shipOn = addDays(mondayOf(TODAY), 7 * between(0, 7) + between(0, 3));
  orders.push({
    id: `O${200 + i}`,
    customer: customers[i % 4],
    note: null,
    recordedAt: instant(-i),
    confidence: 0.9,
    released: false,
    position: 4200 + i,
    promises: [
      {
        line: 1,
        variety: batch.variety,
        trayFormat: batch.trayFormat,
        site: batch.site,
        shipOn,
        trays: between(2, 14),
        shipped: 0,
        confidence: 0.9,
        kept: i % 4 !== 0,
        lots: [{ batch: batch.id, trays: 2 }],
      },
    ],
  });
}
