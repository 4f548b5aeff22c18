import { messagesIn } from '../shared/messages';

/** What a line says, as it is shown. */
export interface Said {
  readonly asked: string;
  readonly booked: string;
  readonly least: string;
  readonly most: string;
  /** A day; empty where the forecast has none. */
  readonly expected: string;
}

/**
 * Why a line of a table is not taken, or is doubted, by the kind that the server names.
 */
export const batchReasonMessages = messagesIn({
  en: {
    /** What a server newer than this page may say. */
    unknownKind: (kind: string) =>
      `The server gives a reason that this page does not know yet: ${kind}. Reload the page.`,
    'unknown-site': (r: Said) => `There is no site ${r.asked}. Make it under Setup, or correct the name.`,
    'unknown-house': (r: Said) => `There is no house ${r.asked} at this site. Have it made, or correct the name.`,
    'unknown-crop': (r: Said) => `There is no crop ${r.asked}. Take it first, or correct the name.`,
    'unknown-variety': (r: Said) => `There is no variety ${r.asked}. Have it made, or correct the name.`,
    'unknown-tray-format': (r: Said) => `There is no tray format ${r.asked}. Make it first, or correct the name.`,
    'no-crop': (r: Said) => `${r.asked} is new, and the line does not say of which crop it is.`,
    ambiguous: (r: Said) => `Several bear the name ${r.asked}. Write the code instead.`,
    missing: () => 'This cell is empty.',
    cells: () => 'This line has another number of cells than the line of names.',
    trays: (r: Said) => `${r.asked} trays: at least 1, at most 20 000.`,
    'not-whole': (r: Said) => `${r.asked} is no whole number.`,
    'not-a-day': (r: Said) => `${r.asked} is no day of the form above.`,
    'not-a-stage': (r: Said) => `${r.asked} is no stage.`,
    'here-already': () => 'The same batch is recorded: variety, tray, house, day and trays. It is not written again.',
    'stage-today': () => 'The stage has no day: it counts as seen today.',
    'in-the-future': () => 'A day of this line is still to come.',
    'before-sticking': () => 'The stage is dated before the batch was stuck.',
    'more-than-stuck': (r: Said) => `More plants alive than were stuck, ${r.most}.`,
    'stage-goes-back': () => 'This stage is where every batch begins.',
    'not-allowed': () => 'This is more than five years ago.',
    'implausible-plants': (r: Said) =>
      `${r.asked} plants alive; ${r.booked} were stuck and between ${r.least} and ${r.most} are expected.`,
    'implausible-stage': (r: Said) =>
      r.expected ? `This stage is expected about ${r.expected}.` : 'This stage is earlier than it is expected.',
  },
  es: {
    unknownKind: (kind: string) =>
      `El servidor da un motivo que esta página todavía no conoce: ${kind}. Vuelva a cargar la página.`,
    'unknown-site': (r: Said) => `No hay sitio ${r.asked}. Créelo en Datos o corrija el nombre.`,
    'unknown-house': (r: Said) => `No hay invernadero ${r.asked} en este sitio. Mande crearlo o corrija el nombre.`,
    'unknown-crop': (r: Said) => `No hay cultivo ${r.asked}. Tómelo primero o corrija el nombre.`,
    'unknown-variety': (r: Said) => `No hay variedad ${r.asked}. Mande crearla o corrija el nombre.`,
    'unknown-tray-format': (r: Said) => `No hay formato de charola ${r.asked}. Créelo primero o corrija el nombre.`,
    'no-crop': (r: Said) => `${r.asked} es nueva y la línea no dice de qué cultivo es.`,
    ambiguous: (r: Said) => `Varios se llaman ${r.asked}. Escriba mejor el código.`,
    missing: () => 'Esta celda está vacía.',
    cells: () => 'Esta línea tiene otro número de celdas que la línea de nombres.',
    trays: (r: Said) => `${r.asked} charolas: al menos 1 y como mucho 20 000.`,
    'not-whole': (r: Said) => `${r.asked} no es un número entero.`,
    'not-a-day': (r: Said) => `${r.asked} no es un día de la forma de arriba.`,
    'not-a-stage': (r: Said) => `${r.asked} no es una etapa.`,
    'here-already': () =>
      'El mismo lote ya está anotado: variedad, charola, invernadero, día y charolas. No se escribe otra vez.',
    'stage-today': () => 'La etapa no tiene día: cuenta como vista hoy.',
    'in-the-future': () => 'Un día de esta línea aún no llega.',
    'before-sticking': () => 'La etapa tiene fecha anterior al plantado del lote.',
    'more-than-stuck': (r: Said) => `Más plantas vivas que las plantadas, ${r.most}.`,
    'stage-goes-back': () => 'En esta etapa empieza todo lote.',
    'not-allowed': () => 'Esto fue hace más de cinco años.',
    'implausible-plants': (r: Said) =>
      `${r.asked} plantas vivas; se plantaron ${r.booked} y se esperan entre ${r.least} y ${r.most}.`,
    'implausible-stage': (r: Said) =>
      r.expected ? `Esta etapa se espera cerca del ${r.expected}.` : 'Esta etapa es más temprana de lo esperado.',
  },
});
