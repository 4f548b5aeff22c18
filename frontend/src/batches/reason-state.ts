import type { Explanation, ExplanationPart, ReasonCause } from '../shared/learning-types';

/** Why a batch's date differs from its plan, as steps from the planned day to the expected one. */

export interface Step {
  readonly cause: ReasonCause;
  readonly on: string | null;
  readonly days: number;
  /** What it stands for, in the order of the days. */
  readonly parts: readonly ExplanationPart[];
  /** Days from the planned date before and after this step. */
  readonly from: number;
  readonly to: number;
  /** How many single days were put together. */
  readonly together: number;
}

/** A long cold spell is told by its worst days; the others are put together. */
const MOST_NAMED_DAYS = 4;

/**
 * The parts as steps that begin at the plan and end at the date. Of days with a temperature of their own, the
 * `mostNamed` that count most stay apart; the rest become one step, so that nothing is lost from the sum.
 */
export function stepsOf(parts: readonly ExplanationPart[], mostNamed = MOST_NAMED_DAYS): readonly Step[] {
  const named = parts.filter(({ cause, on }) => cause === 'temperature' && on !== null);
  const kept = new Set(
    named.length <= mostNamed + 1
      ? named
      : [...named].sort((a, b) => Math.abs(b.days) - Math.abs(a.days)).slice(0, mostNamed),
  );
  const rest = named.filter((part) => !kept.has(part));
  const shown: Omit<Step, 'from' | 'to'>[] = [];
  for (const part of parts) {
    if (rest.includes(part)) continue;
    shown.push({ cause: part.cause, on: part.on, days: part.days, parts: [part], together: 1 });
  }
  if (rest.length > 0) {
    const together = {
      cause: 'temperature' as const,
      on: null,
      days: rest.reduce((sum, { days }) => sum + days, 0),
      parts: rest,
      together: rest.length,
    };
    const after = shown.findLastIndex(({ cause, on }) => cause === 'temperature' && on !== null);
    shown.splice(after + 1, 0, together);
  }
  let at = 0;
  return shown.map((step) => {
    const from = at;
    at += step.days;
    return { ...step, from, to: at };
  });
}

/** The stretch of days the picture spans, plan and date included; never of no width. */
export function spanOf(steps: readonly Step[]): { readonly least: number; readonly most: number } {
  const places = [0, ...steps.map(({ to }) => to)];
  const [least, most] = [Math.min(...places), Math.max(...places)];
  return most - least < 0.5 ? { least: least - 0.25, most: most + 0.25 } : { least, most };
}

export type Verdict = 'later' | 'earlier' | 'asPlanned' | 'unknown';

/** Less than an hour is "as planned". */
export function verdictOf({ differenceDays }: Pick<Explanation, 'differenceDays'>): Verdict {
  if (differenceDays === null) return 'unknown';
  if (Math.abs(differenceDays) < 0.05) return 'asPlanned';
  return differenceDays > 0 ? 'later' : 'earlier';
}

export function signedDays(days: number, decimal: (value: number, digits: number) => string): string {
  const shown = decimal(Math.abs(days), 1);
  if (Number(Math.abs(days).toFixed(1)) === 0) return shown;
  return `${days > 0 ? '+' : '−'}${shown}`;
}

/** What the record has made of a range; told where it is seen in its one decimal. */
export function rangeByRecord(record: Explanation['ownRecord']): 'wider' | 'narrower' | 'same' {
  if (!record || Number(record.width.toFixed(1)) === 1) return 'same';
  return record.width > 1 ? 'wider' : 'narrower';
}
