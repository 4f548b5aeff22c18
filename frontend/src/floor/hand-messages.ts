import { messagesIn } from '../shared/messages';

export const handMessages = messagesIn({
  en: {
    title: 'Read by hand',
    back: 'Back',
    house: 'House',
    air: 'Air',
    medium: 'Medium',
    humidity: 'Humidity',
    nothing: 'Type what you read.',
    notANumber: 'Type one number.',
    'air-temperature': 'Air',
    'medium-temperature': 'Medium',
    'relative-humidity': 'Humidity',
    'medium-moisture': 'Moisture',
    level: (of: string) => `${of} of 5`,
    recorded: (house: string, n: number) =>
      n === 1 ? `${house}: 1 reading recorded` : `${house}: ${n} readings recorded`,
  },
  es: {
    title: 'Lectura a mano',
    back: 'Volver',
    house: 'Invernadero',
    air: 'Aire',
    medium: 'Sustrato',
    humidity: 'Humedad del aire',
    nothing: 'Escriba lo que leyó.',
    notANumber: 'Escriba un número.',
    'air-temperature': 'Aire',
    'medium-temperature': 'Sustrato',
    'relative-humidity': 'Humedad del aire',
    'medium-moisture': 'Humedad del sustrato',
    level: (of: string) => `${of} de 5`,
    recorded: (house: string, n: number) =>
      n === 1 ? `${house}: 1 lectura anotada` : `${house}: ${n} lecturas anotadas`,
  },
});
