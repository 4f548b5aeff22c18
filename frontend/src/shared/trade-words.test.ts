import { describe, expect, it } from 'vitest';
import { everyMessage } from './every-message';

/** Names, units and words that both languages write alike. */
const ALIKE = /^(demo|plan|Sensor|Botrytis|MQTT|mol\/m²\/d|XLSX|Rootcast|control)$/;

const offending = (language: string, other: RegExp) =>
  everyMessage
    .filter((message) => message.language === language)
    .map(({ path, name, saidOf }) => ({ place: `${path} ${name}`, said: saidOf('7') }))
    .filter(({ said }) => other.test(said))
    .map(({ place, said }) => `${place}: ${said}`);

describe('English has one word for one thing, that of the trade', () => {
  it.each([
    ['mend, for to correct', /\bmend(s|ed|ing)?\b/i],
    ['lasts, for open', /\b(lasts|lasting)\b/i],
    ['look at it first, for a preview', /\blook(ed)? at (it )?first\b/i],
    ['take in, for to import', /\btak(e|en|ing) (it |them |this |\d+ )?in\b(?! one week)/i],
    ['if you like, for optional', /\bif you like\b/i],
    ['postings, for ledger entries', /\bpostings?\b/i],
    ['Excel or workbook, for XLSX', /\b(excel|workbook)\b/i],
    ['lean, for too early or too late', /\blean(s|ed|ing)?\b/i],
  ])('not %s', (_, other) => {
    expect(everyMessage.length).toBeGreaterThan(1_000);
    expect(offending('en', other)).toEqual([]);
  });
});

it.each(['en', 'es'])('per cents are written in one way, as figures are (%s)', (language) => {
  expect(offending(language, /\d\s%/)).toEqual([]);
});

describe('no message, in either language,', () => {
  it.each(['en', 'es'])('holds a code or a field as it is sent (%s)', (language) => {
    expect(offending(language, /\b(STICK|CALLUS|ROOT|READY|SHIP|STICKING|ROOTING|FILLING|TONING)\b/)).toEqual([]);
    expect(offending(language, /\b[a-z]+(C|Ppm|Kpa|Umol|Mm|Percent|MsPerCm|At|On|Id)\b/)).toEqual([]);
  });

  it('is the same in both: that would be English within Spanish', () => {
    const english = new Map(
      everyMessage.filter(({ language }) => language === 'en').map((each) => [`${each.path} ${each.name}`, each]),
    );
    const same = everyMessage.flatMap((each) => {
      const key = `${each.path} ${each.name}`;
      const said = each.saidOf('7');
      return each.language === 'es' &&
        /\p{L}{4}/u.test(said) &&
        !ALIKE.test(said) &&
        english.get(key)?.saidOf('7') === said
        ? [`${key}: ${said}`]
        : [];
    });
    expect(same).toEqual([]);
  });
});
