import { describe, expect, it } from 'vitest';
import { bodyOf, draftOf, firstSteps, newItem, signed, STAGES, withTyped, type Draft, type Item } from './setup-state';

const METRIC = { temperature: 'C', length: 'mm' } as const;
const AMERICAN = { temperature: 'F', length: 'in' } as const;

const TRAY: Item = { code: '72', cells: 72, saleCount: 70, lengthMm: 533, widthMm: 267 };
const CROP: Item = {
  code: 'salvia',
  name: 'Salvia',
  profile: {
    stages: STAGES.map((stage) => ({
      stage,
      daysAtReference: 7.5,
      referenceC: 22,
      minC: 8,
      optimumC: 25,
      maxC: 35,
      survivalMean: 0.955,
      survivalWeight: 40,
      form: 'BETA',
      source: 'common practice',
    })),
    rateSpread: 0.12,
    holdDays: 14,
  },
};

it('a crop saved by hand keeps the paces that were learned, which its form does not show', () => {
  const rates = { varieties: { 'salvia-dusk': 1.06 }, sites: { north: 0.98 } };
  const learned: Item = { ...CROP, profile: { ...(CROP['profile'] as Item), cellSpread: 0.14, rates } };
  const made = bodyOf('crops', { ...draftOf('crops', learned, METRIC), name: 'Sage' }, learned, METRIC);
  expect(made).toMatchObject({ body: { name: 'Sage', profile: { cellSpread: 0.14, rates } } });
});

describe('a form in other units', () => {
  it('sends untouched fields back exactly as stored', () => {
    const draft: Draft = { ...draftOf('tray-formats', TRAY, AMERICAN), saleCount: '71' };
    expect(draft['lengthMm']).toBe('20.984');
    expect(bodyOf('tray-formats', draft, TRAY, AMERICAN)).toEqual({ body: { ...TRAY, saleCount: 71 } });
  });

  it('turns what was typed into stored units', () => {
    const draft = { ...draftOf('tray-formats', TRAY, AMERICAN), lengthMm: '21', widthMm: '10,5' };
    expect(bodyOf('tray-formats', draft, TRAY, AMERICAN)).toEqual({
      // 25.4 mm to the inch: 533.4 and 266.7, stored in whole millimetres.
      body: { ...TRAY, lengthMm: 533, widthMm: 267 },
    });
  });

  it('shows a profile in °F and survival in percent, and gives the same profile back', () => {
    const draft = draftOf('crops', CROP, AMERICAN);
    expect(draft['profile.stages.0.referenceC']).toBe('71.5');
    expect(draft['profile.stages.2.survivalMean']).toBe('95.5');
    expect(bodyOf('crops', draft, CROP, AMERICAN)).toEqual({ body: CROP });
  });
});

describe('a form with faults', () => {
  it('names each field that is missing or wrong and sends nothing', () => {
    const draft = {
      ...draftOf('tray-formats', TRAY, METRIC),
      code: 'no blanks',
      cells: '7.5',
      saleCount: 'x',
      widthMm: '',
    };
    const made = bodyOf('tray-formats', draft, newItem('tray-formats'), METRIC);
    expect('wrong' in made && Object.fromEntries(made.wrong)).toEqual({
      code: 'code',
      cells: 'whole',
      saleCount: 'number',
      widthMm: 'needed',
    });
  });

  it('leaves numbers out of a new crop for the grower to give', () => {
    const made = bodyOf('crops', draftOf('crops', newItem('crops'), METRIC), newItem('crops'), METRIC);
    expect('wrong' in made && made.wrong.get('profile.stages.1.daysAtReference')).toBe('needed');
  });

  it('leaves an empty optional field out', () => {
    const house: Item = { code: 'h1', site: 's', name: 'House 1', mediumSetpointC: 22 };
    const draft = { ...draftOf('houses', house, METRIC), mediumSetpointC: '' };
    expect(bodyOf('houses', draft, house, METRIC)).toEqual({ body: { code: 'h1', site: 's', name: 'House 1' } });
  });
});

describe('the first steps', () => {
  it('point at the first list that is empty', () => {
    const steps = firstSteps({ sites: 1, houses: 0, 'tray-formats': 0, crops: 3, varieties: 0 });
    expect(steps.find(({ next }) => next)?.step).toBe('houses');
    expect(steps.filter(({ done }) => done).map(({ step }) => step)).toEqual(['sites', 'crops']);
  });
});

describe('a sensor', () => {
  const PROBE: Item = { code: 'p1', house: 'h1', quantity: 'air-temperature', unit: '[degF]', offset: -0.5 };

  it('is sent with the code of its unit and its offset in that unit, whatever the reader reads', () => {
    const draft = { ...draftOf('sensors', PROBE, METRIC), offset: '0,4' };
    expect(bodyOf('sensors', draft, PROBE, METRIC)).toEqual({ body: { ...PROBE, offset: 0.4 } });
  });

  it('keeps a unit that its quantity no longer comes in, and marks it', () => {
    const draft = withTyped('sensors', draftOf('sensors', PROBE, METRIC), 'quantity', 'light');
    expect(draft['unit']).toBe('[degF]');
    const made = bodyOf('sensors', draft, PROBE, METRIC);
    expect('wrong' in made && Object.fromEntries(made.wrong)).toEqual({ unit: 'unit' });
  });

  it('takes the unit of a quantity that comes in one only', () => {
    expect(withTyped('sensors', {}, 'quantity', 'relative-humidity')).toEqual({
      quantity: 'relative-humidity',
      unit: '%',
    });
    expect(withTyped('sensors', {}, 'quantity', 'light')).toEqual({ quantity: 'light' });
  });

  it('of moisture that shows no level needs all five, and no other sensor has them', () => {
    const probe: Item = { code: 'p2', house: 'h1', quantity: 'medium-moisture', unit: 'kPa' };
    const levels = { 'levels.0': '60', 'levels.1': '30', 'levels.2': '15', 'levels.3': '8', 'levels.4': '2' };
    const whole = bodyOf('sensors', { ...draftOf('sensors', probe, METRIC), ...levels }, probe, METRIC);
    expect(whole).toEqual({ body: { ...probe, levels: [60, 30, 15, 8, 2] } });

    const part = bodyOf('sensors', { ...draftOf('sensors', probe, METRIC), ...levels, 'levels.2': '' }, probe, METRIC);
    expect('wrong' in part && Object.fromEntries(part.wrong)).toEqual({ 'levels.2': 'needed' });

    const other = bodyOf('sensors', { ...draftOf('sensors', PROBE, METRIC), ...levels }, PROBE, METRIC);
    expect(other).toEqual({ body: PROBE });
  });

  it('begins with the topic that its address says', () => {
    expect(newItem('sensors', new URLSearchParams('topic=range/1/air&site=north'))).toEqual({ topic: 'range/1/air' });
    expect(newItem('varieties', new URLSearchParams('topic=range/1/air'))).toEqual({});
  });

  it('shows what is added with its sign', () => {
    expect([signed(0.3), signed(-1.25)]).toEqual(['+0.3', '−1.25']);
  });
});
