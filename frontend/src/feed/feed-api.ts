import { at, newKey, postJson } from '../shared/http';
import type { Amount, Calculation } from './feed-state';

/** What the server answers; members that do not belong to a question are absent. */
export interface FeedAnswer {
  readonly gramsPerLitre?: number;
  readonly ouncesPerGallon?: number;
  readonly fertilizer?: readonly Amount[];
  readonly feedVolume?: readonly Amount[];
  readonly expectedMsPerCm?: number | null;
  readonly ppm?: number;
  readonly injector?: number;
  readonly ratio?: string;
  readonly feedMsPerCm?: number;
  readonly label?: string;
  readonly product?: readonly Amount[];
  readonly sprayVolume?: readonly Amount[];
  readonly cautions?: readonly string[];
}

/** Nothing is stored: the same question has the same answer. */
export function ask(calculation: Calculation, question: Readonly<Record<string, unknown>>): Promise<FeedAnswer> {
  return postJson(at`/feed/${calculation}`, question, newKey());
}
