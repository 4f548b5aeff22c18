import { messagesIn } from '../shared/messages';

/** What can be done about batches that no climate of their house suits. */
export const clashMessages = messagesIn({
  en: {
    clash: (what: string) => `The batches here ask for different ${what}.`,
    moveTo: (batch: string, houses: string) => `Move ${batch} to ${houses}.`,
    moveLater: (batch: string, houses: string) => `${batch} stays for now: ${houses} would suit it.`,
    after: (house: string, until: string, product: string) => `${house} from ${until} on (closed after ${product})`,
    stays: (batch: string, gaps: string) =>
      `${batch} stays: no open house suits it. It can do well here if one of the two recipes changes: ${gaps}.`,
    nearest: (batch: string, house: string, gaps: string) =>
      `${batch} stays for now: no open house suits it. ${house} comes nearest; there would have to change: ${gaps}.`,
    gap: (what: string, asks: string, suits: string) => `${what} (it asks for ${asks}, the others for ${suits})`,
    toRecipe: 'Its recipe',
    toHouse: (house: string) => `Climate of ${house}`,
    'day-air-temperature': 'air by day',
    'night-air-temperature': 'air by night',
  },
  es: {
    clash: (what: string) => `Los lotes de aquí piden cosas distintas: ${what}.`,
    moveTo: (batch: string, houses: string) => `Mover ${batch} a ${houses}.`,
    moveLater: (batch: string, houses: string) => `${batch} se queda por ahora: le serviría ${houses}.`,
    after: (house: string, until: string, product: string) => `${house} a partir de ${until} (cerrado por ${product})`,
    stays: (batch: string, gaps: string) =>
      `${batch} se queda: ningún invernadero abierto le sirve. Puede quedarse si una de las dos recetas cambia: ${gaps}.`,
    nearest: (batch: string, house: string, gaps: string) =>
      `${batch} se queda por ahora: ningún invernadero abierto le sirve. El más cercano es ${house}; allí tendría que cambiar: ${gaps}.`,
    gap: (what: string, asks: string, suits: string) => `${what} (pide ${asks}, los demás ${suits})`,
    toRecipe: 'Su receta',
    toHouse: (house: string) => `Clima de ${house}`,
    'day-air-temperature': 'aire de día',
    'night-air-temperature': 'aire de noche',
  },
});
