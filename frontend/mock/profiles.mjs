/** The mock's versions of a crop's profile, and its learning. */
import { DAY, iso, notFound, problem } from './common.mjs';
import * as data from './data.mjs';

// --- Profile versions ------------------------------------------------------------------------------------------------

const versions = new Map();

export function versionsOf(crop) {
  if (!versions.has(crop.code)) {
    versions.set(crop.code, [
      {
        version: 1,
        origin: 'entered',
        createdAt: iso(Date.now() - 90 * DAY),
        adoptedAt: iso(Date.now() - 90 * DAY),
        inForce: true,
        pinned: false,
        profile: { ...crop.profile, cellSpread: 0.12, rates: { varieties: {}, sites: {} } },
        evidence: null,
      },
    ]);
  }
  return versions.get(crop.code);
}

export function learn(crop) {
  const all = versionsOf(crop);
  const before = all.find((each) => each.inForce).profile;
  const stages = before.stages.map((stage, i) => ({
    ...stage,
    daysAtReference: Math.round(stage.daysAtReference * (1.12 - 0.1 * i) * 10) / 10,
    survivalMean: Math.min(0.99, stage.survivalMean + 0.01),
  }));
  const varieties = data.varieties.filter((variety) => variety.crop === crop.code);
  const profile = {
    ...before,
    stages,
    rateSpread: 0.09,
    cellSpread: 0.14,
    rates: {
      varieties: Object.fromEntries(varieties.map(({ code }, i) => [code, 1 + 0.03 * i])),
      sites: { north: 1.02 },
    },
    version: all.length + 1,
  };
  const evidence = {
    asOf: iso(Date.now()),
    finishedBatches: 31,
    runningBatches: 12,
    stages: before.stages.map((stage, i) => ({
      stage: stage.stage,
      daysBefore: stage.daysAtReference,
      daysLearned: stages[i].daysAtReference,
      daysLow: stages[i].daysAtReference * 0.95,
      daysHigh: stages[i].daysAtReference * 1.06,
      observations: 31 - 4 * i,
      survivalBefore: stage.survivalMean,
      survivalLearned: stages[i].survivalMean,
      survivalBatches: 28,
    })),
    rateSpreadBefore: before.rateSpread,
    rateSpreadLearned: 0.09,
    cellSpreadBefore: before.cellSpread,
    cellSpreadLearned: 0.14,
    cardinals: before.stages.map(({ stage, minC, optimumC, maxC }, i) =>
      i === 1
        ? {
            stage,
            identified: true,
            reason: 'Batches stood between 18.1 and 24.9 °C.',
            minC,
            optimumC: optimumC - 0.6,
            maxC,
          }
        : {
            stage,
            identified: false,
            reason: 'All batches stood within 1.4 °C of each other; nothing says how it bends.',
          },
    ),
    varieties: varieties.map(({ code }, i) => ({ variety: code, batches: 3 + i, rate: 1 + 0.03 * i })),
    sites: [{ site: 'north', batches: 19, rate: 1.02 }],
    text: [
      '31 finished and 12 running batches were looked at.',
      'Callus takes longer than entered; the range of eight in ten does not hold the entered days.',
    ],
  };
  const made = {
    version: all.length + 1,
    origin: 'learned',
    createdAt: iso(Date.now()),
    adoptedAt: null,
    inForce: false,
    pinned: false,
    profile,
    evidence,
  };
  all.unshift(made);
  return [201, { version: made.version, profile, evidence }];
}

export function adopt(crop, version, { pinned = false } = {}) {
  const all = versionsOf(crop);
  const wanted = all.find((each) => each.version === Number(version));
  if (!wanted) return notFound;
  const holding = all.find((each) => each.pinned);
  if (holding && holding !== wanted)
    return problem(409, 'profile-pinned', `Version ${holding.version} is pinned; unpin it first.`, {
      version: holding.version,
    });
  for (const each of all) each.inForce = each.pinned = false;
  Object.assign(wanted, { inForce: true, pinned, adoptedAt: iso(Date.now()) });
  crop.profile = { ...wanted.profile, version: wanted.version };
  return [200, wanted];
}
