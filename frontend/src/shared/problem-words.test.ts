import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { whySaid, whyWords } from '../rounds/why-words';
import { cardinalsSaid, cardinalsWords } from '../setup/cardinals-words';
import { faultWords } from './fault-words';
import { fieldNames } from './field-words';
import { formatsFor } from './formats';
import type { Preferences } from './preferences';
import { problemWords } from './problem-words';
import { readingWords } from './reading-words';
import { fieldName, sayOf, type Say, type Speaker } from './said';
import { thingNames } from './thing-words';
import { faultSaid, problemSaid, readingSaid } from './use-problem-words';

/**
 * Every code that the server can tell, from the list that a test of the server keeps true (docs/problems.json), and every
 * field that can be sent, from the interface document: both languages have words, in the reader's unit and time.
 */
const list = JSON.parse(readFileSync('../docs/problems.json', 'utf8')) as {
  readonly problems: Listed;
  readonly faults: Listed;
  readonly why: Listed;
  readonly readings: Listed;
  readonly cardinals: Listed;
  readonly words: Readonly<Record<'thing' | 'stage' | 'phase' | 'quantities', readonly string[]>>;
};
type Listed = Readonly<Record<string, { readonly values: Readonly<Record<string, string>> }>>;

const LANGUAGES = ['en', 'es'] as const;
const READERS = [
  ['en', 'F'],
  ['en', 'C'],
  ['es', 'F'],
  ['es', 'C'],
] as const;
const CHICAGO = 'America/Chicago';

/** What 22 °C is to a reader. */
const WARM = { F: /71[.,]6 °F/, C: /22[.,]0 °C/ } as const;
/** Units of the other readers. */
const FOREIGN = { F: /°C|µmol/, C: /°F|\bfc\b/ } as const;

/** A reader in Chicago: 22 °C is 71.6 °F, 2026-03-02T20:05:00Z is 14:05 there. */
function reader(language: Preferences['language'], temperature: Preferences['temperature'] = 'F'): Speaker {
  return {
    language,
    length: temperature === 'F' ? 'in' : 'mm',
    format: formatsFor({ language, temperature }),
    timeZone: CHICAGO,
  };
}

const EXAMPLES: Readonly<Record<string, unknown>> = {
  count: 17,
  measure: 22,
  celsius: 22,
  probability: 0.01,
  instant: '2026-03-02T20:05:00Z',
  date: '2026-03-02',
  text: 'Zq-7',
  texts: ['Zq-7', 'Zq-8'],
  field: 'nitrogenPpm',
  thing: 'tray-format',
  stage: 'CALLUS',
  phase: 'ROOTING',
  quantities: ['medium-moisture'],
  lines: [],
};

const valuesOf = (takes: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(takes).map(([name, kind]) => [name, EXAMPLES[kind]]));

