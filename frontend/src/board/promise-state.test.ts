import { describe, expect, it } from 'vitest';
import {
  besideWeek,
  draftFor,
  isHalfTyped,
  lineOf,
  orderOf,
  shortOf,
  withLine,
  withOneMore,
  withoutLine,
} from './promise-state';
import { short } from './short-lines';

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
    expect(lineOf(two, short(2, { ...ITEM, asked: 1 }))?.id).toBe(3);
    expect(two.lines.map((line) => shortOf(two, line, [short(2, { ...ITEM, asked: 1 })])?.line)).toEqual([
      undefined,
      2,
    ]);
  });
});

describe('a half-typed order', () => {
  it('stays as typed when the week beside it changes, but for a date that nobody touched', () => {
    const more = withLine(withOneMore(filled), 2, { trays: '3' });
    expect(besideWeek(more, '2026-12-07')).toEqual({
      ...more,
      proposed: '2026-12-07',
      lines: [{ ...more.lines[0], shipOn: '2026-12-07' }, more.lines[1]],
    });

    const dated = withLine(filled, 1, { shipOn: '2026-12-02' });
    expect(besideWeek(dated, '2026-12-07').lines).toEqual(dated.lines);
    expect(besideWeek(besideWeek(filled, '2026-12-07'), '2026-11-30')).toEqual(filled);
  });

  it('is one with anything typed, chosen or added', () => {
    const fresh = draftFor(ITEM, '2026-11-30', '90 %');
    expect(isHalfTyped(fresh)).toBe(false);
    expect(isHalfTyped({ ...fresh, customer: ' ' })).toBe(false);
    for (const typed of [
      { ...fresh, customer: 'G' },
      { ...fresh, note: 'by noon' },
      withLine(fresh, 1, { trays: '4' }),
      withLine(fresh, 1, { shipOn: '2026-12-02' }),
      withOneMore(fresh),
    ]) {
      expect(isHalfTyped(typed)).toBe(true);
    }
  });
});
