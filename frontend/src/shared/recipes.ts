import type { CropRecipe } from './climate-types';
import type { Schemas } from './contract';
import { answer, api } from './http';

/** A recipe that is sent may leave members out and has the same schema; one that is answered has them all. */
export const whole = (recipe: Schemas['RecipeWire']): CropRecipe => recipe as CropRecipe;

export async function recipeInForce(crop: string, signal: AbortSignal): Promise<CropRecipe> {
  return whole(await answer(api.GET('/api/crops/{code}/recipe', { params: { path: { code: crop } }, signal })));
}