/** What no reader may see: raw instants and dates, fields and codes as they are sent, figures that came to nothing. */
const RAW = [
  /\d{4}-\d{2}-\d{2}T/,
  /\d{4}-\d{2}-\d{2}/,
  /undefined|NaN|null|\[object|Invalid/,
  /nitrogenPpm|tray-format|medium-moisture/,
  /\b(CALLUS|ROOTING|STICK|READY)\b/,
];
/** Ways of writing times and zones are shown as an example of what to type. */
const WRITTEN_SO = new Set(['not-a-time-format']);

function expectForReader(code: string, text: string, temperature: Preferences['temperature']) {
  expect(text, code).not.toBe('');
  expect(text, code).not.toMatch(FOREIGN[temperature]);
  for (const raw of RAW) {
    if (!WRITTEN_SO.has(code)) expect(text, code).not.toMatch(raw);
  }
}

it('a check names houses as people do, and by code only while the names are not there', () => {
  const names = { ...reader('en'), houseNames: new Map([['H-7', 'Toning house']]) };
  const move = { code: 'usual-move', values: { house: 'H-7', stage: 'ROOT' } };
  const clash = { code: 'clashes', values: { houses: ['H-7', 'H-8'], quantities: ['medium-moisture'] } };
  expect(whySaid(move, names)).toBe('Batches of this house usually go on to Toning house; this one is rooted.');
  expect(whySaid(clash, names)).toContain('Would suit: Toning house or H-8.');
  expect(whySaid(move, reader('en'))).toContain('go on to H-7;');
});

describe('in both languages', () => {
  it.each(READERS)('every problem of the server has words (%s, °%s)', (language, temperature) => {
    expect(Object.keys(list.problems).length).toBeGreaterThan(40);
    expect(Object.keys(problemWords[language]).sort()).toEqual(Object.keys(list.problems).sort());
    for (const [kind, { values }] of Object.entries(list.problems)) {
      expectForReader(
        kind,
        problemSaid({ kind, members: valuesOf(values) }, [], reader(language, temperature)),
        temperature,
      );
    }
  });

  it.each(READERS)('every fault of a field has words, in the unit of the field (%s, °%s)', (language, temperature) => {
    expect(Object.keys(faultWords[language]).sort()).toEqual(Object.keys(list.faults).sort());
    for (const [code, { values }] of Object.entries(list.faults)) {
      const fault = { field: 'phases[2].mediumC.least', code, values: valuesOf(values) };
      const text = faultSaid(fault, reader(language, temperature));
      expectForReader(code, text, temperature);
      const measured = Object.values(values).some((kind) => kind === 'celsius' || kind === 'measure');
      if (measured && code !== 'slowest-takes-too-long') expect(text, code).toMatch(WARM[temperature]);
      expectForReader(
        code,
        problemSaid({ kind: 'not-allowed', members: {} }, [fault], reader(language, temperature)),
        temperature,
      );
    }
  });

  it.each(READERS)('every reason of a check on a round has words (%s, °%s)', (language, temperature) => {
    for (const [code, { values }] of Object.entries(list.why)) {
      expectForReader(code, whySaid({ code, values: valuesOf(values) }, reader(language, temperature)), temperature);
    }
  });

  it.each(READERS)(
    'every remark on a reading has words, in the unit of its quantity (%s, °%s)',
    (language, temperature) => {
      expect(Object.keys(readingWords[language]).sort()).toEqual(Object.keys(list.readings).sort());
      for (const [code, { values }] of Object.entries(list.readings)) {
        const given = { ...valuesOf(values), ...('quantity' in values ? { quantity: 'air-temperature' } : {}) };
        const text = readingSaid({ code, values: given }, reader(language, temperature));
        expectForReader(code, text, temperature);
        if (values['value']) expect(text, code).toMatch(WARM[temperature]);
      }
    },
  );

  it.each(READERS)(
    'every reason of learned temperatures has words, in the reader’s unit (%s, °%s)',
    (language, temperature) => {
      expect(Object.keys(cardinalsWords[language]).sort()).toEqual(Object.keys(list.cardinals).sort());
      for (const [code, { values }] of Object.entries(list.cardinals)) {
        const given = { ...valuesOf(values), ...('quantity' in values ? { quantity: 'medium-temperature' } : {}) };
        const text = cardinalsSaid({ code, values: given }, reader(language, temperature));
        expectForReader(code, text, temperature);
        if (values['coldest']) expect(text, code).toMatch(WARM[temperature]);
      }
    },
  );

  it('of temperatures that batches leave open says which end is known', () => {
    const values = {
      batches: 30,
      coldest: 15,
      warmest: 25,
      optimumMost: 20,
      minimumLeast: 5,
      minimumMost: 10,
      quantity: 'medium-temperature',
    };
    expect(cardinalsSaid({ code: 'found', values }, reader('en'))).toBe(
      '30 batches at 59.0 °F to 77.0 °F; best at most 68.0 °F, lowest 41.0 °F to 50.0 °F.',
    );
    // 1.2 °C apart are 2.2 °F.
    const narrow = { batches: 30, width: 1.2, quantity: 'medium-temperature' };
    expect(cardinalsSaid({ code: 'too-narrow', values: narrow }, reader('en'))).toBe(
      'The medium’s temperatures of 30 batches differ by 2.2 °F only.',
    );
  });

  it.each(LANGUAGES)('every field that can be sent has a label (%s)', (language) => {
    const names = Object.keys(fieldNames[language]);
    const sent = sentFields();
    expect(sent.size).toBeGreaterThan(100);
    expect([...sent].filter((field) => !names.includes(field))).toEqual([]);
  });

  it.each(LANGUAGES)('every word of a closed list is said (%s)', (language) => {
    const { thing, phase, quantities, stage } = list.words;
    const names = Object.keys(thingNames[language]);
    expect([...thing, ...phase, ...quantities].filter((word) => !names.includes(word))).toEqual([]);
    const said = stage.map((each) => sayOf({ stage: each }, reader(language)).stage('stage'));
    expect(said).not.toContain(undefined);
  });

  it('no sentence is the same in both: that would be English within Spanish', () => {
    const same = [problemWords, faultWords, readingWords, whyWords, cardinalsWords].flatMap(({ en, es }) => {
      const [english, spanish] = [en, es] as unknown as readonly Record<string, (v: Say) => string>[];
      const say = sayOf(
        {},
        { ...reader('en'), format: { ...reader('en').format, dateTime: () => '', date: () => '' } },
      );
      return Object.keys(english ?? {}).filter((code) => english?.[code]?.(say) === spanish?.[code]?.(say));
    });
    expect(same).toEqual([]);
  });
});

describe('a refusal', () => {
  it('says when a house opens in the site’s time and the reader’s language', () => {
    const told = {
      kind: 'house-closed',
      members: { house: 'H2', product: 'Brand 5', until: '2026-03-02T20:05:00Z' },
    };
    expect(problemSaid(told, [], reader('en'))).toBe(
      'House H2 was treated with Brand 5: nobody goes in before 2 Mar, 14:05. The label and local law decide.',
    );
    expect(problemSaid(told, [], reader('es'))).toMatch(/antes de 2.?mar.*14:05/);
  });

  it('of a band in °F says its limits in °F and names phase and quantity by their labels', () => {
    const fault = { field: 'phases[2].mediumC.most', code: 'between', values: { least: -10, most: 60 } };
    expect(problemSaid({ kind: 'not-allowed', members: {} }, [fault], reader('en'))).toBe(
      'forming roots, Medium, at most: This must lie between 14.0 °F and 140.0 °F.',
    );
    expect(problemSaid({ kind: 'not-allowed', members: {} }, [fault], reader('en', 'C'))).toMatch(
      /between -10\.0 °C and 60\.0 °C/,
    );
  });

  it('of something the client does not know is said in general, never in the server’s English', () => {
    for (const language of LANGUAGES) {
      expect(problemSaid({ kind: 'new-kind', members: {} }, [], reader(language))).toBe(
        problemSaid({ kind: 'http', members: {} }, [], reader(language)),
      );
      expect(faultSaid({ field: 'cells', code: 'new-code', values: {} }, reader(language))).not.toBe('');
    }
  });

  it('names a line of an order and the stage of a profile', () => {
    expect(fieldName('lines[1].trays', 'en')).toBe('Line 2, Trays');
    expect(fieldName('profile.stages[1].survivalMean', 'es')).toBe('De callo a raíces, Supervivencia');
    expect(fieldName('profile.rates.varieties.blue', 'en')).toBe('Pace of variety blue');
  });

  it('takes a share as percent and a length in the reader’s unit', () => {
    const between = (field: string, least: number, most: number) =>
      faultSaid({ field, code: 'between', values: { least, most } }, reader('en'));
    expect(between('profile.stages[0].survivalMean', 0, 1)).toContain('0% and 100%');
    expect(between('lengthMm', 127, 508)).toContain('5 in and 20 in');
    expect(between('mediumEcMsPerCm', 0, 20)).toContain('0 mS/cm and 20 mS/cm');
    // 92.90304 m² are 1 000 ft²; 0.5 gal to 100 ft² are 1.8927 L to 9.2903 m².
    expect(between('areaM2', 0, 92.90304)).toContain('0 ft² and 1,000 ft²');
    expect(between('litresPerM2', 0, 1.892705892 / 9.290304)).toContain('and 0.5 gal (US)/100 ft²');
  });

  it('of light is in foot-candles for a reader of °F', () => {
    const fault = { field: 'phases[0].lightUmol.most', code: 'between', values: { least: 0, most: 200 } };
    // 200 µmol/m²/s of sun are 10 800 lx, 10 800 / 10.764 = 1 003 fc, good for two figures.
    expect(faultSaid(fault, reader('en'))).toBe('This must lie between 0 fc and 1,000 fc.');
    expect(faultSaid(fault, reader('en', 'C'))).toBe('This must lie between 0 µmol/m²/s and 200 µmol/m²/s.');
  });

  it('of a spread of temperatures has no zero moved: 3 °C apart are 5.4 °F', () => {
    const values = { value: 25, expected: 20, limit: 3, quantity: 'air-temperature' };
    expect(readingSaid({ code: 'spike', values }, reader('en'))).toBe(
      '77.0 °F is more than 5.4 °F from 68.0 °F, the middle of the readings around it.',
    );
  });
});

/** Names of all members of request bodies and of all parameters. */
function sentFields(): ReadonlySet<string> {
  interface Schema {
    readonly $ref?: string;
    readonly items?: Schema;
    readonly additionalProperties?: Schema | boolean;
    readonly properties?: Readonly<Record<string, Schema>>;
    readonly anyOf?: readonly Schema[];
  }
  interface Operation {
    readonly parameters?: readonly { readonly name: string }[];
    readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema?: Schema }>> };
  }
  const document = JSON.parse(readFileSync('../docs/openapi.json', 'utf8')) as {
    readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
    readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  };
  const names = new Set<string>();
  const seen = new Set<string>();
  const walk = (schema: Schema | undefined): void => {
    if (!schema) return;
    const name = schema.$ref?.split('/').at(-1);
    if (name !== undefined) {
      if (!seen.has(name)) walk(document.components.schemas[name]);
      seen.add(name);
    }
    walk(schema.items);
    schema.anyOf?.forEach(walk);
    if (typeof schema.additionalProperties === 'object') walk(schema.additionalProperties);
    for (const [member, inner] of Object.entries(schema.properties ?? {})) {
      names.add(member);
      walk(inner);
    }
  };
  for (const operations of Object.values(document.paths)) {
    for (const { parameters, requestBody } of Object.values(operations)) {
      parameters?.forEach(({ name }) => names.add(name));
      Object.values(requestBody?.content ?? {}).forEach(({ schema }) => walk(schema));
    }
  }
  return names;
}
