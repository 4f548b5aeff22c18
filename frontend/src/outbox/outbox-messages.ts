import { messagesIn } from '../shared/messages';

export const outboxMessages = messagesIn({
  en: {
    allSent: 'All sent',
    mineSent: 'All of yours sent',
    unsent: (n: number) => `${n} not yet sent`,
    sending: 'sending …',
    nextTry: (seconds: number) => `next try in ${seconds} s`,
    sendNow: 'Send now',
    show: 'Show',
    refused: (n: number) => (n === 1 ? '1 refused: needs you' : `${n} refused: need you`),
    refusedTitle: 'Not taken by the server',
    mend: 'Correct',
    discard: 'Discard',
    discardSure: 'Discard this entry? It was never recorded.',
    keep: 'Keep',
    reading: 'reading what is on this device …',
    storeBroken:
      'This device cannot keep entries, so nothing can be recorded here. Leave private browsing or free some space, then load again.',
  },
  es: {
    allSent: 'Todo enviado',
    mineSent: 'Lo suyo está enviado',
    unsent: (n: number) => `${n} sin enviar`,
    sending: 'enviando …',
    nextTry: (seconds: number) => `nuevo intento en ${seconds} s`,
    sendNow: 'Enviar ya',
    show: 'Ver',
    refused: (n: number) => (n === 1 ? '1 rechazado: le necesita' : `${n} rechazados: le necesitan`),
    refusedTitle: 'El servidor no lo aceptó',
    mend: 'Corregir',
    discard: 'Descartar',
    discardSure: '¿Descartar este registro? Nunca se anotó.',
    keep: 'Conservar',
    reading: 'leyendo lo que hay en este aparato …',
    storeBroken:
      'Este aparato no puede guardar registros, así que aquí no se puede anotar. Salga del navegación privada o libere espacio y cargue de nuevo.',
  },
});
