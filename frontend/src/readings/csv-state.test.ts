import { describe, expect, it } from 'vitest';
import type { Sensor } from '../shared/climate-types';
import type { CsvLine } from '../shared/reading-types';
import { grouped, planFor, questionOf, usualZone, withColumn, withSeparator, withTimeColumn } from './csv-state';

const AIR: Sensor = {
  code: 'north-air',
  house: 'h1',
  quantity: 'air-temperature',
  unit: '[degF]',
  topic: 'range/1/air',
};
const ZONE = 'America/New_York';
const TEXT = 'when,north-air,extra\n2026-11-20 08:00,70.5,1\n2026-11-20 08:10,70.6,2\n';

describe('the plan of a table', () => {
  it('fills in what the table tells and takes a column with the name or topic of a sensor', () => {
    expect(planFor(TEXT, [AIR], ZONE)).toMatchObject({
      separator: ',',
      decimal: '.',
      timeColumn: 'when',
      timeFormat: 'yyyy-M-d H:mm[:ss]',
      zone: ZONE,
      columns: { 'north-air': { kind: 'sensor', sensor: 'north-air' }, extra: { kind: 'none' } },
    });
    expect(planFor('t;Range/1/Air\n2026-11-20T08:00Z;1', [AIR], '').columns['Range/1/Air']?.sensor).toBe('north-air');
  });

  it('leaves open whether the day or the month comes first', () => {
    const plan = planFor('when,a\n03/09/2026 08:00,1', [], ZONE);
    expect(plan).toMatchObject({ timeColumn: 'when', timeFormat: '' });
  });

  it('keeps what was chosen for columns that another separator leaves', () => {
    const plan = withColumn(planFor('t,a;b\n1,2;3', [], ZONE, ','), 't', { kind: 'house', house: 'h1' });
    expect(withSeparator(plan, 't,a;b\n1,2;3', [], ',').columns['t']?.house).toBe('h1');
    expect(Object.keys(withSeparator(plan, 't,a;b\n1,2;3', [], ';').columns)).toEqual(['t,a', 'b']);
  });

  it('finds the form of times anew for another column', () => {
    const text = 'a,b\n2026-11-20 08:00,2026-11-20T08:00:00Z';
    expect(withTimeColumn(planFor(text, [], ZONE), text, 'b')).toMatchObject({ timeColumn: 'b', timeFormat: 'offset' });
  });

  it('takes the unit of a quantity that comes in one only', () => {
    const plan = withColumn(planFor(TEXT, [], ZONE), 'extra', { kind: 'house', quantity: 'relative-humidity' });
    expect(plan.columns['extra']?.unit).toBe('%');
  });

  it('is in the zone of the sites if they share one', () => {
    const site = (code: string, timeZone: string) => ({ code, name: code, timeZone, shipDay: 'MONDAY' }) as const;
    const sites = [site('a', ZONE), site('b', ZONE), site('c', 'America/Chicago')];
    expect(usualZone(sites, undefined)).toBe('');
    expect(usualZone(sites, 'c')).toBe('America/Chicago');
    expect(usualZone(sites.slice(0, 2), undefined)).toBe(ZONE);
  });
});

describe('what is asked', () => {
  it('names the sensor, or house, quantity and unit, and leaves out what is not taken', () => {
    const plan = withColumn(planFor(TEXT, [AIR], ZONE), 'extra', {
      kind: 'house',
      house: 'h1',
      quantity: 'light',
      unit: 'lm/[sft_i]',
    });
    expect(questionOf(TEXT, plan)).toEqual({
      question: {
        csv: TEXT,
        separator: ',',
        decimal: '.',
        timeColumn: 'when',
        timeFormat: 'yyyy-M-d H:mm[:ss]',
        zone: ZONE,
        columns: [
          { column: 'north-air', sensor: 'north-air' },
          { column: 'extra', house: 'h1', quantity: 'light', unit: 'lm/[sft_i]' },
        ],
      },
    });
  });

  it('has no zone where each time carries its offset', () => {
    const text = 'when,north-air\n2026-11-20T08:00:00Z,70';
    const made = questionOf(text, planFor(text, [AIR], ''));
    expect('question' in made && made.question).not.toHaveProperty('zone');
    expect('question' in made && made.question).not.toHaveProperty('timeFormat');
  });

  it('is not asked while something is missing or wrong, each named where it is', () => {
    const text = 'when;a\n03/09/2026 08:00;21,5';
    const plan = withColumn({ ...planFor(text, [], ''), separator: ';', decimal: ';' }, 'a', {
      kind: 'house',
      quantity: 'light',
      unit: 'Cel',
    });
    const made = questionOf(text, plan);
    expect('wrong' in made && Object.fromEntries(made.wrong)).toEqual({
      decimal: 'sameSign',
      timeFormat: 'needed',
      zone: 'needed',
      'columns.0.house': 'needed',
      'columns.0.unit': 'unit',
    });
  });

  it('is not asked when it is more than a request holds, counted as it is sent', () => {
    const lines = (n: number) => 'when,north-air\n' + '2026-11-20T08:00:00Z,70\n'.repeat(n);
    const plan = planFor(lines(1), [AIR], '');
    // 24 characters a line, and one more for the escaped line end: 4 194 304 bytes hold 167 772 lines at most.
    expect('question' in questionOf(lines(167_000), plan)).toBe(true);
    const made = questionOf(lines(168_000), plan);
    expect('wrong' in made && Object.fromEntries(made.wrong)).toEqual({ csv: 'large' });
  });

  it('wants a table with a line below its header, and a column to take', () => {
    const made = questionOf('when,a', planFor('when,a', [], ZONE));
    expect('wrong' in made && Object.fromEntries(made.wrong)).toMatchObject({ csv: 'noTable', columns: 'noColumn' });
  });
});

describe('what came of it', () => {
  const line = (at: number, outcome: CsvLine['outcome'], kind: string, column: string | null): CsvLine => ({
    line: at,
    column,
    outcome,
    kind,
    why: { code: 'unreadable', values: {}, english: '' },
  });

  it('is told together where the same is to be said, what is not taken first', () => {
    const groups = grouped([
      line(2, 'flagged', 'spike', 'a'),
      line(3, 'refused', 'unreadable', 'a'),
      line(4, 'refused', 'unreadable', 'b'),
      line(5, 'refused', 'unreadable', 'b'),
      line(6, 'set-aside', 'range', 'a'),
    ]);
    expect(groups.map(({ outcome, column, lines }) => `${outcome} ${column} ${lines.length}`)).toEqual([
      'refused b 2',
      'refused a 1',
      'set-aside a 1',
      'flagged a 1',
    ]);
  });
});
