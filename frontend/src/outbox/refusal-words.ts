import { messagesIn } from '../shared/messages';
import type { Refusal } from './outbox-state';

/**
 * Refusals in the words of the floor, in both languages. A refusal this file does not know is said in the server's own
 * sentence, which is in English.
 */
export const refusalMessages = messagesIn({
  en: {
    'more-than-alive': (r: Figures) =>
      `You named ${r('asked')} plants; ${r('alive')} are alive by the books. Name fewer, or count the batch first.`,
    'more-than-stuck': (r: Figures) => `You counted ${r('asked')}; at most ${r('most')} were stuck and have not left.`,
    'more-than-saleable': (r: Figures) => `You named ${r('asked')} trays; the living plants fill ${r('saleable')}.`,
    'sample-beyond-batch': (r: Figures) =>
      `The sample is larger than the batch: ${r('benchTrays')} trays of ${r('cellsPerTray')} cells are on the bench.`,
    'stage-goes-back': () =>
      'The batch is already at this stage or past it. Undo the earlier entry if that one was wrong.',
    'ship-before-rooted': () => 'Trays can leave from "rooted" on. Record the stage first if it is rooted.',
    'already-there': () => 'The batch is already in that house.',
    'already-reversed': () => 'This entry has already been undone.',
    'cannot-be-reversed': () => 'This kind of entry cannot be undone. Record what is true now.',
    'contradicts-later-entry': () => 'A later entry speaks against it. Undo the later one first.',
    'in-the-future': () => 'This time is still to come for the server. Check the clock of this device.',
    'out-of-range': (r: Figures) => `${r('asked')} is out of range; it must be between ${r('least')} and ${r('most')}.`,
    'not-found': () => 'The server does not know this batch.',
    'no-right': () => 'Your roles do not let you record at this site. Nothing was written.',
  },
  es: {
    'more-than-alive': (r: Figures) =>
      `Anotó ${r('asked')} plantas; según el libro hay ${r('alive')} vivas. Anote menos o cuente primero el lote.`,
    'more-than-stuck': (r: Figures) => `Contó ${r('asked')}; como mucho se plantaron ${r('most')} que no han salido.`,
    'more-than-saleable': (r: Figures) => `Anotó ${r('asked')} charolas; las plantas vivas llenan ${r('saleable')}.`,
    'sample-beyond-batch': (r: Figures) =>
      `La muestra es mayor que el lote: hay ${r('benchTrays')} charolas de ${r('cellsPerTray')} celdas en la mesa.`,
    'stage-goes-back': () =>
      'El lote ya está en esta etapa o más adelante. Deshaga el registro anterior si estaba mal.',
    'ship-before-rooted': () => 'Las charolas salen a partir de "enraizado". Anote primero la etapa si ya enraizó.',
    'already-there': () => 'El lote ya está en esa nave.',
    'already-reversed': () => 'Este registro ya se deshizo.',
    'cannot-be-reversed': () => 'Este tipo de registro no se deshace. Anote lo que es cierto ahora.',
    'contradicts-later-entry': () => 'Un registro posterior lo contradice. Deshaga primero el posterior.',
    'in-the-future': () => 'Para el servidor esta hora aún no llega. Revise el reloj de este aparato.',
    'out-of-range': (r: Figures) => `${r('asked')} está fuera de rango; debe estar entre ${r('least')} y ${r('most')}.`,
    'not-found': () => 'El servidor no conoce este lote.',
    'no-right': () => 'Sus funciones no le permiten anotar en este sitio. No se escribió nada.',
  },
});

type Figures = (name: string) => string;

export function refusalWords(
  refusal: Refusal,
  words: (typeof refusalMessages)['en'],
  integer: (n: number) => string,
): string {
  if (refusal.status === 403) return words['no-right']();
  const said: ((r: Figures) => string) | undefined = Object.hasOwn(words, refusal.kind)
    ? words[refusal.kind as keyof typeof words]
    : undefined;
  if (!said) return refusal.detail;
  return said((name) => {
    const value = refusal.members[name];
    return typeof value === 'number' ? integer(value) : String(value ?? '?');
  });
}
