import { messagesIn } from './messages';

export const asOfMessages = messagesIn({
  en: {
    see: 'See it as of …',
    title: 'See it as it was',
    day: 'Day',
    time: 'At',
    show: 'Show',
    noDay: 'Choose the day.',
    noTime: 'Type a time such as 09:30 that exists on that day.',
    toCome: 'That is still to come.',
    itWas: (when: string) => `As it was on ${when}`,
    itWasHelp: 'From what had happened by then. Nothing can be recorded while looking back.',
    back: 'Back to now',
    zone: (zone: string) => `clock of ${zone}`,
  },
  es: {
    see: 'Ver cómo estaba …',
    title: 'Ver cómo estaba',
    day: 'Día',
    time: 'A las',
    show: 'Ver',
    noDay: 'Elija el día.',
    noTime: 'Escriba una hora como 09:30 que exista ese día.',
    toCome: 'Eso aún no llega.',
    itWas: (when: string) => `Como estaba el ${when}`,
    itWasHelp: 'Con lo que había pasado hasta entonces. Mientras se mira atrás no se anota nada.',
    back: 'Volver a ahora',
    zone: (zone: string) => `hora de ${zone}`,
  },
});
