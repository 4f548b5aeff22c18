import { describe, expect, it } from 'vitest';
import { cellsOf, DAY_FORMATS, decimalOf, decoded, formatsOf, headerOf, rowsOf, separatorOf } from './table-text-state';

describe('the cells of a table', () => {
  it('are cut as RFC 4180 wants it, without the mark of the byte order and without empty lines', () => {
    const text = '\uFEFFtime,"air, north",note\r\n\r\n2026-01-01, 21.5 ,"he said ""dry"""\r\n';
    expect(rowsOf(text, ',')).toEqual([
      ['time', 'air, north', 'note'],
      ['2026-01-01', '21.5', 'he said "dry"'],
    ]);
  });

  it('are read no further than asked', () => {
    expect(rowsOf('a\nb\nc', ',', 2)).toEqual([['a'], ['b']]);
  });

  it('are found by the name of their column, each name once', () => {
    const rows = rowsOf('t;a;a;\n1;2;;4\n5;;7;8', ';');
    expect(headerOf(rows)).toEqual(['t', 'a']);
    expect(cellsOf(rows, 'a')).toEqual(['2']);
    expect(cellsOf(rows, 'no such')).toEqual([]);
  });
});

describe('what a table tells by itself', () => {
  it('is its separator, also where commas stand in its numbers', () => {
    expect(separatorOf('time,air\n1,2')).toBe(',');
    expect(separatorOf('time;air;light\n1;21,5;3')).toBe(';');
    expect(separatorOf('Temp, C;Light, fc\n21,5;70,2')).toBe(';');
    expect(separatorOf('time\tair\n1\t2')).toBe('\t');
    expect(separatorOf('one')).toBe(',');
  });

  it('is its decimal sign', () => {
    expect(decimalOf(rowsOf('t;a\n1;21,5', ';'), ';')).toBe(',');
    expect(decimalOf(rowsOf('t;a\n1;21.5', ';'), ';')).toBe('.');
    expect(decimalOf(rowsOf('t,a\n1,"21,5"', ','), ',')).toBe('.');
  });

  it('is the form of its times, unless day and month could be either', () => {
    expect(formatsOf(['2026-03-09T08:05:00Z', '2026-03-09T08:10:00+01:00'])).toEqual(['offset']);
    expect(formatsOf(['2026-03-09T08:05'])).toEqual(['iso']);
    expect(formatsOf(['2026-03-09 08:05', '2026-03-09 08:05:30'])).toEqual(['yyyy-M-d H:mm[:ss]']);
    expect(formatsOf(['3/9/2026 8:05'])).toEqual(['d/M/yyyy H:mm[:ss]', 'M/d/yyyy H:mm[:ss]']);
    expect(formatsOf(['3/9/2026 8:05', '3/13/2026 8:05'])).toEqual(['M/d/yyyy H:mm[:ss]']);
    expect(formatsOf(['13/3/2026 8:05 PM'])).toEqual(['d/M/yyyy h:mm[:ss] a']);
    expect(formatsOf(['2026-03-09 08:05', 'power cut', '2026-03-09 08:15'])).toEqual(['yyyy-M-d H:mm[:ss]']);
    expect(formatsOf(['2026-03-09 08:05', 'no', 'none'])).toEqual([]);
    expect(formatsOf(['21.5'])).toEqual([]);
    expect(formatsOf([])).toEqual([]);
  });
});

it('tells the form of days, unless day and month could be either', () => {
  expect(formatsOf(['2026-03-09', '2026-3-10'], DAY_FORMATS)).toEqual(['yyyy-M-d']);
  expect(formatsOf(['3/9/2026', '3/10/2026'], DAY_FORMATS)).toEqual(['d/M/yyyy', 'M/d/yyyy']);
  expect(formatsOf(['3/9/2026', '3/13/2026'], DAY_FORMATS)).toEqual(['M/d/yyyy']);
  expect(formatsOf(['13/3/26'], DAY_FORMATS)).toEqual(['d/M/yy']);
  expect(formatsOf(['9.3.2026'], DAY_FORMATS)).toEqual(['d.M.yyyy']);
  expect(formatsOf(['soon'], DAY_FORMATS)).toEqual([]);
});

it('reads a file that an older program wrote', () => {
  expect(decoded(new Uint8Array([0xb0, 0x43]))).toBe('°C');
  expect(decoded(new TextEncoder().encode('°C'))).toBe('°C');
  expect(decoded(new Uint8Array([0xff, 0xfe, 0x41, 0x00]))).toBe('A');
});
