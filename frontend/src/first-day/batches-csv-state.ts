import type { BatchCsvLine, BatchCsvQuestion, BatchStage } from '../shared/api-types';
import { folded } from '../shared/loose-words';
import {
  cellsOf,
  DAY_FORMATS,
  formatsOf,
  headerOf,
  JUDGED_LINES,
  LARGEST_BYTES,
  rowsOf,
  separatorOf,
} from '../tables/table-text-state';

/**
 * How a table of batches is to be imported. What the table itself tells is filled in, from the names of its columns and
 * the words of its stages; what it leaves open is left to be chosen.
 */
export const COLUMNS = [
  { name: 'site', needed: false },
  { name: 'house', needed: false },
  { name: 'crop', needed: false },
  { name: 'variety', needed: true },
  { name: 'trayFormat', needed: true },
  { name: 'trays', needed: true },
  { name: 'stuckOn', needed: true },
  { name: 'stage', needed: false },
  { name: 'reachedOn', needed: false },
  { name: 'alive', needed: false },
  { name: 'lot', needed: false },
] as const satisfies readonly { name: keyof BatchCsvQuestion['columns']; needed: boolean }[];
export type ColumnName = (typeof COLUMNS)[number]['name'];

/** What people call these columns, in English and Spanish, without accents and in small letters. */
const CALLED: Readonly<Record<ColumnName, readonly string[]>> = {
  site: ['site', 'location', 'place', 'sitio', 'lugar'],
  house: ['house', 'greenhouse', 'gh', 'nave', 'invernadero'],
  crop: ['crop', 'species', 'genus', 'cultivo', 'especie', 'genero'],
  variety: ['variety', 'cultivar', 'variedad'],
  trayFormat: ['format', 'tray', 'tray format', 'tray size', 'cells', 'formato', 'formato de charola', 'celdas'],
  trays: ['trays', 'number of trays', 'no. of trays', 'charolas', 'numero de charolas'],
  stuckOn: [
    'stuck',
    'stuck on',
    'stuck date',
    'date stuck',
    'stick date',
    'plantado',
    'plantado el',
    'fecha de plantado',
    'pinchado',
    'fecha de pinchado',
    'siembra',
  ],
  stage: ['stage', 'stage reached', 'etapa', 'etapa alcanzada'],
  reachedOn: ['reached', 'reached on', 'stage date', 'date reached', 'fecha de etapa', 'alcanzada', 'alcanzada el'],
  alive: ['alive', 'plants alive', 'live plants', 'plants', 'vivas', 'plantas vivas', 'plantas'],
  lot: ['lot', 'lot number', 'supplier lot', 'lote', 'lote del proveedor'],
};

export const REACHED = ['STICK', 'CALLUS', 'ROOT', 'READY'] as const satisfies readonly BatchStage[];
export type Reached = (typeof REACHED)[number];

const STAGE_WORDS: Readonly<Record<Reached, readonly string[]>> = {
  STICK: ['stick', 'stuck', 'callusing', 'forming callus', 'plantado', 'pinchado', 'pinchada', 'formando callo'],
  CALLUS: ['callus', 'callused', 'rooting', 'forming roots', 'callo', 'con callo', 'formando raices'],
  ROOT: ['root', 'roots', 'rooted', 'filling', 'filling the cell', 'enraizado', 'enraizada', 'llenando la celda'],
  READY: ['ready', 'finished', 'listo', 'lista'],
};

export interface BatchPlan {
  readonly separator: string;
  readonly dateFormat: string;
  /** Name of a column, or empty. */
  readonly columns: Readonly<Record<ColumnName, string>>;
  /** What each word of the stage column means, or empty. */
  readonly stages: Readonly<Record<string, Reached | ''>>;
  /** Of lines that name none. */
  readonly site: string;
  readonly house: string;
  readonly makeMissing: boolean;
}

export type BatchPlanWrong = 'needed' | 'noTable' | 'large' | 'long' | 'twice';

/** So many batches are taken at once. */
const MOST_LINES = 500;

/** The one thing that there is, where there is one only. */
const only = (things: readonly { readonly code: string }[]) => (things.length === 1 ? (things[0]?.code ?? '') : '');

export interface Known {
  readonly sites: readonly { readonly code: string }[];
  readonly houses: readonly { readonly code: string }[];
  readonly varieties: readonly unknown[];
}

