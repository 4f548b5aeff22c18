import { useQuery } from '@tanstack/react-query';
import type { CropRecipe } from '../shared/climate-types';
import { answer, api } from '../shared/http';
import { keys } from '../shared/query-keys';
import { recipeInForce, whole } from '../shared/recipes';

/** In force now; common practice where none was saved. */
export function useRecipe(crop: string) {
  return useQuery({
    queryKey: keys.recipeInForce(crop),
    queryFn: ({ signal }) => recipeInForce(crop, signal),
  });
}

/** Everything that was saved, newest first. */
export function useRecipeVersions(crop: string) {
  return useQuery({
    queryKey: keys.recipeVersions(crop),
    queryFn: async ({ signal }) => {
      const saved = await answer(
        api.GET('/api/crops/{code}/recipe/versions', { params: { path: { code: crop } }, signal }),
      );
      return saved.map(whole).sort((a, b) => b.version - a.version);
    },
  });
}

/** Saves a new version; the same recipe again makes none. */
export async function saveRecipe(crop: string, recipe: CropRecipe): Promise<CropRecipe> {
  return whole(await answer(api.PUT('/api/crops/{code}/recipe', { params: { path: { code: crop } }, body: recipe })));
}
