import type { RoundMessage } from '../outbox/outbox-state';
import type { RoundDone, RoundItem } from '../shared/climate-types';
import type { roundsMessages } from './rounds-messages';
import { PESTS } from './rounds-state';

type Words = (typeof roundsMessages)['en'];

interface Format {
  readonly dateTime: (at: string, timeZone?: string) => string;
}

/** An answer to a check in words: what was answered, and when (an undo carries no time of its own). */
export function answerWords({ name, answer }: RoundMessage, t: Words, format: Format, timeZone: string | undefined) {
  const said = { done: t.statedone, skipped: t.stateskipped, undo: t.undo }[answer.verb].toLowerCase();
  return {
    what: `${name}: ${said}`,
    about: answer.verb === 'undo' ? '' : format.dateTime(answer.body.happenedAt, timeZone),
  };
}

interface Say {
  readonly integer: (n: number) => string;
  readonly houseName: (code: string) => string;
}

/** What was recorded, figure by figure, so that a slip is seen while it can be taken back: "Count 190 of 2,016". */
export function recordedWords(
  item: Pick<RoundItem, 'task' | 'batch' | 'alive'>,
  done: RoundDone,
  t: Words,
  { integer, houseName }: Say,
): string {
  const task = item.batch === null ? t[item.task] : `${t[item.task]}, ${item.batch}`;
  const values = valuesOf(item, done, t, { integer, houseName });
  return values.length === 0 ? t.recorded(task) : `${task}: ${values.join(', ')}`;
}

/** How a closed check was answered: the figures or the reason, who, and when. */
export function answeredWords(
  { by, reason, done }: NonNullable<RoundItem['answer']>,
  t: Words,
  say: Say & { readonly at: string },
): string {
  const said = done ? [...valuesOf({ alive: null }, done, t, say), done.note ?? ''] : [reason ?? ''];
  return [...said, by, say.at].filter(Boolean).join(', ');
}

function valuesOf(
  item: Pick<RoundItem, 'alive'>,
  done: RoundDone,
  t: Words,
  { integer, houseName }: Say,
): readonly string[] {
  const figure = (value: number | null | undefined, said: (n: string) => string) =>
    typeof value === 'number' ? said(integer(value)) : '';
  return [
    figure(done.plants, (n) => (item.alive === null ? n : t.of(n, integer(item.alive)))),
    figure(done.sampledCells, (n) => t.blanksOf(integer(done.blanks ?? 0), n)),
    figure(done.cells, (n) => t.of(integer(done.reached ?? 0), n)),
    figure(done.level, (n) => t.of(n, '5')),
    ...PESTS.map((pest) => figure(done[pest], (n) => `${t[pest]} ${n}`)),
    figure(done.traps, (n) => t.onTraps(n)),
    done.house ? houseName(done.house) : '',
    figure(done.nitrogenPpm, (n) => `${n} ppm`),
  ].filter(Boolean);
}
