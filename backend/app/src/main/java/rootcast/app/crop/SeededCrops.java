package rootcast.app.crop;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.crop.store.Recipes;
import rootcast.app.once.FactHead;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;

/** The crop profiles and recipes that come with the application, each value with its source: where a business may begin. */
@ApplicationScoped
public class SeededCrops {

    @Inject
    Catalogue catalogue;

    @Inject
    Recipes recipes;

    @Inject
    FactHead head;

    private final Map<String, Seeded> all = packed(SeedFiles.onClassPath());

    /** A crop of the seed with its recipe. */
    public record Seeded(CropSeed crop, RecipeSeed recipe) {

        /** As it would be stored. */
        public SourcedCrop sourced() {
            Map<Stage, String> sources = new EnumMap<>(Stage.class);
            Stage.GROWING.forEach(stage -> sources.put(stage, crop.source(stage)));
            return new SourcedCrop(crop.crop(), 0, sources, crop.profile().note());
        }

        private SourcedCrop sourced(double daysDoubt) {
            SourcedCrop usual = sourced();
            Crop known = usual.crop();
            CropProfile profile = known.profile();
            return new SourcedCrop(
                    new Crop(
                            known.code(),
                            known.name(),
                            profile.varying(profile.variation().doubting(daysDoubt))),
                    usual.version(),
                    usual.sources(),
                    usual.note());
        }
    }

    /** Every crop with a recipe has a profile, so the recipes say which profiles there are. */
    private static Map<String, Seeded> packed(SeedFiles files) {
        Map<String, Seeded> all = new LinkedHashMap<>();
        RecipeSeed.all(files).forEach((code, recipe) -> {
            try {
                all.put(code, new Seeded(files.json("profiles/" + code + ".json", CropSeed.class), recipe));
            } catch (IOException missing) {
                throw new UncheckedIOException(missing);
            }
        });
        return all;
    }

    /** By code, in order of code. */
    public Map<String, Seeded> all() {
        return all;
    }

    /** Stores the crop with its profile and its recipe. To be called inside {@link rootcast.app.once.Once}. */
    public SourcedCrop save(Seeded seeded, Instant at) {
        return save(seeded, seeded.sourced(), at);
    }

    /**
     * The same by a business that has grown the crop for years.
     *
     * @param daysDoubt how far its days may be out, see {@link rootcast.crop.Variation}
     */
    public SourcedCrop saveKnown(Seeded seeded, double daysDoubt, Instant at) {
        return save(seeded, seeded.sourced(daysDoubt), at);
    }

    private SourcedCrop save(Seeded seeded, SourcedCrop crop, Instant at) {
        SourcedCrop saved = catalogue.save(crop, head.nextForSetup(), at);
        recipes.add(
                seeded.crop().code(),
                RecipeText.of(seeded.recipe().recipe(), seeded.recipe().source()),
                at);
        return saved;
    }
}
