import type { BatchStage, CropProfile, StageProfile } from '../shared/api-types';
import type { ProfileVersion } from '../shared/learning-types';

/** Versions of a crop's profile: which is looked at, what it would change, and what may be done with it. */

/** The version an address names; without one the newest proposal, else the one in force. */
export function lookedAt(versions: readonly ProfileVersion[], named: string | undefined): ProfileVersion | undefined {
  if (named !== undefined) return versions.find(({ version }) => String(version) === named);
  const newest = [...versions].sort((a, b) => b.version - a.version);
  const proposal = newest.find(({ adoptedAt, origin }) => adoptedAt === null && origin === 'learned');
  const inForce = versions.find((each) => each.inForce);
  // A proposal older than what is in force has been passed over.
  return proposal && proposal.version > (inForce?.version ?? 0) ? proposal : (inForce ?? newest[0]);
}

/** What the looked-at version is held against: the one in force, or for that one the version adopted before it. */
export function comparedWith(versions: readonly ProfileVersion[], looked: ProfileVersion): ProfileVersion | undefined {
  if (!looked.inForce) return versions.find((each) => each.inForce);
  return [...versions]
    .filter((each) => each !== looked && each.adoptedAt !== null && (looked.adoptedAt ?? '') >= each.adoptedAt)
    .sort((a, b) => (b.adoptedAt ?? '').localeCompare(a.adoptedAt ?? '') || b.version - a.version)[0];
}

export type VersionState = 'pinned' | 'inForce' | 'proposal' | 'earlier' | 'entered';

export function stateOf({ pinned, inForce, adoptedAt, origin }: ProfileVersion): VersionState {
  if (pinned) return 'pinned';
  if (inForce) return 'inForce';
  if (adoptedAt !== null) return 'earlier';
  return origin === 'learned' ? 'proposal' : 'entered';
}

export type VersionAction = 'adopt' | 'return' | 'adoptPinned' | 'pin' | 'unpin';

/** While a version is pinned nothing else can be adopted: first it is let loose. */
export function actionsOn(looked: ProfileVersion, versions: readonly ProfileVersion[]): readonly VersionAction[] {
  if (looked.pinned) return ['unpin'];
  if (looked.inForce) return ['pin'];
  if (versions.some(({ pinned }) => pinned)) return [];
  return [looked.adoptedAt === null ? 'adopt' : 'return', 'adoptPinned'];
}

export type StageFigure = 'daysAtReference' | 'survivalMean' | 'minC' | 'optimumC' | 'maxC';

export interface StageChange {
  readonly stage: BatchStage;
  readonly figures: Readonly<Record<StageFigure, { readonly before: number | undefined; readonly after: number }>>;
}

/** Stage by stage what was and what would be; with nothing to compare, what is. */
export function stageChanges(before: CropProfile | undefined, after: CropProfile): readonly StageChange[] {
  return after.stages.map((stage) => {
    const old = before?.stages.find((each) => each.stage === stage.stage);
    const pair = (figure: StageFigure) => ({ before: old?.[figure], after: stage[figure] });
    return {
      stage: stage.stage,
      figures: {
        daysAtReference: pair('daysAtReference'),
        survivalMean: pair('survivalMean'),
        minC: pair('minC'),
        optimumC: pair('optimumC'),
        maxC: pair('maxC'),
      },
    };
  });
}

/** Days from stick to ready at the reference temperatures. */
export function wholeDays(stages: readonly StageProfile[]): number {
  return stages.reduce((sum, { daysAtReference }) => sum + daysAtReference, 0);
}

/** Two figures that a reader would see as the same. */
export function differs(before: number | undefined, after: number, digits: number): boolean {
  return before !== undefined && before.toFixed(digits) !== after.toFixed(digits);
}

export interface LeadError {
  readonly n: number;
  readonly inForceMaeDays: number;
  readonly versionMaeDays: number;
}

export type ForecastVerdict = 'fewPast' | 'betterPast' | 'worsePast' | 'samePast';

/** With fewer batches one odd one decides. Our choice. */
const FEW = 8;

/** Two errors that a grower would not tell apart, days. */
const SAME_DAYS = 0.2;

/** Whether past batches would have been foretold better, over all leads by how many batches each has. */
export function forecastVerdict(leads: readonly LeadError[]): ForecastVerdict {
  const most = Math.max(0, ...leads.map(({ n }) => n));
  if (most < FEW) return 'fewPast';
  const cases = leads.reduce((sum, { n }) => sum + n, 0);
  const gain =
    leads.reduce((sum, { n, inForceMaeDays, versionMaeDays }) => sum + n * (inForceMaeDays - versionMaeDays), 0) /
    cases;
  if (Math.abs(gain) < SAME_DAYS) return 'samePast';
  return gain > 0 ? 'betterPast' : 'worsePast';
}
