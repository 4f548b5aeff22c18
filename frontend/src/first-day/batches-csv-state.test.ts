import { describe, expect, it } from 'vitest';
import type { BatchCsvLine } from '../shared/api-types';
import { batchPlanFor, batchQuestionOf, inOrder, judged } from './batches-csv-state';

const SITE = { code: 'main' };
const HOUSE = { code: 'h1' };
const NEW = { sites: [SITE], houses: [HOUSE], varieties: [] };
const TEXT =
  'House,Crop,Variety,Tray,Trays,Stuck,Stage,Reached,Plants alive,Lot\n' +
  'House 1,Verbena,Dusk,105,12,3/2/2026,rooted,3/20/2026,1190,A7\n' +
  'House 2,Petunia,Noon,105,4,3/14/2026,callused,3/24/2026,,\n';

describe('the plan of a table of batches', () => {
  it('fills in what the names of its columns, its days and its stages tell', () => {
    expect(batchPlanFor(TEXT, NEW)).toEqual({
      separator: ',',
      dateFormat: 'M/d/yyyy',
      columns: {
        site: '',
        house: 'House',
        crop: 'Crop',
        variety: 'Variety',
        trayFormat: 'Tray',
        trays: 'Trays',
        stuckOn: 'Stuck',
        stage: 'Stage',
        reachedOn: 'Reached',
        alive: 'Plants alive',
        lot: 'Lot',
      },
      stages: { rooted: 'ROOT', callused: 'CALLUS' },
      site: 'main',
      house: '',
      makeMissing: true,
    });
  });

  it('reads Spanish names, and makes nothing where there are varieties already', () => {
    const text = 'Sitio;Nave;Variedad;Formato;Charolas;Pinchado;Etapa\nNorte;Nave 1;Dusk;105;3;2026-03-02;Raíces\n';
    const plan = batchPlanFor(text, { ...NEW, varieties: [{}] });
    expect(plan).toMatchObject({
      separator: ';',
      dateFormat: 'yyyy-M-d',
      columns: { site: 'Sitio', house: 'Nave', trays: 'Charolas', stuckOn: 'Pinchado' },
      stages: { Raíces: '' },
      site: '',
      makeMissing: false,
    });
  });

  it('leaves open what the table leaves open, and says so', () => {
    const text = 'Variety,Tray,Trays,When,Stage\nDusk,105,3,3/2/2026,blooming\n';
    const plan = batchPlanFor(text, { ...NEW, sites: [SITE, { code: 'south' }] });
    const made = batchQuestionOf(text, plan);
    expect('wrong' in made && Object.fromEntries(made.wrong)).toEqual({
      'columns.stuckOn': 'needed',
      'columns.site': 'needed',
      dateFormat: 'needed',
      'stages.blooming': 'needed',
    });
    // 3/2 may be either; the stuck column is chosen by hand.
    expect(judged(text, { ...plan, columns: { ...plan.columns, stuckOn: 'When' } }).dateFormat).toBe('');
    const both = { ...plan, columns: { ...plan.columns, stuckOn: 'Trays' } };
    const twice = batchQuestionOf(text, both);
    expect('wrong' in twice && twice.wrong.get('columns.stuckOn')).toBe('twice');
  });

  it('is asked with the columns that there are', () => {
    const made = batchQuestionOf(TEXT, batchPlanFor(TEXT, NEW));
    expect(made).toMatchObject({
      question: {
        csv: TEXT,
        separator: ',',
        dateFormat: 'M/d/yyyy',
        columns: { house: 'House', variety: 'Variety', alive: 'Plants alive' },
        stages: { rooted: 'ROOT', callused: 'CALLUS' },
        site: 'main',
        makeMissing: true,
      },
    });
    expect('question' in made && Object.keys(made.question.columns)).not.toContain('site');
    expect('question' in made && 'house' in made.question).toBe(false);
  });
});

it('a table of more than 500 batches is not asked', () => {
  const [header = '', line = ''] = TEXT.split('\n');
  const of = (lines: number) => [header, ...Array.from({ length: lines }, () => line)].join('\n');
  expect('question' in batchQuestionOf(of(500), { ...batchPlanFor(of(500), NEW), dateFormat: 'M/d/yyyy' })).toBe(true);
  const long = batchQuestionOf(of(501), batchPlanFor(of(501), NEW));
  expect('wrong' in long && Object.fromEntries(long.wrong)).toMatchObject({ csv: 'long' });
});

it('what is not taken is said first', () => {
  const line = (n: number, outcome: BatchCsvLine['outcome']) => ({ line: n, outcome }) as BatchCsvLine;
  const shown = inOrder([
    line(2, 'noted'),
    line(3, 'doubtful'),
    line(4, 'here'),
    line(6, 'refused'),
    line(5, 'refused'),
  ]);
  expect(shown.map((each) => each.line)).toEqual([5, 6, 4, 3, 2]);
});
