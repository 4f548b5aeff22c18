import { counted } from './counted';
import { messagesIn } from './messages';
import type { Say } from './said';

/**
 * Every problem that the server answers with, by its type. Faults of single fields are in `fault-words.ts`; a problem
 * that names fields is said by them.
 */
export const problemWords = messagesIn({
  en: {
    'not-found': (v: Say) => `Not found: ${v.thing('what')} ‘${v.text('asked')}’. It may have been changed meanwhile.`,
    'not-known-then': (v: Say) => `‘${v.text('asked')}’ was not there by ${v.when('happenedBy')}.`,
    'unknown-code': (v: Say) => `${v.field('field')}: ‘${v.text('asked')}’ is not known. Create it first.`,
    'code-taken': (v: Say) => `There is already a ${v.thing('what')} ‘${v.text('asked')}’. Choose another code.`,
    'name-taken': (v: Say) => `There is already a ${v.thing('what')} ‘${v.text('asked')}’. Choose another name.`,
    malformed: () => 'Something that was sent is not as it should be. Look at what you typed.',
    'not-allowed': () => 'The server does not allow this. Look at what you typed.',
    'not-json': () => 'The server could not read what was sent. Load the page and try again.',
    'body-too-large': () => 'This is too much at once. Send it in parts.',
    'no-reading-taken': () => 'No reading was taken.',
    fault: (v: Say) => `Something broke on the server. Tell whoever runs Rootcast this number: ${v.text('fault')}.`,
    'not-there-yet': () => 'The server is still taking in what was written. Try again in a moment.',
    'outcome-unknown': () => 'It is not known yet whether this was written. Try again: it is done once.',
    'batch-not-computed': (v: Say) =>
      `Batch ${v.text('batch')} cannot be computed and is set apart; all others go on. Tell whoever runs Rootcast.`,
    'key-used-before': () => 'This was sent before with other content. Load the page and try again.',
    'not-signed-in': () => 'You are signed out. Sign in and try again; what you typed is kept.',
    'unknown-token': () => 'This device’s key is not in force any more. Sign in, or ask an owner for a new key.',
    'wrong-name-or-password': () => 'No account has this name and password.',
    'locked-out': (v: Say) =>
      `Too many failed sign-ins. Wait ${counted(v.count('retryAfterSeconds'), 'second', 'seconds')}, or ask an owner for a new password.`,
    'foreign-origin': () =>
      'Changes are taken from Rootcast’s own address only. Open it by the address that its owner gave you.',
    'no-right': () =>
      'Your roles do not allow this. Whoever keeps the people of Rootcast at your business can change that.',
    'account-of-another-kind': (v: Say) =>
      `There is already an account ‘${v.text('asked')}’ of another kind. Ask an owner.`,
    'account-off': (v: Say) => `The account ‘${v.text('asked')}’ is switched off. An owner can switch it on.`,
    'no-password-here': (v: Say) => `‘${v.text('asked')}’ signs in by the directory and has no password here.`,
    'no-person': () => 'Only people have sessions and passwords; this is a key.',
    'no-name-from-directory': () => 'The directory gave no name. Ask whoever runs it.',
    'no-role-from-directory': (v: Say) =>
      `The directory knows ‘${v.text('asked')}’ but gives no role in Rootcast. Ask whoever runs it.`,
    'wrong-secret': () => 'This is not the secret that the server wrote, or there is an owner already.',
    'last-owner': (v: Say) => `‘${v.text('asked')}’ is the only active owner. Make somebody else an owner first.`,
    'more-than-alive': (v: Say) =>
      `You named ${counted(v.count('asked'), 'plant', 'plants')}; ${v.count('alive')} are alive by the books. Name fewer, or count the batch first.`,
    'more-than-stuck': (v: Say) =>
      `You counted ${v.count('asked')}; at most ${v.count('most')} were stuck and have not left.`,
    'more-than-saleable': (v: Say) =>
      `You named ${counted(v.count('asked'), 'tray', 'trays')}; the living plants fill ${v.count('saleable')}.`,
    'plants-do-not-fit-trays': (v: Say) =>
      `${counted(v.count('asked'), 'plant', 'plants')} cannot go with these trays: between ${v.count('least')} and ${v.count('most')} can.`,
    'sample-beyond-batch': (v: Say) =>
      `The sample is larger than the batch. On the bench: ${counted(v.count('benchTrays'), 'tray', 'trays')}, ${v.count('cellsPerTray')} per tray.`,
    'stage-goes-back': (v: Say) =>
      `The batch is already at “${v.stage('current')}”. Undo the earlier entry if that one was wrong.`,
    'ship-before-rooted': () => 'Trays can leave from “rooted” on. Record the stage first if it is rooted.',
    'before-sticking': (v: Say) =>
      `${v.when('asked')} is before the batch was stuck, ${v.when('stuckAt')}. Choose a later time.`,
    'in-the-future': (v: Say) =>
      `${v.when('asked')} is still to come for the server, where it is ${v.when('now')}. Check the clock of this device.`,
    'already-there': () => 'The batch is already in that house.',
    'out-of-range': (v: Say) =>
      `${v.field('field')}: ${v.count('asked')} is out of range; it must be between ${v.count('least')} and ${v.count('most')}.`,
    'contradicts-later-entry': () => 'A later entry speaks against it. Undo the later one first.',
    'no-such-entry': () => 'The batch has no such entry. It may have been undone meanwhile.',
    'already-reversed': () => 'This entry has already been undone.',
    'treatment-already-reversed': (v: Say) => `This treatment was taken back on ${v.when('reversedAt')}.`,
    'cannot-be-reversed': () => 'This kind of entry cannot be undone. Record what is true now.',
    'implausible-plants': (v: Say) =>
      `That leaves ${counted(v.count('asked'), 'plant', 'plants')} alive. The books say ${v.count('booked')}, and ${v.count('least')} to ${v.count('most')} are expected.`,
    'implausible-stage': (v: Say) =>
      v.has('expected')
        ? `“${v.stage('asked')}” on ${v.when('seenAt')}: it is expected about ${v.when('expected')}.`
        : `“${v.stage('asked')}” on ${v.when('seenAt')}: at the temperatures of its house that is not expected at all.`,
    'not-enough-open': () => 'Not enough trays are open. Nothing was promised.',
    'profile-pinned': (v: Say) =>
      `Version ${v.text('pinned')} is pinned since ${v.when('since')}. Adopt it again without the pin first.`,
    'already-closed': (v: Say) => `This check was closed on ${v.when('closedAt')}. Undo that first if it was wrong.`,
    'house-closed': (v: Say) =>
      `House ${v.text('house')} was treated with ${v.text('product')}: nobody goes in before ${v.when('until')}. The label and local law decide.`,
    http: () => 'The server does not know what was asked. Load the page and try again.',
  },
  es: {
    'not-found': (v: Say) => `No se encontró: ${v.thing('what')} «${v.text('asked')}». Quizá cambió entretanto.`,
    'not-known-then': (v: Say) => `«${v.text('asked')}» no estaba al ${v.when('happenedBy')}.`,
    'unknown-code': (v: Say) => `${v.field('field')}: no se conoce «${v.text('asked')}». Créelo antes.`,
    'code-taken': (v: Say) => `Ya existe: ${v.thing('what')} «${v.text('asked')}». Elija otro código.`,
    'name-taken': (v: Say) => `Ya existe: ${v.thing('what')} «${v.text('asked')}». Elija otro nombre.`,
    malformed: () => 'Algo de lo enviado no está como debe. Revise lo que escribió.',
    'not-allowed': () => 'El servidor no lo permite. Revise lo que escribió.',
    'not-json': () => 'El servidor no pudo leer lo enviado. Cargue la página e intente de nuevo.',
    'body-too-large': () => 'Es demasiado de una vez. Envíelo por partes.',
    'no-reading-taken': () => 'No se tomó ninguna lectura.',
    fault: (v: Say) => `Algo falló en el servidor. Dé este número a quien atiende Rootcast: ${v.text('fault')}.`,
    'not-there-yet': () => 'El servidor aún recibe lo que se escribió. Intente de nuevo en un momento.',
    'outcome-unknown': () => 'Aún no se sabe si se escribió. Intente de nuevo: se hace una sola vez.',
    'batch-not-computed': (v: Say) =>
      `El lote ${v.text('batch')} no se puede calcular y se aparta; los demás siguen. Avise a quien atiende Rootcast.`,
    'key-used-before': () => 'Esto ya se envió con otro contenido. Cargue la página e intente de nuevo.',
    'not-signed-in': () => 'Su sesión se cerró. Entre e intente de nuevo; se conserva lo que escribió.',
    'unknown-token': () => 'La clave de este aparato ya no vale. Entre, o pida una nueva a un dueño.',
    'wrong-name-or-password': () => 'Ninguna cuenta tiene este nombre y contraseña.',
    'locked-out': (v: Say) =>
      `Demasiados intentos. Espere ${counted(v.count('retryAfterSeconds'), 'segundo', 'segundos')} o pida otra contraseña a un dueño.`,
    'foreign-origin': () =>
      'Los cambios se toman solo desde la dirección de Rootcast. Ábralo por la dirección que le dio su dueño.',
    'no-right': () =>
      'Sus funciones no permiten esto. Lo puede cambiar quien lleva las personas de Rootcast en su empresa.',
    'account-of-another-kind': (v: Say) => `Ya hay una cuenta «${v.text('asked')}» de otro tipo. Pregunte a un dueño.`,
    'account-off': (v: Say) => `La cuenta «${v.text('asked')}» está apagada. Un dueño la puede encender.`,
    'no-password-here': (v: Say) => `«${v.text('asked')}» entra por el directorio y no tiene contraseña aquí.`,
    'no-person': () => 'Solo las personas tienen sesiones y contraseñas; esto es una clave.',
    'no-name-from-directory': () => 'El directorio no dio ningún nombre. Pregunte a quien lo atiende.',
    'no-role-from-directory': (v: Say) =>
      `El directorio conoce a «${v.text('asked')}» pero no le da función en Rootcast. Pregunte a quien lo atiende.`,
    'wrong-secret': () => 'No es el secreto que escribió el servidor, o ya hay un dueño.',
    'last-owner': (v: Say) => `«${v.text('asked')}» es el único dueño activo. Haga dueño antes a otra persona.`,
    'more-than-alive': (v: Say) =>
      `Anotó ${counted(v.count('asked'), 'planta', 'plantas')}; según el libro hay ${v.count('alive')} vivas. Anote menos o cuente primero el lote.`,
    'more-than-stuck': (v: Say) =>
      `Contó ${v.count('asked')}; como mucho se plantaron ${v.count('most')} que no han salido.`,
    'more-than-saleable': (v: Say) =>
      `Anotó ${counted(v.count('asked'), 'charola', 'charolas')}; las plantas vivas llenan ${v.count('saleable')}.`,
    'plants-do-not-fit-trays': (v: Say) =>
      `${counted(v.count('asked'), 'planta', 'plantas')} no van con estas charolas: pueden ir entre ${v.count('least')} y ${v.count('most')}.`,
    'sample-beyond-batch': (v: Say) =>
      `La muestra es mayor que el lote. En la mesa: ${counted(v.count('benchTrays'), 'charola', 'charolas')}, ${v.count('cellsPerTray')} por charola.`,
    'stage-goes-back': (v: Say) =>
      `El lote ya está en «${v.stage('current')}». Deshaga el registro anterior si estaba mal.`,
    'ship-before-rooted': () => 'Las charolas salen a partir de «enraizado». Anote primero la etapa si ya enraizó.',
    'before-sticking': (v: Say) =>
      `${v.when('asked')} es antes de plantar el lote, ${v.when('stuckAt')}. Elija una hora posterior.`,
    'in-the-future': (v: Say) =>
      `Para el servidor ${v.when('asked')} aún no llega; allá son las ${v.when('now')}. Revise el reloj de este aparato.`,
    'already-there': () => 'El lote ya está en ese invernadero.',
    'out-of-range': (v: Say) =>
      `${v.field('field')}: ${v.count('asked')} está fuera de rango; debe estar entre ${v.count('least')} y ${v.count('most')}.`,
    'contradicts-later-entry': () => 'Un registro posterior lo contradice. Deshaga primero el posterior.',
    'no-such-entry': () => 'El lote no tiene ese registro. Quizá ya se deshizo.',
    'already-reversed': () => 'Este registro ya se deshizo.',
    'treatment-already-reversed': (v: Say) => `Este tratamiento se retiró el ${v.when('reversedAt')}.`,
    'cannot-be-reversed': () => 'Este tipo de registro no se deshace. Anote lo que es cierto ahora.',
    'implausible-plants': (v: Say) =>
      `Así quedan ${counted(v.count('asked'), 'planta viva', 'plantas vivas')}. El libro dice ${v.count('booked')} y se esperan de ${v.count('least')} a ${v.count('most')}.`,
    'implausible-stage': (v: Say) =>
      v.has('expected')
        ? `«${v.stage('asked')}» el ${v.when('seenAt')}: se espera hacia el ${v.when('expected')}.`
        : `«${v.stage('asked')}» el ${v.when('seenAt')}: con las temperaturas de su invernadero no se espera.`,
    'not-enough-open': () => 'No hay bastantes charolas disponibles. No se prometió nada.',
    'profile-pinned': (v: Say) =>
      `La versión ${v.text('pinned')} está fijada desde el ${v.when('since')}. Adóptela de nuevo sin fijarla.`,
    'already-closed': (v: Say) => `Esta revisión se cerró el ${v.when('closedAt')}. Deshágala antes si estaba mal.`,
    'house-closed': (v: Say) =>
      `En el invernadero ${v.text('house')} se aplicó ${v.text('product')}: nadie entra antes de ${v.when('until')}. Deciden la etiqueta y la ley local.`,
    http: () => 'El servidor no conoce lo que se pidió. Cargue la página e intente de nuevo.',
  },
});
