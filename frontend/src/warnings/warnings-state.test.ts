import { describe, expect, test } from 'vitest';
import { WARNING_KINDS, type WarningView } from '../shared/climate-types';
import { warningsMessages } from './warnings-messages';
import {
  byHouse,
  filterFrom,
  paramsFor,
  settlingItems,
  shownWarnings,
  spokenAs,
  undelivered,
  unseen,
} from './warnings-state';

const warning = (id: string, state: WarningView['state'], since: string): WarningView => ({
  id,
  kind: 'medium-cold',
  site: 'north',
  house: 'n-1',
  batch: null,
  quantity: null,
  state,
  since,
  raisedAt: since,
  until: null,
  worst: 17.2,
  limit: 20,
  unit: 'Cel',
  batches: [],
  settledBy: [],
  text: '',
  acknowledgedAt: null,
  acknowledgedBy: null,
  acknowledgement: null,
  deliveries: [],
});
const all = [
  warning('ended', 'ended', '2026-11-25T10:00:00Z'),
  warning('seen', 'acknowledged', '2026-11-25T09:00:00Z'),
  warning('older', 'lasting', '2026-11-24T09:00:00Z'),
  warning('newer', 'lasting', '2026-11-25T08:00:00Z'),
];

test('what nobody has seen comes first, the newest first, and what ended only in the log', () => {
  expect(shownWarnings(all, 'open').map(({ id }) => id)).toEqual(['newer', 'older', 'seen']);
  expect(shownWarnings(all, 'all').map(({ id }) => id)).toEqual(['newer', 'older', 'seen', 'ended']);
});

test('houses stand in the order of what cannot wait, each with all of its own', () => {
  const of = (id: string, house: string, kind: WarningView['kind']) => ({
    ...warning(id, 'lasting', '2026-11-25T08:00:00Z'),
    house,
    kind,
  });
  const shown = shownWarnings(
    [of('traps', 'n-1', 'scouting-missed'), of('wet', 'n-1', 'air-wet'), of('dry', 'n-2', 'dry-down')],
    'open',
  );

  expect(byHouse(shown).map(({ house, warnings }) => [house, warnings.map(({ id }) => id)])).toEqual([
    ['n-2', ['dry']],
    ['n-1', ['wet', 'traps']],
  ]);
});

test('a warning is settled by the open checks of what it is about, and by no others', () => {
  const item = (
    task: 'scouting' | 'moisture-check' | 'mist-off',
    house: string,
    batch: string | null,
    state: 'due' | 'done' = 'due',
  ) => ({ task, house, batch, state }) as const;
  const walk = item('scouting', 'n-1', null);
  const look = item('moisture-check', 'n-1', 'B1');
  const off = item('mist-off', 'n-1', 'B1');
  const items = [walk, look, off, item('scouting', 'n-2', null), item('moisture-check', 'n-1', 'B2')];
  const base = { house: 'n-1', batch: null, batches: ['B1'] };

  expect(settlingItems({ ...base, settledBy: ['scouting'] }, items)).toEqual([walk]);
  expect(settlingItems({ ...base, settledBy: ['moisture-check'] }, items)).toEqual([look]);
  expect(settlingItems({ ...base, batch: 'B1', settledBy: ['wean-mist', 'mist-off'] }, items)).toEqual([off]);
  expect(settlingItems({ ...base, settledBy: ['scouting'] }, [item('scouting', 'n-1', null, 'done')])).toEqual([]);
});

test('the bell counts what lasts and nobody has seen', () => {
  expect(unseen(all)).toBe(2);
});

test('figures are said in the words of their unit, and a new unit is not guessed at', () => {
  expect(spokenAs('Cel')).toBe('medium-temperature');
  expect(spokenAs('furlong')).toBeUndefined();
  expect(spokenAs(null)).toBeUndefined();
});

describe('the address', () => {
  test('carries house and scope and leaves the site alone', () => {
    const params = new URLSearchParams('site=north&house=n-1&scope=all');
    expect(filterFrom(params)).toEqual({ site: 'north', house: 'n-1', scope: 'all' });
    expect(paramsFor({ site: 'north', house: undefined, scope: 'open' }, params).toString()).toBe('site=north');
  });
});

test('a letter that failed and is still to be delivered is named', () => {
  const delivery = { channel: 'mail', dueAt: '', attempts: 2, lastError: 'no answer', deliveredAt: null };
  expect(undelivered({ deliveries: [delivery, { ...delivery, channel: 'hook', deliveredAt: 'x' }] })).toEqual(['mail']);
});

describe('what to do', () => {
  test('about dry and wet air names what hands can do where nothing makes fog', () => {
    expect(warningsMessages.en['todo-dry-down']).toMatch(/by hand: wet the floor and the ground.*plastic tunnels/);
    expect(warningsMessages.es['todo-dry-down']).toMatch(/a mano: moje el piso y la tierra.*túneles/);
    for (const wet of ['todo-over-misting', 'todo-air-wet'] as const) {
      expect(warningsMessages.en[wet]).toMatch(/plastic tunnels.*floor/);
    }
  });

  test('is said of every warning in both languages, and never the same', () => {
    for (const words of [warningsMessages.en, warningsMessages.es]) {
      const said = WARNING_KINDS.map((kind) => words[`todo-${kind}`]);
      expect(new Set(said).size).toBe(WARNING_KINDS.length);
      expect(said.every((each) => each.endsWith('.'))).toBe(true);
    }
  });
});
