import { messagesIn } from '../shared/messages';

/** What can be done about batches that no climate of their house suits. */
export const clashMessages = messagesIn({
  en: {
    clash: (what: string) => `The batches here ask for different ${what}.`,
    moveTo: (batch: string, houses: string) => `Move ${batch} to ${houses}.`,
    moveLater: (n: number, batches: string, houses: string) =>
      `${batches} ${n === 1 ? 'stays' : 'stay'} for now: ${houses} would suit ${n === 1 ? 'it' : 'them'}.`,
    after: (house: string, until: string, product: string) => `${house} from ${until} on (closed after ${product})`,
    stays: (n: number, batches: string, gaps: string) =>
      `${batches} ${n === 1 ? 'stays' : 'stay'}: no other open house suits ${n === 1 ? 'it' : 'them'}. Either recipe may give way: ${gaps}.`,
    nearest: (n: number, batches: string, house: string, gaps: string) =>
      `${batches} ${n === 1 ? 'stays' : 'stay'} for now: no open house suits ${n === 1 ? 'it' : 'them'}. ${house} comes nearest; there would have to change: ${gaps}.`,
    gap: (n: number, what: string, asks: string, suits: string) =>
      `${what} (${n === 1 ? 'it asks' : 'they ask'} for ${asks}, the others for ${suits})`,
    toRecipe: (crop: string) => `Recipe of ${crop}`,
    toHouse: (house: string) => `Climate of ${house}`,
    'day-air-temperature': 'air by day',
    'night-air-temperature': 'air by night',
  },
  es: {
    clash: (what: string) => `Los lotes de aquí piden cosas distintas: ${what}.`,
    moveTo: (batch: string, houses: string) => `Mover ${batch} a ${houses}.`,
    moveLater: (n: number, batches: string, houses: string) =>
      `${batches} ${n === 1 ? 'se queda' : 'se quedan'} por ahora: ${n === 1 ? 'le' : 'les'} serviría ${houses}.`,
    after: (house: string, until: string, product: string) => `${house} a partir de ${until} (cerrado por ${product})`,
    stays: (n: number, batches: string, gaps: string) =>
      `${batches} ${n === 1 ? 'se queda' : 'se quedan'}: ningún otro invernadero abierto ${n === 1 ? 'le' : 'les'} sirve. Puede ceder una receta o la otra: ${gaps}.`,
    nearest: (n: number, batches: string, house: string, gaps: string) =>
      `${batches} ${n === 1 ? 'se queda' : 'se quedan'} por ahora: ningún invernadero abierto ${n === 1 ? 'le' : 'les'} sirve. El más cercano es ${house}; allí tendría que cambiar: ${gaps}.`,
    gap: (n: number, what: string, asks: string, suits: string) =>
      `${what} (${n === 1 ? 'pide' : 'piden'} ${asks}, los demás ${suits})`,
    toRecipe: (crop: string) => `Receta de ${crop}`,
    toHouse: (house: string) => `Clima de ${house}`,
    'day-air-temperature': 'aire de día',
    'night-air-temperature': 'aire de noche',
  },
});
