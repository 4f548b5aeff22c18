import type { Formats } from '../shared/formats';
import { messagesIn } from '../shared/messages';
import type { Message, Refusal } from './outbox-state';

/** The server's one question about what is hardly likely, with both figures. What was typed is never changed. */
export const doubtMessages = messagesIn({
  en: {
    title: 'Is that right?',
    isRight: 'It is right',
    plants: (asked: string, booked: string, least: string, most: string, odds: string) =>
      `That leaves ${asked} plants alive. The books say ${booked}, and ${least} to ${most} are expected: ${odds} is so far off.`,
    stage: (stage: string, seen: string, expected: string, odds: string) =>
      `${stage} on ${seen}: it is expected about ${expected}, and ${odds} is so early.`,
    stageNever: (stage: string, seen: string, odds: string) =>
      `${stage} on ${seen}: at the temperatures of its house that is not expected at all, and ${odds} gets there.`,
    about: (n: string) => `about 1 batch in ${n}`,
    fewer: (n: string) => `fewer than 1 batch in ${n}`,
    CALLUS: 'Callused',
    ROOT: 'Rooted',
    READY: 'Ready',
  },
  es: {
    title: '¿Es correcto?',
    isRight: 'Es correcto',
    plants: (asked: string, booked: string, least: string, most: string, odds: string) =>
      `Así quedan ${asked} plantas vivas. El libro dice ${booked} y se esperan de ${least} a ${most}: ${odds} se desvía tanto.`,
    stage: (stage: string, seen: string, expected: string, odds: string) =>
      `${stage} el ${seen}: se espera hacia el ${expected}, y ${odds} llega tan pronto.`,
    stageNever: (stage: string, seen: string, odds: string) =>
      `${stage} el ${seen}: con las temperaturas de su invernadero no se espera, y ${odds} llega.`,
    about: (n: string) => `cerca de 1 lote de cada ${n}`,
    fewer: (n: string) => `menos de 1 lote de cada ${n}`,
    CALLUS: 'Con callo',
    ROOT: 'Enraizado',
    READY: 'Listo',
  },
});

type Words = (typeof doubtMessages)['en'];

/** Rarer than this nobody can say how rare. */
const RAREST = 1e-4;

export function isDoubt({ kind }: Refusal): boolean {
  return kind === 'implausible-plants' || kind === 'implausible-stage';
}

export function doubtWords(
  { kind, members }: Refusal,
  t: Words,
  { integer, dayOf }: Pick<Formats, 'integer' | 'dayOf'>,
  timeZone: string | undefined,
): string {
  const figure = (name: string) => integer(Number(members[name]));
  const day = (name: string) => dayOf(String(members[name]), timeZone);
  const probability = Number(members['probability']);
  const odds = probability < RAREST ? t.fewer(integer(1 / RAREST)) : t.about(integer(Math.round(1 / probability)));
  if (kind === 'implausible-plants') {
    return t.plants(figure('asked'), figure('booked'), figure('least'), figure('most'), odds);
  }
  const stage = t[members['asked'] as 'CALLUS' | 'ROOT' | 'READY'];
  return members['expected'] === undefined
    ? t.stageNever(stage, day('seenAt'), odds)
    : t.stage(stage, day('seenAt'), day('expected'), odds);
}

/** The same message, answered: it is right. */
export function confirmed(message: Message): Message {
  if (message.to === 'batch') return { ...message, entry: { ...message.entry, confirmed: true } };
  if (message.to === 'reading') return message;
  const { answer } = message;
  return answer.verb === 'done'
    ? { ...message, answer: { ...answer, body: { ...answer.body, confirmed: true } } }
    : message;
}
