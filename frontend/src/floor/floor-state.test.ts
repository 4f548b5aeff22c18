import { describe, expect, test } from 'vitest';
import type { BatchView, House, OrderView } from '../shared/api-types';
import {
  actionsFor,
  afterKey,
  afterStep,
  aliveBySample,
  batchesFor,
  canBeUndone,
  housesToMoveTo,
  likeliestPromise,
  lookFault,
  places,
  pressed,
  promisesFor,
  remembering,
  sampleFault,
  stagesAhead,
  traysFilled,
  traysFor,
  wholeTyped,
} from './floor-state';

const houses: readonly House[] = [
  { code: 'n-1', site: 'north', name: 'House 1' },
  { code: 'n-2', site: 'north', name: 'House 2' },
  { code: 'q-1', site: 'quay', name: 'House 3' },
];

function batch(change: Partial<BatchView> = {}): BatchView {
  return {
    id: 'B7',
    site: 'north',
    house: 'n-1',
    variety: 'sage-dusk',
    varietyName: "Salvia nemorosa 'Harbour Dusk'",
    crop: 'salvia',
    cropName: 'Salvia nemorosa',
    trayFormat: '105',
    stuckAt: '2026-11-01T08:00:00Z',
    stage: 'CALLUS',
    stageSince: '2026-11-07T08:00:00Z',
    trays: 20,
    traysStuck: 20,
    plants: { stuck: 2100, alive: 2000, lost: 100, shipped: 0 },
    lostByCause: { rot: 100 },
    lastCount: null,
    outlook: null,
    position: 1,
    ...change,
  };
}

describe('stages', () => {
  test('only those that come next are offered', () => {
    expect(stagesAhead('STICK')).toEqual(['CALLUS', 'ROOT', 'READY']);
    expect(stagesAhead('ROOT')).toEqual(['READY']);
    expect(stagesAhead('READY')).toEqual([]);
    expect(stagesAhead('SHIP')).toEqual([]);
  });
});

describe('a look', () => {
  test('at no cell, at more than there are, or with more reached than looked at is marked', () => {
    expect(lookFault({ cells: 0, reached: undefined }, 100)).toBe('no-look-cells');
    expect(lookFault({ cells: 101, reached: 3 }, 100)).toBe('more-than-batch-cells');
    expect(lookFault({ cells: 50, reached: 51 }, 100)).toBe('more-than-looked-reached');
  });

  test('that found none, or is not typed to its end, is not', () => {
    expect(lookFault({ cells: 50, reached: 0 }, 100)).toBeUndefined();
    expect(lookFault({ cells: undefined, reached: 3 }, undefined)).toBeUndefined();
  });
});

describe('what can be recorded', () => {
  test('trays cannot leave before they are rooted', () => {
    expect(actionsFor(batch(), houses)).toEqual(['count', 'loss', 'look', 'stage', 'move']);
    expect(actionsFor(batch({ stage: 'ROOT' }), houses)).toEqual(['count', 'loss', 'look', 'stage', 'move', 'ship']);
  });

  test('a ready batch has no stage left to reach', () => {
    expect(actionsFor(batch({ stage: 'READY' }), houses)).toEqual(['count', 'loss', 'move', 'ship']);
  });

  test('of a finished batch only a count', () => {
    const gone = batch({ stage: 'SHIP', plants: { stuck: 2100, alive: 0, lost: 100, shipped: 2000 } });
    expect(actionsFor(gone, houses)).toEqual(['count']);
  });

  test('a move stays on the site and leaves the house', () => {
    expect(housesToMoveTo(batch(), houses).map((house) => house.code)).toEqual(['n-2']);
    expect(actionsFor(batch({ site: 'quay', house: 'q-1' }), houses)).not.toContain('move');
  });
});

describe('the keypad', () => {
  test('writes digits one after the other and takes them back', () => {
    expect(['1', '8', '9', '0', 'back'].reduce((text, key) => afterKey(text, key as '1'), '')).toBe('189');
    expect(afterKey('189', 'clear')).toBe('');
  });

  test('does not write leading zeros, and stops at seven digits', () => {
    expect(afterKey('0', '5')).toBe('5');
    expect(afterKey('1234567', '8')).toBe('1234567');
  });

  test('plus and minus begin at what the books say and stop at zero', () => {
    expect(afterStep('', -1, 2000)).toBe('1999');
    expect(afterStep('3', 1, 2000)).toBe('4');
    expect(afterStep('0', -1, 0)).toBe('0');
  });

  test('an empty or mixed text is not an amount', () => {
    expect(wholeTyped('')).toBeUndefined();
    expect(wholeTyped('12a')).toBeUndefined();
    expect(wholeTyped('1 890')).toBe(1890);
  });
});

describe('a sample', () => {
  // By hand: 2 100 places, 12 blanks in 210 cells leave 198 of 210; 2 100 · 198 / 210 = 1 980.
  test('stands for all places by its share of living cells', () => {
    expect(aliveBySample({ trays: 2, cells: 210, blanks: 12 }, 2100)).toBe(1980);
  });

  // By hand: 1 000 · 2 / 3 = 666.67.
  test('is rounded to the nearest plant', () => {
    expect(aliveBySample({ trays: 1, cells: 3, blanks: 1 }, 1000)).toBe(667);
  });

  test('counts no place that was never filled or has left', () => {
    expect(places(batch({ plants: { stuck: 2050, alive: 2000, lost: 50, shipped: 0 } }), 105)).toBe(2050);
    expect(places(batch({ trays: 15, plants: { stuck: 2100, alive: 1400, lost: 100, shipped: 600 } }), 105)).toBe(1500);
    expect(places(batch({ trays: 10, plants: { stuck: 2100, alive: 1000, lost: 100, shipped: 1000 } }), 105)).toBe(
      1050,
    );
  });

  test('that cannot be is named by what is wrong with it', () => {
    const fault = (trays: number, cells: number, blanks: number) => sampleFault({ trays, cells, blanks }, batch(), 105);
    expect(fault(2, 210, 12)).toBeUndefined();
    expect(fault(0, 1, 0)).toBe('no-trays');
    expect(fault(21, 210, 0)).toBe('too-many-trays');
    expect(fault(2, 0, 0)).toBe('no-cells');
    expect(fault(2, 211, 0)).toBe('too-many-cells');
    expect(fault(2, 210, 211)).toBe('too-many-blanks');
  });
});

