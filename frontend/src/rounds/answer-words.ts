import type { RoundMessage } from '../outbox/outbox-state';
import type { roundsMessages } from './rounds-messages';

interface Format {
  readonly dateTime: (at: string) => string;
}

/** An answer to a check in words: what was answered, and when (an undo carries no time of its own). */
export function answerWords({ name, answer }: RoundMessage, t: (typeof roundsMessages)['en'], format: Format) {
  const said = { done: t.statedone, skipped: t.stateskipped, undo: t.undo }[answer.verb].toLowerCase();
  return { what: `${name}: ${said}`, about: answer.verb === 'undo' ? '' : format.dateTime(answer.body.happenedAt) };
}
