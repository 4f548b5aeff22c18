package rootcast.app.crop;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.TreeMap;
import rootcast.crop.Band;
import rootcast.crop.CommonPractice;
import rootcast.crop.CropRecipe;
import rootcast.crop.MistNeed;

/**
 * What seed/recipes.csv says of a crop: its mist need, and its medium where that differs from common practice.
 *
 * @param source where that comes from
 */
public record RecipeSeed(CropRecipe recipe, String source) {

    /** By crop. */
    public static Map<String, RecipeSeed> all(SeedFiles files) {
        try {
            Map<String, RecipeSeed> all = new TreeMap<>();
            files.table("recipes.csv").rows().forEach(row -> all.put(row.text("crop"), of(row)));
            return all;
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    private static RecipeSeed of(SeedTable.Row row) {
        CropRecipe usual = CommonPractice.recipe(MistNeed.valueOf(row.text("mistNeed")));
        CropRecipe recipe = row.text("mediumLeastC").isEmpty()
                ? usual
                : usual.withMediumUntilRooted(new Band(row.decimal("mediumLeastC"), row.decimal("mediumMostC")));
        return new RecipeSeed(recipe, row.text("source"));
    }
}