/** The plan that `text` itself tells. A business without a variety has nothing that a slip could miss, so it makes them. */
export function batchPlanFor(text: string, known: Known, separator: string = separatorOf(text)): BatchPlan {
  const header = headerOf(rowsOf(text, separator, 1));
  const columns = {} as Record<ColumnName, string>;
  for (const { name } of COLUMNS)
    columns[name] =
      header.find((each) => CALLED[name].includes(folded(each)) && !Object.values(columns).includes(each)) ?? '';
  const plan = {
    separator,
    dateFormat: '',
    columns,
    stages: {},
    site: columns.site ? '' : only(known.sites),
    house: columns.house ? '' : only(known.houses),
    makeMissing: known.varieties.length === 0,
  };
  return judged(text, plan);
}

/** `plan` with the form of its days and the words of its stages, as the columns that were chosen tell them. */
export function judged(text: string, plan: BatchPlan): BatchPlan {
  const rows = rowsOf(text, plan.separator, JUDGED_LINES);
  const days = [plan.columns.stuckOn, plan.columns.reachedOn].flatMap((name) => (name ? cellsOf(rows, name) : []));
  const formats = formatsOf(days, DAY_FORMATS);
  const words = [...new Set(plan.columns.stage ? cellsOf(rows, plan.columns.stage) : [])];
  return {
    ...plan,
    dateFormat: plan.dateFormat || (formats.length === 1 ? (formats[0] ?? '') : ''),
    stages: Object.fromEntries(words.map((word) => [word, plan.stages[word] || meant(word)])),
  };
}

function meant(word: string): Reached | '' {
  return REACHED.find((stage) => STAGE_WORDS[stage].includes(folded(word))) ?? '';
}

/** What to ask of the server; or what is wrong, by path. */
export function batchQuestionOf(
  text: string,
  plan: BatchPlan,
): { readonly question: BatchCsvQuestion } | { readonly wrong: ReadonlyMap<string, BatchPlanWrong> } {
  const wrong = new Map<string, BatchPlanWrong>();
  if (text.length > LARGEST_BYTES) wrong.set('csv', 'large');
  else if (rowsOf(text, plan.separator, 2).length < 2) wrong.set('csv', 'noTable');
  else if (rowsOf(text, plan.separator, MOST_LINES + 2).length > MOST_LINES + 1) wrong.set('csv', 'long');
  for (const { name, needed } of COLUMNS) {
    const column = plan.columns[name];
    if (needed && !column) wrong.set(`columns.${name}`, 'needed');
    if (column && COLUMNS.some((other) => other.name !== name && plan.columns[other.name] === column))
      wrong.set(`columns.${name}`, 'twice');
  }
  if (!plan.columns.site && !plan.site) wrong.set('columns.site', 'needed');
  if (!plan.columns.house && !plan.house) wrong.set('columns.house', 'needed');
  if (!plan.dateFormat) wrong.set('dateFormat', 'needed');
  for (const [word, stage] of Object.entries(plan.stages)) if (!stage) wrong.set(`stages.${word}`, 'needed');
  if (wrong.size > 0) return { wrong };
  const { columns } = plan;
  const question: BatchCsvQuestion = {
    csv: text,
    separator: plan.separator,
    dateFormat: plan.dateFormat,
    columns: {
      ...Object.fromEntries(COLUMNS.flatMap(({ name }) => (columns[name] ? [[name, columns[name]]] : []))),
      variety: columns.variety,
      trayFormat: columns.trayFormat,
      trays: columns.trays,
      stuckOn: columns.stuckOn,
    },
    stages: plan.stages as Readonly<Record<string, Reached>>,
    ...(plan.site ? { site: plan.site } : {}),
    ...(plan.house ? { house: plan.house } : {}),
    makeMissing: plan.makeMissing,
  };
  const bytes = new TextEncoder().encode(JSON.stringify(question)).length;
  return bytes > LARGEST_BYTES ? { wrong: new Map([['csv', 'large']]) } : { question };
}

const ORDER = ['refused', 'here', 'doubtful', 'noted'] as const satisfies readonly BatchCsvLine['outcome'][];

/** What is not taken first, then what is doubted; within that as the table has them. */
export function inOrder(lines: readonly BatchCsvLine[]): readonly BatchCsvLine[] {
  return [...lines].sort((a, b) => ORDER.indexOf(a.outcome) - ORDER.indexOf(b.outcome) || a.line - b.line);
}
