import type { Band, CropRecipe, MistRegime, PhaseRecipe } from '../shared/climate-types';
import { limitShown, numberTyped, round, shownAs, typedAs, type Measure, type TemperatureUnit } from '../shared/units';

/**
 * A recipe as the texts of its form, in the reader's degrees, and what is sent. A text that was not touched is sent back
 * exactly as stored; what is typed is never bent to a limit. Limits are the server's to know.
 */
export const BANDS = [
  { name: 'mediumC', measure: 'temperature', unit: '°C' },
  { name: 'dayAirC', measure: 'temperature', unit: '°C' },
  { name: 'nightAirC', measure: 'temperature', unit: '°C' },
  { name: 'humidityPercent', measure: 'other', unit: '%' },
  { name: 'deficitKpa', measure: 'other', unit: 'kPa' },
  { name: 'lightUmol', measure: 'light', unit: 'µmol/m²/s' },
  { name: 'moistureLevel', measure: 'other', unit: '1–5' },
  { name: 'mediumEcMsPerCm', measure: 'other', unit: 'mS/cm' },
  { name: 'nitrogenPpm', measure: 'other', unit: 'ppm' },
] as const satisfies readonly { name: keyof PhaseRecipe; measure: Measure; unit: string }[];
export type BandName = (typeof BANDS)[number]['name'];

export const MIST: readonly MistRegime[] = ['RUNNING', 'WEANING', 'NIGHT_OFF', 'NONE'];
export const MIST_NEEDS = ['LIGHT', 'MEDIUM', 'HEAVY'] as const;

export const WHOLE = [
  { name: 'fullMistDays', measure: 'other' },
  { name: 'toneAfterDays', measure: 'other' },
  { name: 'lowLightMol', measure: 'other' },
  { name: 'lowLightMediumLeastC', measure: 'temperature' },
] as const satisfies readonly { name: keyof CropRecipe; measure: Measure }[];

export type RecipeDraft = Readonly<Record<string, string>>;
export type RecipeFault = 'needed' | 'number' | 'turned';

const END = ['least', 'most'] as const;
export const bandPath = (phase: number, band: BandName, end: (typeof END)[number]) => `phases.${phase}.${band}.${end}`;
export const mistPath = (phase: number) => `phases.${phase}.mist`;

/** A limit of a recipe as its reader likes to see it. */
export function figureShown(measure: Measure, value: number, unit: TemperatureUnit): number {
  return measure === 'temperature' ? limitShown(value, unit) : round(shownAs(measure, value, unit), 2);
}

export function draftOf(recipe: CropRecipe, unit: TemperatureUnit): RecipeDraft {
  const shown = (value: number | null, measure: Measure) =>
    value === null ? '' : String(figureShown(measure, value, unit));
  const draft: Record<string, string> = { mistNeed: recipe.mistNeed, note: recipe.note ?? '' };
  for (const { name, measure } of WHOLE) draft[name] = shown(recipe[name], measure);
  recipe.phases.forEach((phase, i) => {
    draft[mistPath(i)] = phase.mist;
    for (const { name, measure } of BANDS)
      for (const end of END) draft[bandPath(i, name, end)] = shown(phase[name][end], measure);
  });
  return draft;
}

/** What to send for `draft`, which began as `recipe`; or what is wrong, by path. */
export function recipeOf(
  draft: RecipeDraft,
  recipe: CropRecipe,
  unit: TemperatureUnit,
): { readonly recipe: CropRecipe } | { readonly wrong: ReadonlyMap<string, RecipeFault> } {
  const began = draftOf(recipe, unit);
  const wrong = new Map<string, RecipeFault>();
  const read = (path: string, stored: number | null, measure: Measure): number | null => {
    const text = draft[path] ?? '';
    if (text === began[path]) return stored;
    if (text.trim() === '') return null;
    const value = numberTyped(text);
    if (value === undefined) wrong.set(path, 'number');
    return value === undefined ? null : typedAs(measure, value, unit);
  };
  const phases = recipe.phases.map((phase, i) => {
    const bands = BANDS.map(({ name, measure }): [BandName, Band] => {
      const [low, high] = [bandPath(i, name, 'least'), bandPath(i, name, 'most')];
      const band = {
        least: read(low, phase[name].least, measure),
        most: read(high, phase[name].most, measure),
      };
      if (wrong.has(low) || wrong.has(high)) return [name, band];
      if (band.least !== null && band.most !== null && band.least > band.most) wrong.set(high, 'turned');
      return [name, band];
    });
    return { ...phase, ...Object.fromEntries(bands), mist: (draft[mistPath(i)] ?? phase.mist) as MistRegime };
  });
  const figures = WHOLE.map(({ name, measure }) => {
    const value = read(name, recipe[name], measure);
    if (value === null && !wrong.has(name)) wrong.set(name, 'needed');
    return [name, value];
  });
  if (wrong.size > 0) return { wrong };
  const note = (draft['note'] ?? '').trim();
  return {
    recipe: {
      ...recipe,
      ...(Object.fromEntries(figures) as Pick<CropRecipe, (typeof WHOLE)[number]['name']>),
      mistNeed: (draft['mistNeed'] ?? recipe.mistNeed) as CropRecipe['mistNeed'],
      phases,
      note: note === '' ? null : note,
    },
  };
}

/** One value of a recipe that is another than before. */
export interface RecipeChange {
  readonly phase: PhaseRecipe['phase'] | undefined;
  readonly what: BandName | 'mist' | 'mistNeed' | 'note' | (typeof WHOLE)[number]['name'];
  readonly before: Band | number | string | null;
  readonly after: Band | number | string | null;
}

export function changesBetween(before: CropRecipe, after: CropRecipe): readonly RecipeChange[] {
  const changes: RecipeChange[] = [];
  const note = (
    phase: RecipeChange['phase'],
    what: RecipeChange['what'],
    was: RecipeChange['before'],
    is: typeof was,
  ) => {
    if (JSON.stringify(was) !== JSON.stringify(is)) changes.push({ phase, what, before: was, after: is });
  };
  note(undefined, 'mistNeed', before.mistNeed, after.mistNeed);
  for (const { name } of WHOLE) note(undefined, name, before[name], after[name]);
  after.phases.forEach((phase, i) => {
    const was = before.phases[i] ?? phase;
    for (const { name } of BANDS) note(phase.phase, name, was[name], phase[name]);
    note(phase.phase, 'mist', was.mist, phase.mist);
  });
  note(undefined, 'note', before.note, after.note);
  return changes;
}
