import { describe, expect, it } from 'vitest';
import type { Sensor } from '../shared/climate-types';
import type { CsvLine } from '../shared/reading-types';
import {
  firstTime,
  grouped,
  planFor,
  questionOf,
  SITE_CLOCKS,
  withColumn,
  withSeparator,
  withTimeColumns,
} from './csv-state';

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
    expect(planFor(TEXT, [AIR], [])).toMatchObject({
      separator: ',',
      decimal: '.',
      timeColumn: 'when',
      timeFormat: 'yyyy-M-d H:mm[:ss]',
      zone: SITE_CLOCKS,
      clockColumn: '',
      nameColumn: '',
      columns: { 'north-air': { kind: 'sensor', sensor: 'north-air' }, extra: { kind: 'none' } },
    });
    expect(planFor('t;Range/1/Air\n2026-11-20T08:00Z;1', [AIR], []).columns['Range/1/Air']?.sensor).toBe('north-air');
  });

  it('leaves open whether the day or the month comes first', () => {
    const plan = planFor('when,a\n03/09/2026 08:00,1', [], []);
    expect(plan).toMatchObject({ timeColumn: 'when', timeFormat: '' });
  });

  it('keeps what was chosen for columns that another separator leaves', () => {
    const plan = withColumn(planFor('t,a;b\n1,2;3', [], [], ','), 't', { kind: 'house', house: 'h1' });
    expect(withSeparator(plan, 't,a;b\n1,2;3', [], [], ',').columns['t']?.house).toBe('h1');
    expect(Object.keys(withSeparator(plan, 't,a;b\n1,2;3', [], [], ';').columns)).toEqual(['t,a', 'b']);
  });

  it('finds the form of times anew for another column', () => {
    const text = 'a,b\n2026-11-20 08:00,2026-11-20T08:00:00Z';
    expect(withTimeColumns(planFor(text, [], []), text, { timeColumn: 'b' })).toMatchObject({
      timeColumn: 'b',
      timeFormat: 'offset',
    });
  });

  it('takes the unit of a quantity that comes in one only', () => {
    const plan = withColumn(planFor(TEXT, [], []), 'extra', { kind: 'house', quantity: 'relative-humidity' });
    expect(plan.columns['extra']?.unit).toBe('%');
  });

  it('finds the day in one column and the time of day in another, and shows them together', () => {
    const text = 'day;hour;air\n3/13/2026;8:05 AM;70\n3/13/2026;8:15 PM;71\n';
    const plan = planFor(text, [], []);
    expect(plan).toMatchObject({
      timeColumn: 'day',
      timeFormat: 'M/d/yyyy',
      clockColumn: 'hour',
      clockFormat: 'h:mm[:ss] a',
    });
    expect(firstTime(plan, text)).toBe('3/13/2026 8:05 AM');
    expect(withTimeColumns(plan, text, { clockColumn: '' })).toMatchObject({ clockFormat: '', timeFormat: '' });
  });

  it('leaves open of a day in its own column whether the day or the month comes first', () => {
    expect(planFor('d,c,a\n3/9/2026,8:05,1', [], [])).toMatchObject({ clockColumn: 'c', timeFormat: '' });
  });

  it('knows a column whose every cell names a house or a sensor', () => {
    const house = { code: 'h1', site: 's', name: 'North house' };
    expect(planFor('t,who,v\n2026-11-20T08:00,north HOUSE,1\n2026-11-20T08:00,h1,1', [], [house])).toMatchObject({
      nameColumn: 'who',
      names: 'house',
    });
    expect(planFor('t,who,v\n2026-11-20T08:00,north-air,1', [AIR], [house])).toMatchObject({
      nameColumn: 'who',
      names: 'sensor',
    });
    expect(planFor('t,who,v\n2026-11-20T08:00,h1,1\n2026-11-20T08:00,h2,1', [], [house]).nameColumn).toBe('');
  });
});

describe('what is asked', () => {
  it('names the sensor, or house, quantity and unit, and leaves out what is not taken', () => {
    const plan = withColumn(planFor(TEXT, [AIR], []), 'extra', {
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
        clockOfSite: true,
        columns: [
          { column: 'north-air', sensor: 'north-air' },
          { column: 'extra', house: 'h1', quantity: 'light', unit: 'lm/[sft_i]' },
        ],
      },
    });
  });

  it('joins the forms of day and time of day with a blank, and takes a zone given by hand for all', () => {
    const text = 'day,clock,north-air\n2026-03-13,8:05,70\n';
    const made = questionOf(text, { ...planFor(text, [AIR], []), zone: ZONE });
    expect('question' in made && made.question).toMatchObject({
      timeColumn: 'day',
      clockColumn: 'clock',
      timeFormat: 'yyyy-M-d H:mm[:ss]',
      zone: ZONE,
    });
    expect('question' in made && made.question).not.toHaveProperty('clockOfSite');
  });

  it('says of a long table which column names the house, and of its numbers quantity and unit alone', () => {
    const text = 't,who,v\n2026-11-20T08:00,h1,21\n';
    const found = planFor(text, [], [{ code: 'h1', site: 's', name: 'North house' }]);
    const plan = withColumn(found, 'v', { kind: 'line', quantity: 'light', unit: 'lx' });
    const made = questionOf(text, plan);
    expect('question' in made && made.question).toMatchObject({
      houseColumn: 'who',
      columns: [{ column: 'v', quantity: 'light', unit: 'lx' }],
    });
    const bySensor = questionOf(text, { ...plan, names: 'sensor' });
    expect('question' in bySensor && bySensor.question).toMatchObject({
      sensorColumn: 'who',
      columns: [{ column: 'v' }],
    });
    const wide = questionOf(text, { ...plan, nameColumn: '' });
    expect('wrong' in wide && Object.fromEntries(wide.wrong)).toEqual({ columns: 'noColumn' });
  });

  it('has no zone where each time carries its offset', () => {
    const text = 'when,north-air\n2026-11-20T08:00:00Z,70';
    const made = questionOf(text, planFor(text, [AIR], []));
    expect('question' in made && made.question).not.toHaveProperty('zone');
    expect('question' in made && made.question).not.toHaveProperty('timeFormat');
  });

  it('is not asked while something is missing or wrong, each named where it is', () => {
    const text = 'when;a\n03/09/2026 08:00;21,5';
    const plan = withColumn({ ...planFor(text, [], []), separator: ';', decimal: ';' }, 'a', {
      kind: 'house',
      quantity: 'light',
      unit: 'Cel',
    });
    const made = questionOf(text, plan);
    expect('wrong' in made && Object.fromEntries(made.wrong)).toEqual({
      decimal: 'sameSign',
      timeFormat: 'needed',
      'columns.0.house': 'needed',
      'columns.0.unit': 'unit',
    });
  });

  it('is not asked when it is more than a request holds, counted as it is sent', () => {
    const lines = (n: number) => 'when,north-air\n' + '2026-11-20T08:00:00Z,70\n'.repeat(n);
    const plan = planFor(lines(1), [AIR], []);
    // 24 characters a line, and one more for the escaped line end: 4 194 304 bytes hold 167 772 lines at most.
    expect('question' in questionOf(lines(167_000), plan)).toBe(true);
    const made = questionOf(lines(168_000), plan);
    expect('wrong' in made && Object.fromEntries(made.wrong)).toEqual({ csv: 'large' });
  });

  it('wants a table with a line below its header, and a column to take', () => {
    const made = questionOf('when,a', planFor('when,a', [], []));
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
