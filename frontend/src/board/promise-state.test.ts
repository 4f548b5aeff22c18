import { describe, expect, it } from 'vitest';
import { draftFor, lineOf, orderOf, withLine, withOneMore, withoutLine } from './promise-state';

const ITEM = { variety: 'v', trayFormat: '72', site: 'north' };
const filled = { ...withLine(draftFor(ITEM, '2026-11-30', '90 %'), 1, { trays: '12' }), customer: ' Garden Row ' };

describe('a promise', () => {
  it('is sent as one order with the cell’s item and date', () => {
    expect(orderOf(filled)).toEqual({
      order: { customer: 'Garden Row', confidence: 0.9, lines: [{ ...ITEM, shipOn: '2026-11-30', trays: 12 }] },
    });
  });

  it.each([['0'], ['-3'], ['1.5'], ['x'], ['']])('with "%s" trays names the field and keeps the text', (trays) => {
    const draft = withLine(filled, 1, { trays });
    expect(orderOf(draft)).toEqual({ faults: new Set(['trays-1']) });
    expect(draft.lines[0]?.trays).toBe(trays);
  });

  it('names every wrong field at once', () => {
    const draft = { ...draftFor(ITEM, '2026-11-30', '150'), customer: '  ' };
    expect(orderOf(withLine(draft, 1, { shipOn: '' }))).toEqual({
      faults: new Set(['customer', 'confidence', 'trays-1', 'shipOn-1']),
    });
  });

  it('finds the line a shortfall speaks of after one before it was removed', () => {
    const three = withOneMore(withOneMore(filled));
    const two = withoutLine(three, 2);
    expect(
      lineOf(two, { ...ITEM, shipOn: '', trays: 1, line: 2, asked: 1, open: 0, nearestDate: null, nearestOpen: null })
        ?.id,
    ).toBe(3);
  });
});
