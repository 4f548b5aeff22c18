import type { BatchRecord, Coverage, CropRecord, LeadRecord, TrackRecord } from '../shared/learning-types';

/** What the track record shows and says; the figures themselves are the server's. */

export const LEADS = [1, 2, 3, 5, 7, 10, 14, 21, 28] as const;
const USUAL_LEAD = 7;
const LONGEST_LEAD = 120;
const DAY_MS = 86_400_000;

export interface RecordFilter {
  readonly leadDays: number;
  readonly crop: string | undefined;
}

/** What the address says; a lead it cannot read counts as not said. */
export function filterFrom(params: URLSearchParams): RecordFilter {
  const lead = Number(params.get('lead'));
  return {
    leadDays: Number.isInteger(lead) && lead >= 1 && lead <= LONGEST_LEAD ? lead : USUAL_LEAD,
    crop: params.get('crop') || undefined,
  };
}

export function paramsFor({ leadDays, crop }: RecordFilter, before: URLSearchParams): URLSearchParams {
  const params = new URLSearchParams(before);
  if (leadDays === USUAL_LEAD) params.delete('lead');
  else params.set('lead', String(leadDays));
  if (crop) params.set('crop', crop);
  else params.delete('crop');
  return params;
}

/** The leads to choose from; one from a pasted link is among them. */
export function leadsWith(leadDays: number): readonly number[] {
  return [...new Set<number>([...LEADS, leadDays])].sort((a, b) => a - b);
}

/** Less than this is said as "neither early nor late": a twentieth of a day is an hour. */
const LEVEL_DAYS = 0.05;

export type Lean = 'later' | 'earlier' | 'level';

export function leanOf(biasDays: number): Lean {
  if (Math.abs(biasDays) < LEVEL_DAYS) return 'level';
  return biasDays > 0 ? 'later' : 'earlier';
}

export type Comparison = { readonly kind: 'less' | 'more'; readonly share: number } | { readonly kind: 'same' };

/** What a skill score means in plain words: so much less, or more, error than the baseline. */
export function comparisonOf(skill: number): Comparison {
  if (Math.abs(skill) < 0.005) return { kind: 'same' };
  return { kind: skill > 0 ? 'less' : 'more', share: Math.abs(skill) };
}

const STATED = ['0.5', '0.8', '0.9'] as const;

export interface CoveragePoint {
  readonly stated: number;
  readonly held: number;
}

/** Stated against held, in rising order of what was stated; shares that are not known are left out. */
export function coveragePoints(coverage: Coverage): readonly CoveragePoint[] {
  return STATED.flatMap((stated) => {
    const held = coverage[stated];
    return held === null || held === undefined ? [] : [{ stated: Number(stated), held }];
  });
}

export function byRisingLead(records: readonly LeadRecord[]): readonly LeadRecord[] {
  return [...records].sort((a, b) => a.leadDays - b.leadDays);
}

/** A prediction seen from the day the batch was ready: days by which it was later (+) or earlier (−). */
export interface Miss {
  readonly batch: string;
  readonly readyAt: string;
  readonly p10: number | null;
  readonly p50: number | null;
  readonly p90: number | null;
  /** The stated range of eight in ten held. */
  readonly held: boolean | null;
}

export function missesOf(batches: readonly BatchRecord[]): readonly Miss[] {
  return [...batches]
    .sort((a, b) => Date.parse(a.readyAt) - Date.parse(b.readyAt))
    .map(({ batch, readyAt, predicted }) => {
      const days = (at: string | null) => (at === null ? null : (Date.parse(at) - Date.parse(readyAt)) / DAY_MS);
      const [p10, p50, p90] = [days(predicted.p10), days(predicted.p50), days(predicted.p90)];
      return { batch, readyAt, p10, p50, p90, held: p10 === null || p90 === null ? null : p10 <= 0 && p90 >= 0 };
    });
}

/** Nothing finished yet: there is nothing to be right or wrong about. */
export function isEmpty(record: Pick<TrackRecord, 'n'>): boolean {
  return record.n === 0;
}

const WORST_FIRST = ['too-narrow', 'too-wide'] as const;

export type DoubtfulCrop = CropRecord & { readonly verdict: (typeof WORST_FIRST)[number] };

/** Crops whose ranges do not hold as they say; the worst first. */
export function doubtful(crops: readonly CropRecord[]): readonly DoubtfulCrop[] {
  return WORST_FIRST.flatMap((verdict) =>
    crops.flatMap((crop) => (crop.verdict === verdict ? [{ ...crop, verdict }] : [])),
  );
}

/** Number and year of the quarter that begins on a day. */
export function quarterOf(from: string): [quarter: number, year: string] {
  const [year = '', month = '1'] = from.split('-');
  return [Math.ceil(Number(month) / 3), year];
}

/** What a record has made of a crop's ranges; told where it is seen in its one decimal. */
export function rangesOf(width: number | null): 'unheld' | 'same' | 'other' {
  if (width === null) return 'unheld';
  return Number(width.toFixed(1)) === 1 ? 'same' : 'other';
}
