import { counted } from '../shared/counted';
import { messagesIn } from '../shared/messages';
import { sayOf, type Say, type Speaker, type Values } from '../shared/said';

/** Why the temperatures of a stage are learned or kept, by the server's code. */
export const cardinalsWords = messagesIn({
  en: {
    'too-few-batches': (v: Say) =>
      `${counted(v.count('batches'), 'batch was', 'batches were')} seen through it; at least ${v.count('needed')} are needed.`,
    'too-narrow': (v: Say) =>
      `The medium’s temperatures of ${counted(v.count('batches'), 'batch', 'batches')} differ by ${v.span('width')} only.`,
    found: (v: Say) => `${rangesEn(v)}.`,
    'neither-told': (v: Say) => `${rangesEn(v)}: too wide to take either.`,
  },
  es: {
    'too-few-batches': (v: Say) =>
      `${counted(v.count('batches'), 'lote visto', 'lotes vistos')} de principio a fin; hacen falta al menos ${v.count('needed')}.`,
    'too-narrow': (v: Say) =>
      `Las temperaturas del sustrato de ${counted(v.count('batches'), 'lote', 'lotes')} difieren solo en ${v.span('width')}.`,
    found: (v: Say) => `${rangesEs(v)}.`,
    'neither-told': (v: Say) => `${rangesEs(v)}: demasiado amplio para tomar alguna.`,
  },
});

function rangesEn(v: Say): string {
  const range = (name: string) => ends(v, name, 'at least', 'at most', 'to', 'not told');
  return `${counted(v.count('batches'), 'batch', 'batches')} at ${v.measure('coldest')} to ${v.measure('warmest')}; best ${range('optimum')}, lowest ${range('minimum')}`;
}

function rangesEs(v: Say): string {
  const range = (name: string) => ends(v, name, 'al menos', 'como mucho', 'a', 'sin saberse');
  return `${counted(v.count('batches'), 'lote', 'lotes')} de ${v.measure('coldest')} a ${v.measure('warmest')}; la mejor ${range('optimum')}, la más baja ${range('minimum')}`;
}

/** An end that is left out is open. */
function ends(v: Say, name: string, least: string, most: string, to: string, neither: string): string {
  const [from, until] = [`${name}Least`, `${name}Most`];
  if (!v.has(from)) return v.has(until) ? `${most} ${v.measure(until)}` : neither;
  return v.has(until) ? `${v.measure(from)} ${to} ${v.measure(until)}` : `${least} ${v.measure(from)}`;
}

export function cardinalsSaid(
  { code, values }: { readonly code: string; readonly values: Values },
  speaker: Speaker,
): string {
  const words: Readonly<Record<string, (v: Say) => string>> = cardinalsWords[speaker.language];
  return Object.hasOwn(words, code) ? (words[code]?.(sayOf(values, speaker)) ?? '') : '';
}
