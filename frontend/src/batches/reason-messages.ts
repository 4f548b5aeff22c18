import { counted } from '../shared/counted';
import { messagesIn } from '../shared/messages';

export const reasonMessages = messagesIn({
  en: {
    title: 'Why this date',
    later: (days: string, plan: string, ready: string) =>
      `Planned for ${plan}, now expected ${ready}: ${counted(days, 'day', 'days')} later. This is where the days went.`,
    earlier: (days: string, plan: string, ready: string) =>
      `Planned for ${plan}, now expected ${ready}: ${counted(days, 'day', 'days')} earlier. This is where the days were won.`,
    asPlanned: (plan: string) => `Planned for ${plan} and still expected then.`,
    noPlan: 'There was no date in sight when this batch was stuck, so there is nothing to compare with.',
    noDate: (plan: string) =>
      `Planned for ${plan}; at the temperatures now expected no ready date is in sight. The parts below say what changed.`,
    planned: 'Planned',
    expected: 'Expected',
    cause: 'Cause',
    days: 'Days',
    'profile-version': 'Profile',
    temperature: 'Temperature',
    'gap-filling': 'Filled hours',
    forecast: 'Days to come',
    'rate-seen': 'Pace seen',
    'own-record': 'Own record',
    otherDays: (n: number) => `${n} other days`,
    allOther: 'all other days',
    wasInstead: (was: string, planned: string) => `medium at ${was} instead of ${planned}`,
    wasReference: (was: string) => `medium at ${was} instead of each stage’s reference temperature`,
    'why-profile-version': (now: number, planned: number) =>
      `The crop’s profile is version ${now} now; the plan was made with version ${planned}.`,
    'why-gap-filling': 'Hours without a reading, as they were filled in.',
    'why-forecast': 'The hours to come are expected at another temperature than planned.',
    'why-rate-seen': 'Looks, stages seen, and what the crop’s batches usually do.',
    'why-own-record': 'Finished batches that were predicted like this were ready at another time than predicted.',
    wider: (times: string, batches: string) =>
      `The range is ${counted(times, 'time', 'times')} as wide as the model’s, because finished batches of this crop were ready further from their predicted dates than it says (${counted(batches, 'batch', 'batches')}; those that share their weather count less).`,
    narrower: (times: string, batches: string) =>
      `The range is ${counted(times, 'time', 'times')} as wide as the model’s, because finished batches of this crop were ready nearer to their predicted dates than it says (${counted(batches, 'batch', 'batches')}; those that share their weather count less).`,
    rate: (p50: string, p10: string, p90: string) =>
      `Its own pace: ${p50} of the profile’s, eight times in ten between ${p10} and ${p90}.`,
    daysDoubt: (share: string) =>
      `The range is wide because the days of this crop were stated and may be ${share} out. Learn them in Setup once batches have finished, or say there how well you know them.`,
    called: (called: string, ready: string) =>
      `Counts show that stages of this crop are called complete with ${called} of the cells through. Ready is when ${ready} are.`,
    calledUnseen:
      'No count of cells shows with how many of them through a stage of this crop is called complete: ready is when your people call it so.',
    profile: (now: number, planned: number) =>
      now === planned ? `Profile version ${now}.` : `Profile version ${now}; planned with version ${planned}.`,
    picture: 'Days won (left) and lost (right), one after the other',
    failed: 'The reasons could not be loaded.',
    lookSaid: (reached: number, cells: number) => `${reached} of ${cells}`,
    plan: 'plan',
    legend:
      'Line: even chance. Shaded: eight times in ten. Dashes: the plan. Rings: looks, filled when nine in ten were there.',
    toWhy: 'Why this date?',
  },
  es: {
    title: 'Por qué esta fecha',
    later: (days: string, plan: string, ready: string) =>
      `Previsto para el ${plan}, ahora se espera el ${ready}: ${counted(days, 'día', 'días')} después. En esto se fueron los días.`,
    earlier: (days: string, plan: string, ready: string) =>
      `Previsto para el ${plan}, ahora se espera el ${ready}: ${counted(days, 'día', 'días')} antes. En esto se ganaron los días.`,
    asPlanned: (plan: string) => `Previsto para el ${plan} y se sigue esperando entonces.`,
    noPlan: 'Al plantar este lote no había fecha a la vista, así que no hay con qué comparar.',
    noDate: (plan: string) =>
      `Previsto para el ${plan}; con las temperaturas esperadas no hay fecha a la vista. Abajo está lo que cambió.`,
    planned: 'Previsto',
    expected: 'Esperado',
    cause: 'Causa',
    days: 'Días',
    'profile-version': 'Perfil',
    temperature: 'Temperatura',
    'gap-filling': 'Horas completadas',
    forecast: 'Días por venir',
    'rate-seen': 'Ritmo visto',
    'own-record': 'Aciertos propios',
    otherDays: (n: number) => `otros ${counted(n, 'día', 'días')}`,
    allOther: 'todos los demás días',
    wasInstead: (was: string, planned: string) => `sustrato a ${was} en vez de ${planned}`,
    wasReference: (was: string) => `sustrato a ${was} en vez de la temperatura de referencia de cada etapa`,
    'why-profile-version': (now: number, planned: number) =>
      `El perfil del cultivo es ahora la versión ${now}; el plan se hizo con la versión ${planned}.`,
    'why-gap-filling': 'Horas sin lectura, según se completaron.',
    'why-forecast': 'Las horas por venir se esperan a otra temperatura que la prevista.',
    'why-rate-seen': 'Revisiones, etapas vistas y lo que suelen hacer los lotes del cultivo.',
    'why-own-record': 'Lotes terminados que se habían previsto así estuvieron listos en otro momento que el previsto.',
    wider: (times: string, batches: string) =>
      `El margen es ${counted(times, 'vez', 'veces')} el del modelo, porque los lotes terminados de este cultivo estuvieron listos más lejos de la fecha prevista de lo que este dice (${counted(batches, 'lote', 'lotes')}; los que comparten el clima cuentan menos).`,
    narrower: (times: string, batches: string) =>
      `El margen es ${counted(times, 'vez', 'veces')} el del modelo, porque los lotes terminados de este cultivo estuvieron listos más cerca de la fecha prevista de lo que este dice (${counted(batches, 'lote', 'lotes')}; los que comparten el clima cuentan menos).`,
    rate: (p50: string, p10: string, p90: string) =>
      `Su propio ritmo: ${p50} del que da el perfil, ocho de diez veces entre ${p10} y ${p90}.`,
    daysDoubt: (share: string) =>
      `El rango es amplio porque los días de este cultivo se declararon y pueden errar en ${share}. Apréndalos en Configuración cuando haya lotes terminados, o diga allí qué tan bien los conoce.`,
    called: (called: string, ready: string) =>
      `Los conteos muestran que las etapas de este cultivo se dan por completas con ${called} de las celdas pasadas. Está listo cuando lo están ${ready}.`,
    calledUnseen:
      'Ningún conteo de celdas muestra con cuántas pasadas se da por completa una etapa de este cultivo: está listo cuando su gente lo da por completo.',
    profile: (now: number, planned: number) =>
      now === planned ? `Perfil, versión ${now}.` : `Perfil, versión ${now}; previsto con la versión ${planned}.`,
    picture: 'Días ganados (izquierda) y perdidos (derecha), uno tras otro',
    failed: 'No se pudieron cargar las razones.',
    lookSaid: (reached: number, cells: number) => `${reached} de ${cells}`,
    plan: 'plan',
    legend:
      'Línea: la mitad de las veces. Sombra: ocho de diez. Trazos: el plan. Aros: revisiones, llenos con nueve de diez.',
    toWhy: '¿Por qué esta fecha?',
  },
});
