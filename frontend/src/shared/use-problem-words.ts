import { useMemo } from 'react';
import { faultWords } from './fault-words';
import { useFormats } from './formats';
import { usePreferences } from './preferences';
import { Problem, Unreachable, type FieldFault } from './problem';
import { problemWords } from './problem-words';
import { readingWords } from './reading-words';
import { fieldName, sayOf, type Say, type Speaker, type Values } from './said';
import { sharedMessages } from './shared-messages';

type Words = Readonly<Record<string, (v: Say) => string>>;

/** A refusal as it is kept: by its type's code and its members. */
export interface Told {
  readonly kind: string;
  readonly members: Values;
}

/** A reading of several that were not taken. */
interface Rejected {
  readonly why: { readonly code: string; readonly values: Values };
}

/** In a sentence or several; field by field where it is about fields. */
export function problemSaid(told: Told, faults: readonly FieldFault[], speaker: Speaker): string {
  const words: Words = problemWords[speaker.language];
  const byField = told.kind === 'malformed' || told.kind === 'not-allowed';
  if (byField && faults.length > 0) {
    return faults.map((fault) => `${fieldName(fault.field, speaker.language)}: ${faultSaid(fault, speaker)}`).join(' ');
  }
  if (told.kind === 'no-reading-taken') {
    const [first] = Array.isArray(told.members['rejected']) ? (told.members['rejected'] as Rejected[]) : [];
    if (first) return `${words['no-reading-taken']?.(sayOf({}, speaker))} ${readingSaid(first.why, speaker)}`;
  }
  const word = Object.hasOwn(words, told.kind) ? words[told.kind] : words['http'];
  return word?.(sayOf(told.members, speaker)) ?? '';
}

/** What is wrong with a field, to be read beside it. */
export function faultSaid({ field, code, values }: FieldFault, speaker: Speaker): string {
  const words: Words = faultWords[speaker.language];
  const word = Object.hasOwn(words, code) ? words[code] : words['unreadable'];
  return word?.(sayOf(values, speaker, field)) ?? '';
}

/** What the server remarks on a reading. */
export function readingSaid(
  { code, values }: { readonly code: string; readonly values: Values },
  speaker: Speaker,
): string {
  const words: Words = readingWords[speaker.language];
  const word = Object.hasOwn(words, code) ? words[code] : words['unreadable'];
  return word?.(sayOf(values, speaker)) ?? '';
}

export interface ProblemWords {
  /** Why something failed, in a sentence for the reader. */
  of(failure: unknown): string;
  /** The same of a refusal that was kept. */
  told(told: Told): string;
  /** What is wrong with the field at this path; undefined if that is not what failed. */
  faultOf(failure: unknown, path: string): string | undefined;
}

/** @param timeZone of the site that it is about */
export function useProblemWords(timeZone?: string): ProblemWords {
  const speaker = useSpeaker(timeZone);
  return useMemo(
    () => ({
      of: (failure) => failureSaid(failure, speaker),
      told: (told) => problemSaid(told, new Problem(0, told.kind, '', '', told.members).fieldFaults, speaker),
      faultOf: (failure, path) => {
        const fault = failure instanceof Problem ? failure.faultAt(path) : undefined;
        return fault && faultSaid(fault, speaker);
      },
    }),
    [speaker],
  );
}

export function useSpeaker(timeZone?: string): Speaker {
  const { language, length } = usePreferences();
  const format = useFormats();
  return useMemo(() => ({ language, length, format, timeZone }), [language, length, format, timeZone]);
}

function failureSaid(failure: unknown, speaker: Speaker): string {
  if (!failure) return '';
  if (failure instanceof Problem) return problemSaid(failure, failure.fieldFaults, speaker);
  const shared = sharedMessages[speaker.language];
  return failure instanceof Unreachable ? shared.unreachable : shared.wentWrong;
}