describe('finding', () => {
  const b = [
    batch({ id: 'B70', house: 'n-2', varietyName: "Verbena 'Low Tide'", variety: 'verb-tide' }),
    batch({ id: 'B7' }),
    batch({ id: 'B12', varietyName: "Gaura 'Sálvia Lane'", variety: 'gaura-lane', house: 'n-2' }),
  ];
  const ids = (typed: string, used: readonly string[] = []) =>
    batchesFor(typed, b, houses, used).map((each) => each.id);

  test('a whole id comes before ids that begin with it', () => {
    expect(ids('b7')).toEqual(['B7', 'B70']);
  });

  test('by variety without accents, and by the name of the house', () => {
    expect(ids('salvia')).toEqual(['B7', 'B12']);
    expect(ids('house 2')).toEqual(['B12', 'B70']);
  });

  test('every word must be found', () => {
    expect(ids('salvia n-2')).toEqual(['B12']);
    expect(ids('salvia tide')).toEqual([]);
  });

  test('with nothing typed the last used come first', () => {
    expect(ids('', ['B12'])).toEqual(['B12', 'B7', 'B70']);
  });

  test('a batch used again moves to the front and is remembered once', () => {
    expect(remembering(['B1', 'B2'], 'B2')).toEqual(['B2', 'B1']);
    expect(remembering(['1', '2', '3', '4', '5', '6'], '7')).toEqual(['7', '1', '2', '3', '4', '5']);
  });
});

describe('undoing', () => {
  test('is for entries that still count', () => {
    expect(canBeUndone({ kind: 'loss', reversedBy: null }, [])).toBe(true);
    expect(canBeUndone({ kind: 'loss', reversedBy: 'x' }, [])).toBe(false);
    expect(canBeUndone({ kind: 'reversal', reversedBy: null }, [])).toBe(false);
  });

  test('is offered for sticking while nothing else stands on the books', () => {
    const stick = { kind: 'stick', reversedBy: null } as const;
    expect(canBeUndone(stick, [stick])).toBe(true);
    expect(canBeUndone(stick, [stick, { kind: 'loss', reversedBy: null }])).toBe(false);
    expect(canBeUndone(stick, [stick, { kind: 'loss', reversedBy: 'r' }, { kind: 'reversal', reversedBy: null }])).toBe(
      true,
    );
  });
});

describe('shipping', () => {
  const promise: OrderView['promises'][number] = {
    line: 1,
    variety: 'sage-dusk',
    trayFormat: '105',
    site: 'north',
    shipOn: '2026-12-07',
    trays: 6,
    shipped: 0,
    confidence: 0.9,
    kept: true,
    lots: [],
  };
  const order = (id: string, change: Partial<typeof promise>, released = false): OrderView => ({
    id,
    number: 7,
    customer: 'Hillside',
    note: null,
    recordedAt: '2026-11-01T08:00:00Z',
    recordedBy: 'sam',
    confidence: 0.9,
    released,
    releasedBy: null,
    position: 1,
    promises: [{ ...promise, ...change }],
  });

  test('offers promises of the same variety, format and site that are not yet filled, those on this batch first', () => {
    const found = promisesFor(batch(), [
      order('early', { shipOn: '2026-11-30' }),
      order('here', { shipOn: '2026-12-14', shipped: 2, lots: [{ batch: 'B7', trays: 4 }] }),
      order('filled', { shipped: 6 }),
      order('elsewhere', { site: 'quay' }),
      order('released', {}, true),
    ]);
    expect(found.map((each) => each.order)).toEqual(['here', 'early']);
    expect(found[0]).toMatchObject({ traysLeft: 4, onThisBatch: true });
  });

  test('the likeliest promise is there at once and fills the trays, as far as there are any', () => {
    const found = promisesFor(batch(), [
      order('late', { shipOn: '2026-12-14', trays: 6 }),
      order('early', { shipOn: '2026-11-30', trays: 6, shipped: 2 }),
    ]);
    expect(likeliestPromise(found)).toMatchObject({ order: 'early' });
    expect(traysFor(found[0], 19)).toBe(4);
    expect(traysFor(found[0], 3)).toBe(3);
    expect(traysFor(found[0], 0)).toBeUndefined();
    expect(likeliestPromise([])).toBeUndefined();
  });

  // By hand: 2 000 / 102 = 19.6.
  test('the living plants fill whole trays only', () => {
    expect(traysFilled(batch(), { saleCount: 102 })).toBe(19);
  });
});

test('an entry carries the moment of the press', () => {
  expect(pressed({ kind: 'loss', plants: 3, cause: 'rot' }, Date.UTC(2026, 10, 25, 9, 41))).toEqual({
    kind: 'loss',
    plants: 3,
    cause: 'rot',
    happenedAt: '2026-11-25T09:41:00.000Z',
    confirmed: false,
  });
});
