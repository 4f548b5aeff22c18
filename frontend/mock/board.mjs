/** The mock's board: open trays by cell, and what they are made of. */
import * as data from './data.mjs';

export const sameKey = (a, b) => a.variety === b.variety && a.trayFormat === b.trayFormat && a.site === b.site;
const lotsOf = (key) => data.batches.filter((batch) => sameKey(batch, key));
const promisesOf = (key) =>
  data.orders
    .filter((o) => !o.released)
    .flatMap((o) =>
      o.promises.filter((p) => sameKey(p, key)).map((p) => ({ ...p, order: o.id, customer: o.customer })),
    );

function traysAt(lot, date, confidence) {
  const { readyAt, usableUntil, saleableTrays } = lot.outlook;
  const readyBy = confidence > 0.7 ? readyAt.p90 : readyAt.p50;
  return readyBy.slice(0, 10) <= date && date < usableUntil
    ? confidence > 0.7
      ? saleableTrays.p10
      : saleableTrays.p50
    : 0;
}

export function cellOf(key, week, confidence) {
  const date = data.mondayOfWeek(week);
  const promises = promisesOf(key).filter((p) => data.weekOf(p.shipOn) === week);
  const promised = promises.reduce((sum, p) => sum + p.trays, 0);
  const ready = lotsOf(key).reduce((sum, lot) => sum + traysAt(lot, date, confidence), 0);
  const taken = promisesOf(key)
    .filter((p) => Math.abs(Date.parse(p.shipOn) - Date.parse(date)) < 12 * 86_400_000)
    .reduce((s, p) => s + p.trays, 0);
  const open = Math.max(0, ready - taken);
  const likelyReady = lotsOf(key).reduce((sum, lot) => sum + traysAt(lot, date, 0.5), 0);
  const atRisk = promises.filter((p) => !p.kept).reduce((sum, p) => sum + p.trays, 0);
  return { week, date, ready, promised, open, likely: Math.max(open, likelyReady - taken), atRisk };
}

export function weeksFrom(from, count) {
  const monday = data.mondayOfWeek(from ?? data.weekOf(data.TODAY));
  return Array.from({ length: count }, (_, i) => {
    const date = data.addDays(monday, 7 * i);
    return { week: data.weekOf(date), monday: date };
  });
}

export function board(query, position) {
  const confidence = Number(query.get('confidence') ?? 0.9);
  const weeks = weeksFrom(query.get('from') ?? undefined, Number(query.get('weeks') ?? 12));
  const keys = new Map(data.batches.map((b) => [`${b.variety} ${b.trayFormat} ${b.site}`, b]));
  const text = (query.get('text') ?? '').toLowerCase();
  const rows = [...keys.values()]
    .filter(
      (b) =>
        (!query.get('site') || b.site === query.get('site')) && (!query.get('crop') || b.crop === query.get('crop')),
    )
    .filter((b) => `${b.variety} ${b.varietyName} ${b.cropName}`.toLowerCase().includes(text))
    .map((b) => rowOf(b, weeks, confidence));
  return { asOf: new Date().toISOString(), position, confidence, weeks, rows };
}

export function rowOf({ variety, varietyName, crop, cropName, trayFormat, site }, weeks, confidence) {
  const key = { variety, trayFormat, site };
  return { ...key, varietyName, crop, cropName, cells: weeks.map(({ week }) => cellOf(key, week, confidence)) };
}

export function explain(query, position) {
  const key = { variety: query.get('variety'), trayFormat: query.get('trayFormat'), site: query.get('site') };
  const confidence = Number(query.get('confidence') ?? 0.9);
  const cell = cellOf(key, query.get('week'), confidence);
  const lots = lotsOf(key);
  const sum = (pick) => lots.reduce((total, lot) => total + pick(lot), 0);
  return {
    ...key,
    ...cell,
    confidence,
    asOf: new Date().toISOString(),
    position,
    lots: lots.map((lot) => ({
      batch: lot.id,
      house: lot.house,
      stage: lot.stage,
      alive: lot.plants.alive,
      saleableTrays: lot.outlook.saleableTrays,
      readyAt: lot.outlook.readyAt,
      readyByDateProbability:
        lot.outlook.readyAt.p90.slice(0, 10) <= cell.date
          ? 0.97
          : lot.outlook.readyAt.p50.slice(0, 10) <= cell.date
            ? 0.6
            : 0.05,
      usableFrom: lot.outlook.readyAt.p90.slice(0, 10),
      usableUntil: lot.outlook.usableUntil,
      traysAtConfidence: traysAt(lot, cell.date, confidence),
      promisedHere: 0,
    })),
    promises: promisesOf(key).filter((p) => data.weekOf(p.shipOn) === cell.week),
    limitedBy: { dates: [cell.date], capacity: cell.ready, promised: cell.ready - cell.open },
    steps: {
      stuck: sum((l) => l.plants.stuck),
      lost: sum((l) => l.plants.lost),
      alive: sum((l) => l.plants.alive),
      shipped: 0,
      expectedAlive: Math.round(sum((l) => l.plants.alive) * 0.95),
      saleable: sum((l) => l.outlook.saleableTrays.p50),
      ready: cell.ready,
      promised: cell.promised,
      open: cell.open,
    },
  };
}
