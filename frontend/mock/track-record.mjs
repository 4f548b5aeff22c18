/** The mock's track record. */
import { DAY, iso, wobble } from './common.mjs';
import * as data from './data.mjs';

// --- Track record ----------------------------------------------------------------------------------------------------

export function trackRecord(query) {
  const leadDays = Number(query.get('leadDays') ?? 7);
  const crop = query.get('crop');
  const none = { maeDays: null, skill: null };
  const base = { asOf: iso(Date.now()), leadDays, crop };
  if (process.env.EMPTY || crop === data.crops.at(-1)?.code)
    return {
      ...base,
      n: 0,
      maeDays: null,
      biasDays: null,
      coverage: {},
      pinball: null,
      crps: null,
      promisedKept: null,
      promisedCases: 0,
      baselines: { calendar: none, degreeDays: none },
      byLead: [],
      byCrop: [],
      batches: [],
    };
  const maeAt = (lead) => 0.35 + 0.11 * lead;
  const batches = Array.from({ length: 90 }, (_, i) => {
    const readyMs = Date.now() - (4 + i * 1.7) * DAY;
    const errorDays = wobble('e', i) * maeAt(leadDays) * 4;
    const predicted = readyMs - errorDays * DAY;
    const half = maeAt(leadDays) * 1.5;
    return {
      batch: `B${700 + i}`,
      crop: data.crops[i % data.crops.length].code,
      readyAt: iso(readyMs),
      predicted: { p10: iso(predicted - half * DAY), p50: iso(predicted), p90: iso(predicted + half * 1.2 * DAY) },
      errorDays,
    };
  });
  const coverage = { 0.5: 0.52, 0.8: 0.79, 0.9: 0.88 };
  return {
    ...base,
    n: batches.length,
    maeDays: maeAt(leadDays),
    biasDays: 0.2,
    coverage,
    pinball: 0.31,
    crps: 0.74,
    promisedKept: 0.91,
    promisedCases: 240,
    baselines: {
      calendar: { maeDays: 2.6, skill: 1 - maeAt(leadDays) / 2.6 },
      degreeDays: { maeDays: 1.5, skill: 1 - maeAt(leadDays) / 1.5 },
    },
    byLead: [1, 2, 3, 5, 7, 10, 14, 21].map((lead) => ({
      leadDays: lead,
      n: 90 - lead,
      maeDays: maeAt(lead),
      coverage,
      pinball: maeAt(lead) / 3,
      calendarMaeDays: 2.1 + lead * 0.06,
      degreeDaysMaeDays: 1 + lead * 0.08,
    })),
    byCrop: data.crops.slice(0, 8).map(({ code, name }, i) => ({
      crop: code,
      cropName: name,
      n: 4 + i,
      maeDays: 0.8 + i * 0.12,
      coverage: { 0.5: 0.5, 0.8: 0.78 + i * 0.01, 0.9: 0.9 },
      biasDays: (i - 3) * 0.15,
    })),
    batches,
  };
}
