/** The mock's development, its explanation, and what if. */
import { DAY, HOUR, iso, problem, wobble } from './common.mjs';
import * as data from './data.mjs';
import { entriesOf } from './entries.mjs';

// --- Development and its explanation --------------------------------------------------------------------------------

export function development(batch) {
  const start = Date.parse(batch.stuckAt);
  const ready = Date.parse(batch.outlook.readyAt.p50);
  const spread = (Date.parse(batch.outlook.readyAt.p90) - ready) / DAY;
  const until = Math.max(ready + 4 * DAY, Date.now() + DAY);
  const hours = [];
  for (let at = start; at < until; at += 3 * HOUR) {
    const source = at > Date.now() ? 'forecast' : wobble(batch.id, at) > 0.47 ? 'filled' : 'measured';
    const daily = 1.2 * Math.sin(((at / HOUR) % 24) * (Math.PI / 12));
    hours.push({ at: iso(at), mediumC: 21.5 + daily + wobble(batch.id, at, 't'), source });
  }
  const progressAt = (at, byMs) => Math.max(0, Math.min(3, (3 * (at - start)) / (byMs - start)));
  const progress = [];
  for (let at = start; at < until; at += 12 * HOUR) {
    const far = Math.max(0, (at - Date.now()) / DAY);
    const wide = (spread * DAY * Math.min(1, 0.15 + far / 12)) / 1.2;
    progress.push({
      at: iso(at),
      p10: progressAt(at, ready + wide),
      p50: progressAt(at, ready),
      p90: progressAt(at, ready - wide),
    });
  }
  const planned = ready - explanation(batch).differenceDays * DAY;
  const looks = entriesOf(batch)
    .filter((entry) => entry.kind === 'look' && !entry.reversedBy)
    .map(({ happenedAt, stage, cells, reached }) => ({ at: happenedAt, stage, cells, reached }));
  if (batch.stage !== 'STICK')
    looks.unshift(
      { at: iso(start + 5 * DAY), stage: 'CALLUS', cells: 50, reached: 0 },
      { at: iso(start + 8 * DAY), stage: 'CALLUS', cells: 50, reached: 34 },
    );
  return {
    batch: batch.id,
    house: batch.house,
    hours,
    progress,
    stages: batch.stage === 'STICK' ? [] : [{ stage: 'CALLUS', reachedAt: iso(start + 10 * DAY) }],
    looks,
    plan: progress.map(({ at }) => ({ at, progress: progressAt(Date.parse(at), planned) })),
  };
}

export function explanation(batch) {
  const ready = Date.parse(batch.outlook.readyAt.p50);
  const on = (n) => iso(Date.parse(batch.stuckAt) + n * DAY).slice(0, 10);
  const parts = [
    { cause: 'profile-version', on: null, days: -0.4, text: 'Version 2 of the profile took the place of version 1.' },
    {
      cause: 'temperature',
      on: on(2),
      days: 0.9,
      actualC: 17.2,
      plannedC: 21,
      text: 'The medium was 17.2 °C on average.',
    },
    {
      cause: 'temperature',
      on: on(3),
      days: 0.6,
      actualC: 18.4,
      plannedC: 21,
      text: 'The medium was 18.4 °C on average.',
    },
    { cause: 'temperature', on: null, days: -0.2, actualC: 21.3, plannedC: 21, text: 'All other days.' },
    { cause: 'gap-filling', on: null, days: 0.1, text: '5 hours without readings were filled from the house pattern.' },
    { cause: 'forecast', on: null, days: 0.3, text: 'The days to come are expected cooler than planned.' },
    { cause: 'rate-seen', on: null, days: Math.round(wobble(batch.id) * 30) / 10, text: 'What was seen so far.' },
  ];
  const differenceDays = parts.reduce((sum, part) => sum + part.days, 0);
  return {
    batch: batch.id,
    asOf: iso(Date.now()),
    plannedReadyAt: iso(ready - differenceDays * DAY),
    readyAt: iso(ready),
    differenceDays,
    rate: { p10: 0.91, p50: 0.98, p90: 1.06 },
    profileVersion: 2,
    plannedProfileVersion: 1,
    parts,
  };
}

// --- What if -------------------------------------------------------------------------------------------------------

export function whatIf(body, query) {
  const errors = [];
  body.setpoints.forEach(({ house, mediumC }, i) => {
    if (!data.houses.some(({ code }) => code === house))
      errors.push({ field: `setpoints[${i}].house`, message: `There is no house ${house}.` });
    if (mediumC < 0 || mediumC > 45)
      errors.push({ field: `setpoints[${i}].mediumC`, message: `${mediumC} °C is out of range; 0 to 45.` });
  });
  body.moves.forEach(({ batch, house }, i) => {
    const found = data.batches.find(({ id }) => id === batch);
    if (!found) errors.push({ field: `moves[${i}].batch`, message: `There is no batch ${batch}.` });
    else if (found.house === house) errors.push({ field: `moves[${i}].house`, message: 'It stands there already.' });
  });
  if (errors.length) return problem(422, 'not-allowed', errors[0].message, { errors });
  const touched = data.batches.filter(
    ({ id, house, stage }) =>
      stage !== 'READY' &&
      (body.moves.some((move) => move.batch === id) || body.setpoints.some((change) => change.house === house)),
  );
  const batches = touched.map((batch) => {
    const change = body.setpoints.find(({ house }) => house === batch.house);
    const by = (change ? (21.5 - change.mediumC) * 0.9 : 0.8) + wobble(batch.id);
    const moved = (at) => iso(Date.parse(at) + by * DAY);
    const { readyAt, saleableTrays } = batch.outlook;
    return {
      id: batch.id,
      before: { house: batch.house, readyAt, saleableTrays },
      after: {
        house: body.moves.find((move) => move.batch === batch.id)?.house ?? batch.house,
        readyAt: { p10: moved(readyAt.p10), p50: moved(readyAt.p50), p90: moved(readyAt.p90) },
        saleableTrays,
      },
    };
  });
  const cells = touched.slice(0, 14).flatMap((batch, i) => {
    const week = data.weekOf(data.addDays(batch.outlook.readyAt.p90.slice(0, 10), 7));
    const { variety, trayFormat, site } = batch;
    const openBefore = 4 + i;
    return [{ variety, trayFormat, site, week, openBefore, openAfter: Math.max(0, openBefore + (i % 3 ? -3 : 5)) }];
  });
  return [
    200,
    { asOf: iso(Date.now()), position: 5000, confidence: Number(query.get('confidence') ?? 0.9), batches, cells },
  ];
}
