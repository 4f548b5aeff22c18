import { useQuery } from '@tanstack/react-query';
import type { CropRecipe } from '../shared/climate-types';
import { at, getJson, putJson } from '../shared/http';
import { keys } from '../shared/query-keys';

/** In force now; common practice where none was saved. */
export function useRecipe(crop: string) {
  return useQuery({
    queryKey: keys.recipeInForce(crop),
    queryFn: ({ signal }) => getJson<CropRecipe>(at`/crops/${crop}/recipe`, undefined, signal),
  });
}

/** Everything that was saved, newest first. */
export function useRecipeVersions(crop: string) {
  return useQuery({
    queryKey: keys.recipeVersions(crop),
    queryFn: async ({ signal }) => {
      const saved = await getJson<readonly CropRecipe[]>(at`/crops/${crop}/recipe/versions`, undefined, signal);
      return [...saved].sort((a, b) => b.version - a.version);
    },
  });
}

/** Saves a new version; the same recipe again makes none. */
export function saveRecipe(crop: string, recipe: CropRecipe): Promise<CropRecipe> {
  return putJson(at`/crops/${crop}/recipe`, recipe);
}
