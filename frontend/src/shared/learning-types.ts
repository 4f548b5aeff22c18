import type { Schemas } from './contract';

/** The outlook that learns: explanation, what if, profile versions, track record, by the names the screens use. */

export type ReasonCause = Schemas['ReasonCause'];
export type ExplanationPart = Schemas['PartWire'];
export type Explanation = Schemas['ExplanationWire'];

export type SetpointChange = Schemas['SetpointAsked'];
export type BatchMove = Schemas['MoveAsked'];
export interface WhatIfWish {
  readonly setpoints: readonly SetpointChange[];
  readonly moves: readonly BatchMove[];
}
export type BatchProspect = Schemas['BatchOtherwise'];
export type WhatIfAnswer = Schemas['Answered'];
export type WhatIfCell = Schemas['CellMoved'];

export type LearnedStage = Schemas['OfStage'];
export type LearnedCardinals = Schemas['OfCardinals'];
export type LearningEvidence = Schemas['Evidence'];
export type ProfileVersion = Schemas['ProfileVersionWire'];

/** Share of ready dates that fell inside the range stated to hold that share: of '0.5', '0.8' and '0.9'. */
export type Coverage = Schemas['TrackRecordWire']['coverage'];
export type BaselineRecord = Schemas['Baseline'];
export type HeldShare = Schemas['Held'];
export type LeadRecord = Schemas['ByLead'];
export type CropRecord = Schemas['ByCrop'];
export type BatchRecord = Schemas['OfBatch'];
export type TrackRecord = Schemas['TrackRecordWire'];
