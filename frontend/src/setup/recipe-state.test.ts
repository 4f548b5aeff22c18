import { describe, expect, it } from 'vitest';
import type { CropRecipe, Phase, PhaseRecipe } from '../shared/climate-types';
import { bandPath, changesBetween, draftOf, mistPath, recipeOf } from './recipe-state';

const phase = (name: Phase): PhaseRecipe => ({
  phase: name,
  mediumC: { least: 20, most: 23.3 },
  dayAirC: { least: 20, most: 26.7 },
  nightAirC: { least: 20, most: 26.7 },
  humidityPercent: { least: 80, most: 90 },
  deficitKpa: { least: null, most: 0.53 },
  lightUmol: { least: 260, most: 300 },
  moistureLevel: { least: 4, most: 4 },
  mist: 'RUNNING',
  mediumEcMsPerCm: { least: null, most: 1.5 },
  nitrogenPpm: { least: 0, most: 50 },
});
const RECIPE: CropRecipe = {
  crop: 'bacopa',
  version: 3,
  recordedAt: '2026-11-20T08:00:00Z',
  mistNeed: 'MEDIUM',
  fullMistDays: 4,
  toneAfterDays: 7,
  lowLightMol: 5,
  lowLightMediumLeastC: 21,
  phases: [phase('STICKING'), phase('ROOTING')],
  note: null,
};

describe('a recipe that is typed', () => {
  it('goes back as it came when nothing was touched, in either degrees', () => {
    for (const unit of ['C', 'F'] as const)
      expect(recipeOf(draftOf(RECIPE, unit), RECIPE, unit)).toEqual({ recipe: RECIPE });
  });

  it('shows °F to the half degree and sends °C; 23.3 °C are 73.94 °F and 68 °F are 20 °C', () => {
    const draft = draftOf(RECIPE, 'F');
    expect(draft[bandPath(0, 'mediumC', 'most')]).toBe('74');
    const made = recipeOf({ ...draft, [bandPath(0, 'dayAirC', 'most')]: '77' }, RECIPE, 'F');
    expect('recipe' in made && made.recipe.phases[0]?.dayAirC).toEqual({ least: 20, most: 25 });
    expect('recipe' in made && made.recipe.phases[0]?.mediumC.most).toBe(23.3);
  });

  it('marks what is no number, what is needed and a band that is turned round', () => {
    const draft = {
      ...draftOf(RECIPE, 'C'),
      [bandPath(0, 'mediumC', 'least')]: 'warm',
      [bandPath(1, 'humidityPercent', 'most')]: '70',
      toneAfterDays: '',
    };
    const made = recipeOf(draft, RECIPE, 'C');
    expect('wrong' in made && Object.fromEntries(made.wrong)).toEqual({
      'phases.0.mediumC.least': 'number',
      'phases.1.humidityPercent.most': 'turned',
      toneAfterDays: 'needed',
    });
  });

  it('may open an end of a band', () => {
    const made = recipeOf({ ...draftOf(RECIPE, 'C'), [bandPath(1, 'humidityPercent', 'least')]: ' ' }, RECIPE, 'C');
    expect('recipe' in made && made.recipe.phases[1]?.humidityPercent).toEqual({ least: null, most: 90 });
  });
});

it('tells what is other than before', () => {
  const made = recipeOf({ ...draftOf(RECIPE, 'C'), [mistPath(1)]: 'NONE', fullMistDays: '5' }, RECIPE, 'C');
  expect('recipe' in made && changesBetween(RECIPE, made.recipe)).toEqual([
    { phase: undefined, what: 'fullMistDays', before: 4, after: 5 },
    { phase: 'ROOTING', what: 'mist', before: 'RUNNING', after: 'NONE' },
  ]);
  expect(changesBetween(RECIPE, RECIPE)).toEqual([]);
});
