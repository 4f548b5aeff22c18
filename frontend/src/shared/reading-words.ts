import { counted } from './counted';
import { messagesIn } from './messages';
import type { Say } from './said';

/** What the server says of one reading, or of a line or cell of a table of readings. */
export const readingWords = messagesIn({
  en: {
    range: (v: Say) => `${v.measure('value')} cannot be: the limit is ${v.measure('expected')}.`,
    spike: (v: Say) =>
      `${v.measure('value')} is more than ${v.span('limit')} from ${v.measure('expected')}, the middle of the readings around it.`,
    step: (v: Say) =>
      `${v.measure('value')} after ${v.measure('expected')} is a change of more than ${v.span('limit')} from one reading to the next.`,
    'flat-line': (v: Say) => `${v.measure('value')} and nothing else for ${v.count('hours')} h.`,
    disagreement: (v: Say) =>
      `The hour’s ${v.measure('value')} is more than ${v.span('limit')} from ${v.measure('expected')} by the other sensors.`,
    duplicate: (v: Say) =>
      `${v.measure('value')} came after ${v.measure('expected')} for the same moment; the first stays.`,
    'clock-skew': (v: Say) => `${v.measure('value')} was stamped with a time that was still to come.`,
    'more-than-the-sun': (v: Say) =>
      `${v.measure('value')} is more than the ${v.measure('most')} that fall outdoors: a fault of the sensor.`,
    late: () => 'Came more than six hours after it was measured; used.',
    implausible: (v: Say) =>
      `${v.measure('value')} cannot be: it must lie between ${v.measure('least')} and ${v.measure('most')}.`,
    'not-a-number': (v: Say) => `‘${v.text('text')}’ is no number.`,
    incomplete: () => 'House, quantity, value, unit and time are all needed.',
    unreadable: () => 'This is not a reading.',
    'unknown-house': (v: Say) => `There is no house ‘${v.text('text')}’.`,
    'unknown-quantity': (v: Say) => `‘${v.text('text')}’ is not measured here.`,
    'other-unit': (v: Say) => `It does not come in ‘${v.text('text')}’.`,
    'unknown-sensor': (v: Say) => `There is no sensor ‘${v.text('text')}’ that shows this.`,
    'too-long-a-message': (v: Say) => `${v.count('characters')} signs; a reading needs few.`,
    'neither-number-nor-object': () => 'Neither a number nor an object with "value" and "at".',
    'no-number-as-value': () => 'There is no number as "value".',
    'broken-json': () => 'The JSON is broken.',
    'no-time-as-at': () => 'There is no time as "at", written with date, T, time and Z.',
    'kept-without-time': () => 'The broker kept it, and it does not say when it was measured.',
    'no-sensor-of-topic': () => 'No sensor has this topic.',
    'not-stored': () => 'It could not be stored; the server’s log says why.',
    'too-old': (v: Say) => `${v.when('at')} is over five years ago.`,
    purged: (v: Say) => `The readings of ${v.when('at')} are no longer kept; their hours stay.`,
    'other-cells': (v: Say) => `The line has ${counted(v.count('cells'), 'cell', 'cells')}, the header another number.`,
    'not-a-time': (v: Say) => `‘${v.text('text')}’ is no time of the form that was given.`,
    'no-offset': (v: Say) => `‘${v.text('text')}’ does not say how far it is from UTC.`,
    'impossible-offset': (v: Say) =>
      `‘${v.text('text')}’ says ${v.text('offset')}: no clock is more than 14:00 from UTC.`,
    'offset-of-elsewhere': (v: Say) =>
      `‘${v.text('text')}’ says ${v.text('offset')}, which clocks of ${v.text('zone')} show at no time of the year: that or the hour is wrong. If the logger ran by another clock, choose its time zone.`,
    'offset-of-another-season': (v: Say) =>
      `‘${v.text('text')}’ says ${v.text('offset')} where clocks of ${v.text('zone')} show ${v.text('shown')}: taken as it says.`,
    'several-houses': (v: Say) => `‘${v.text('text')}’ is the name of several houses; write the code.`,
    'no-such-local-time': (v: Say) =>
      `${v.text('text').replace('T', ' ')} does not exist: clocks went forward over it.`,
    'first-of-two': (v: Say) => `${v.text('text').replace('T', ' ')} came twice: taken as the first.`,
    'second-of-two': (v: Say) => `${v.text('text').replace('T', ' ')} came twice: taken as the second.`,
  },
  es: {
    range: (v: Say) => `${v.measure('value')} no puede ser: el límite es ${v.measure('expected')}.`,
    spike: (v: Say) =>
      `${v.measure('value')} se aleja más de ${v.span('limit')} de ${v.measure('expected')}, el medio de las lecturas vecinas.`,
    step: (v: Say) =>
      `${v.measure('value')} después de ${v.measure('expected')} es un cambio de más de ${v.span('limit')} entre dos lecturas.`,
    'flat-line': (v: Say) => `${v.measure('value')} y nada más durante ${v.count('hours')} h.`,
    disagreement: (v: Say) =>
      `${v.measure('value')} de la hora se aleja más de ${v.span('limit')} de ${v.measure('expected')} de los otros sensores.`,
    duplicate: (v: Say) =>
      `${v.measure('value')} llegó después de ${v.measure('expected')} para el mismo momento; queda la primera.`,
    'clock-skew': (v: Say) => `${v.measure('value')} traía una hora que aún no llegaba.`,
    'more-than-the-sun': (v: Say) =>
      `${v.measure('value')} es más que ${v.measure('most')}, lo que cae al aire libre: una falla del sensor.`,
    late: () => 'Llegó más de seis horas después de medirse; se usa.',
    implausible: (v: Say) =>
      `${v.measure('value')} no puede ser: debe estar entre ${v.measure('least')} y ${v.measure('most')}.`,
    'not-a-number': (v: Say) => `«${v.text('text')}» no es un número.`,
    incomplete: () => 'Hacen falta invernadero, magnitud, valor, unidad y hora.',
    unreadable: () => 'Esto no es una lectura.',
    'unknown-house': (v: Say) => `No existe el invernadero «${v.text('text')}».`,
    'unknown-quantity': (v: Say) => `«${v.text('text')}» no se mide aquí.`,
    'other-unit': (v: Say) => `No viene en «${v.text('text')}».`,
    'unknown-sensor': (v: Say) => `No hay un sensor «${v.text('text')}» que muestre esto.`,
    'too-long-a-message': (v: Say) => `${v.count('characters')} signos; una lectura necesita pocos.`,
    'neither-number-nor-object': () => 'No es un número ni un objeto con "value" y "at".',
    'no-number-as-value': () => 'No hay un número en "value".',
    'broken-json': () => 'El JSON está roto.',
    'no-time-as-at': () => 'No hay una hora en "at", escrita con fecha, T, hora y Z.',
    'kept-without-time': () => 'El servidor MQTT la guardó y no dice cuándo se midió.',
    'no-sensor-of-topic': () => 'Ningún sensor tiene este tema.',
    'not-stored': () => 'No se pudo guardar; el registro del servidor dice por qué.',
    'too-old': (v: Say) => `${v.when('at')} es hace más de cinco años.`,
    purged: (v: Say) => `Las lecturas de ${v.when('at')} ya no se conservan; sus horas quedan.`,
    'other-cells': (v: Say) =>
      `El renglón tiene ${counted(v.count('cells'), 'celda', 'celdas')} y el encabezado otro número.`,
    'not-a-time': (v: Say) => `«${v.text('text')}» no es una hora de la forma dada.`,
    'no-offset': (v: Say) => `«${v.text('text')}» no dice cuánto se aparta de UTC.`,
    'impossible-offset': (v: Say) =>
      `«${v.text('text')}» dice ${v.text('offset')}: ningún reloj se aparta más de 14:00 de UTC.`,
    'offset-of-elsewhere': (v: Say) =>
      `«${v.text('text')}» dice ${v.text('offset')}, que el reloj de ${v.text('zone')} no marca en ninguna época del año: eso o la hora está mal. Si el registrador usaba otro reloj, elija su zona horaria.`,
    'offset-of-another-season': (v: Say) =>
      `«${v.text('text')}» dice ${v.text('offset')} cuando el reloj de ${v.text('zone')} marca ${v.text('shown')}: se toma como lo dice.`,
    'several-houses': (v: Say) => `Varios invernaderos se llaman «${v.text('text')}»; escriba el código.`,
    'no-such-local-time': (v: Say) => `${v.text('text').replace('T', ' ')} no existe: el reloj se adelantó.`,
    'first-of-two': (v: Say) => `${v.text('text').replace('T', ' ')} pasó dos veces: se toma la primera.`,
    'second-of-two': (v: Say) => `${v.text('text').replace('T', ' ')} pasó dos veces: se toma la segunda.`,
  },
});
