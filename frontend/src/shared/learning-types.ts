/** Shapes of the outlook that learns: explanation, what if, profile versions, track record. Units as in api-types. */
import type { Code, CropProfile, Instant, IsoWeek, LocalDate, Position, Quantiles, RootingStage } from './api-types';

// --- Why this date -----------------------------------------------------------------------------------------------

export type ReasonCause = 'profile-version' | 'temperature' | 'gap-filling' | 'forecast' | 'rate-seen';

export interface ExplanationPart {
  readonly cause: ReasonCause;
  /** The day a temperature part speaks of. */
  readonly on: LocalDate | null;
  /** Positive: later than planned. */
  readonly days: number;
  /** Mean medium temperature, and what was planned, where the part is one of temperature. */
  readonly actualC?: number | null;
  readonly plannedC?: number | null;
  readonly text: string;
}

export interface Explanation {
  readonly batch: string;
  readonly asOf: Instant;
  readonly plannedReadyAt: Instant | null;
  readonly readyAt: Instant | null;
  readonly differenceDays: number | null;
  /** The batch's own pace; 1 is that of the profile, above 1 faster. */
  readonly rate: Quantiles<number>;
  readonly profileVersion: number;
  readonly plannedProfileVersion: number;
  readonly parts: readonly ExplanationPart[];
}

// --- What if -----------------------------------------------------------------------------------------------------

export interface SetpointChange {
  readonly house: Code;
  readonly mediumC: number;
  readonly from: Instant;
}

export interface BatchMove {
  readonly batch: string;
  readonly house: Code;
  readonly from: Instant;
}

export interface WhatIfWish {
  readonly setpoints: readonly SetpointChange[];
  readonly moves: readonly BatchMove[];
}

export interface BatchProspect {
  readonly house: Code;
  readonly readyAt: Quantiles<Instant | null>;
  readonly saleableTrays: Quantiles<number>;
}

export interface WhatIfAnswer {
  readonly asOf: Instant;
  readonly position: Position;
  readonly confidence: number;
  readonly batches: readonly { readonly id: string; readonly before: BatchProspect; readonly after: BatchProspect }[];
  readonly cells: readonly WhatIfCell[];
}

export interface WhatIfCell {
  readonly variety: Code;
  readonly trayFormat: Code;
  readonly site: Code;
  readonly week: IsoWeek;
  readonly openBefore: number;
  readonly openAfter: number;
}

// --- Profile versions --------------------------------------------------------------------------------------------

export interface LearnedStage {
  readonly stage: RootingStage;
  readonly daysBefore: number;
  readonly daysLearned: number;
  /** Eight times in ten between low and high. */
  readonly daysLow: number;
  readonly daysHigh: number;
  readonly observations: number;
  readonly survivalBefore: number;
  readonly survivalLearned: number;
  readonly survivalBatches: number;
}

export interface LearnedCardinals {
  readonly stage: RootingStage;
  readonly identified: boolean;
  readonly reason: string;
  readonly minC?: number | null;
  readonly optimumC?: number | null;
  readonly maxC?: number | null;
}

export interface LearningEvidence {
  readonly asOf: Instant;
  readonly finishedBatches: number;
  readonly runningBatches: number;
  readonly stages: readonly LearnedStage[];
  readonly rateSpreadBefore: number;
  readonly rateSpreadLearned: number;
  readonly cellSpreadBefore: number;
  readonly cellSpreadLearned: number;
  readonly cardinals: readonly LearnedCardinals[];
  readonly varieties: readonly { readonly variety: Code; readonly batches: number; readonly rate: number }[];
  readonly sites: readonly { readonly site: Code; readonly batches: number; readonly rate: number }[];
  readonly text: readonly string[];
}

export interface ProfileVersion {
  readonly version: number;
  readonly origin: 'entered' | 'learned';
  readonly createdAt: Instant;
  readonly adoptedAt: Instant | null;
  readonly inForce: boolean;
  readonly pinned: boolean;
  readonly profile: CropProfile;
  readonly evidence: LearningEvidence | null;
}

// --- Track record ------------------------------------------------------------------------------------------------

/** Share of ready dates that fell inside the range stated to hold that share. */
export type Coverage = Readonly<Partial<Record<'0.5' | '0.8' | '0.9', number | null>>>;

export interface BaselineRecord {
  readonly maeDays: number | null;
  /** 1 − our error ÷ its error: 0.4 means 40 % less error. */
  readonly skill: number | null;
}

export interface LeadRecord {
  readonly leadDays: number;
  readonly n: number;
  readonly maeDays: number | null;
  readonly coverage: Coverage;
  readonly pinball: number | null;
  readonly calendarMaeDays: number | null;
  readonly degreeDaysMaeDays: number | null;
}

export interface CropRecord {
  readonly crop: Code;
  readonly cropName: string;
  readonly n: number;
  readonly maeDays: number | null;
  readonly coverage: Coverage;
  readonly biasDays: number | null;
}

export interface BatchRecord {
  readonly batch: string;
  readonly crop: Code;
  readonly readyAt: Instant;
  readonly predicted: Quantiles<Instant | null>;
  /** Positive: ready later than predicted. */
  readonly errorDays: number;
}

export interface TrackRecord {
  readonly asOf: Instant;
  readonly leadDays: number;
  readonly crop: Code | null;
  readonly n: number;
  readonly maeDays: number | null;
  readonly biasDays: number | null;
  readonly coverage: Coverage;
  readonly pinball: number | null;
  readonly crps: number | null;
  /** Of the trays promised, the share of cases in which they were there. */
  readonly promisedKept: number | null;
  readonly promisedCases: number;
  readonly baselines: { readonly calendar: BaselineRecord; readonly degreeDays: BaselineRecord };
  readonly byLead: readonly LeadRecord[];
  readonly byCrop: readonly CropRecord[];
  readonly batches: readonly BatchRecord[];
}
