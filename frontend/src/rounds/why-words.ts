import { counted } from '../shared/counted';
import { messagesIn } from '../shared/messages';
import { sayOf, type Say, type Speaker } from '../shared/said';

/** Why a check is due, by the server's code. */
export const whyWords = messagesIn({
  en: {
    'note-how-it-came': () => 'Warm, wilted or late boxes root worse: note how it came.',
    'right-after-sticking': () => 'Right after sticking, over the leaves. Product and rate: label and local law.',
    'one-in-ten-by-now': (v: Say) => `One batch in ten would be ${at(v, HOW_FAR)} by now.`,
    'looked-and-not-yet': (v: Say) =>
      `Looked at ${counted(v.count('times'), 'time', 'times')} and not yet ${at(v, HOW_FAR)}.`,
    'went-into-phase': (v: Say) => `The batch is now in the phase “${v.phase('phase')}”.`,
    'recipe-nitrogen': (v: Say) =>
      `The recipe asks for ${span(v, 'ppm', 'at least', 'at most', 'to')} nitrogen in the phase “${v.phase('phase')}”.`,
    'recipe-moisture': (v: Say) => `Moisture should be ${span(v, 'of 5', 'at least', 'at most', 'to')}.`,
    'recipe-moisture-dry-air': (v: Say) =>
      `Moisture should be ${span(v, 'of 5', 'at least', 'at most', 'to')}; the air has been dry.`,
    'prevention-due-by': (v: Say) =>
      `Due by ${v.day('by')}, ${counted(v.count('days'), 'day', 'days')} after sticking. Product and rate: label and local law.`,
    'last-counted': (v: Say) => `Last counted on ${v.day('on')}.`,
    'not-counted': () => 'Not counted yet.',
    clashes: (v: Say) =>
      `Clashes with the other batches of the house: ${v.quantities('quantities')}. Would suit: ${v.houses('houses')}.`,
    'usual-move': (v: Say) =>
      `Batches of this house usually go on to ${v.house('house')}; this one is ${at(v, HOW_FAR)}.`,
    'tone-not-stunt': () => 'Tone, do not stunt.',
    'moving-air-dries': () => 'Do leaves of the fresh cuttings move? Too much moving air dries them down.',
    'salts-unmeasured': () =>
      'Nothing measures the salts of the medium here. Below the recipe they were leached: feed.',
    'read-the-traps': () => 'Look under leaves and read the traps: fungus gnats and shore flies.',
  },
  es: {
    'note-how-it-came': () => 'Las cajas calientes, marchitas o tardías enraízan peor: anote cómo llegó.',
    'right-after-sticking': () => 'Justo después de plantar, sobre las hojas. Producto y dosis: etiqueta y ley local.',
    'one-in-ten-by-now': (v: Say) => `Uno de cada diez lotes ya estaría ${at(v, QUE_TANTO)}.`,
    'looked-and-not-yet': (v: Say) =>
      `Se revisó ${counted(v.count('times'), 'vez', 'veces')} y aún no está ${at(v, QUE_TANTO)}.`,
    'went-into-phase': (v: Say) => `El lote está ahora en la fase «${v.phase('phase')}».`,
    'recipe-nitrogen': (v: Say) =>
      `La receta pide ${span(v, 'ppm', 'al menos', 'como mucho', 'a')} de nitrógeno en la fase «${v.phase('phase')}».`,
    'recipe-moisture': (v: Say) => `La humedad debe ser ${span(v, 'de 5', 'al menos', 'como mucho', 'a')}.`,
    'recipe-moisture-dry-air': (v: Say) =>
      `La humedad debe ser ${span(v, 'de 5', 'al menos', 'como mucho', 'a')}; el aire ha estado seco.`,
    'prevention-due-by': (v: Say) =>
      `Antes del ${v.day('by')}, ${counted(v.count('days'), 'día', 'días')} después de plantar. Producto y dosis: etiqueta y ley local.`,
    'last-counted': (v: Say) => `Último conteo: ${v.day('on')}.`,
    'not-counted': () => 'Aún no se ha contado.',
    clashes: (v: Say) =>
      `Choca con los otros lotes del invernadero: ${v.quantities('quantities')}. Le serviría: ${v.houses('houses')}.`,
    'usual-move': (v: Say) =>
      `Los lotes de este invernadero suelen pasar a ${v.house('house')}; este ya está ${at(v, QUE_TANTO)}.`,
    'tone-not-stunt': () => 'Endurecer, no enanizar.',
    'moving-air-dries': () => '¿Se mueven las hojas de los esquejes frescos? Demasiado aire los seca.',
    'salts-unmeasured': () =>
      'Aquí nada mide las sales del sustrato. Si están por debajo de la receta, se lavaron: abone.',
    'read-the-traps': () => 'Mire debajo de las hojas y lea las trampas: moscas del sustrato y de la orilla.',
  },
});

const HOW_FAR: Readonly<Record<string, string>> = { CALLUS: 'callused', ROOT: 'rooted', READY: 'ready' };
const QUE_TANTO: Readonly<Record<string, string>> = { CALLUS: 'con callo', ROOT: 'enraizado', READY: 'listo' };

/** The stage as what a grower sees of it. */
function at(v: Say, words: Readonly<Record<string, string>>): string {
  return words[v.text('stage')] ?? v.stage('stage');
}

/** One figure where both ends are the same; an end that is left out is open. */
function span(v: Say, unit: string, least: string, most: string, to: string): string {
  if (!v.has('least')) return `${most} ${v.measure('most')} ${unit}`;
  if (!v.has('most')) return `${least} ${v.measure('least')} ${unit}`;
  const ends = [v.measure('least'), v.measure('most')];
  return `${ends[0] === ends[1] ? ends[0] : ends.join(` ${to} `)} ${unit}`;
}

interface Why {
  readonly code: string;
  readonly values: Readonly<Record<string, unknown>>;
}

export function whySaid({ code, values }: Why, speaker: Speaker): string {
  const words: Readonly<Record<string, (v: Say) => string>> = whyWords[speaker.language];
  return Object.hasOwn(words, code) ? (words[code]?.(sayOf(values, speaker)) ?? '') : '';
}
