package rootcast.app.crop;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.Map;
import rootcast.app.crop.store.Recipes;
import rootcast.crop.CommonPractice;
import rootcast.crop.CropRecipe;
import rootcast.crop.MistNeed;

/** The recipe that each crop is to have now. */
@ApplicationScoped
public class CropRecipes {

    /** What a crop has that nobody has said anything about. */
    private static final CropRecipe USUAL = CommonPractice.recipe(MistNeed.MEDIUM);

    @Inject
    Recipes recipes;

    public CropRecipeInForce of(String crop) {
        return recipes.newest(crop)
                .map(stored -> new CropRecipeInForce(stored.text().recipe(), stored.version(), stored.recordedAt()))
                .orElseGet(() -> new CropRecipeInForce(USUAL, 0, null));
    }

    /** All at once, for many batches. */
    public ByCrop all() {
        Map<String, CropRecipe> all = new HashMap<>();
        recipes.newest().forEach((crop, stored) -> all.put(crop, stored.text().recipe()));
        return crop -> all.getOrDefault(crop, USUAL);
    }

    /** Gives a crop's recipe. */
    @FunctionalInterface
    public interface ByCrop {
        CropRecipe of(String crop);
    }
}
