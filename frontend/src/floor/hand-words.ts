import type { ReadingMessage } from '../outbox/outbox-state';
import type { Formats } from '../shared/formats';
import { unitName } from '../shared/reading-units';
import type { handMessages } from './hand-messages';

/** What was read by hand, in the unit that it was read in: "Air 21.5 °C". */
export function readingWords(
  { houseName, reading: { quantity, value, unit, at } }: ReadingMessage,
  t: (typeof handMessages)['en'],
  format: Formats,
  timeZone: string | undefined,
): { readonly what: string; readonly about: string } {
  const amount =
    quantity === 'medium-moisture'
      ? t.level(format.decimal(value, 0))
      : format.withUnit(format.decimal(value, 1), unitName(unit));
  return { what: `${t[quantity]}: ${amount}`, about: `${houseName}, ${format.dateTime(at, timeZone)}` };
}
