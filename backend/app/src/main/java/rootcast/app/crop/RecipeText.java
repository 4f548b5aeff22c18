package rootcast.app.crop;

import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Band;
import rootcast.crop.CommonPractice;
import rootcast.crop.CropRecipe;
import rootcast.crop.MistNeed;
import rootcast.crop.MistRegime;
import rootcast.crop.Phase;
import rootcast.crop.StageRecipe;
import rootcast.saying.FaultyValue;

/**
 * A recipe as it is written down, in the table and on the wire alike. What is left out takes common practice for the mist
 * need.
 */
public record RecipeText(
        MistNeed mistNeed,
        @Nullable Integer fullMistDays,
        @Nullable Integer toneAfterDays,
        @Nullable Double lowLightMol,
        @Nullable Double lowLightMediumLeastC,
        @Nullable List<PhaseText> phases,
        @Nullable String note) {

    /** An end that is null is open. */
    public record BandText(@Nullable Double least, @Nullable Double most) {

        static BandText of(Band band) {
            return new BandText(
                    Double.isInfinite(band.least()) ? null : band.least(),
                    Double.isInfinite(band.most()) ? null : band.most());
        }

        Band band() {
            return new Band(
                    least == null ? Double.NEGATIVE_INFINITY : least, most == null ? Double.POSITIVE_INFINITY : most);
        }
    }

    /** A phase with every one of its bands; recipes saved before salts of the medium were asked for have common practice. */
    public record PhaseText(
            Phase phase,
            BandText mediumC,
            BandText dayAirC,
            BandText nightAirC,
            BandText humidityPercent,
            BandText deficitKpa,
            BandText lightUmol,
            BandText moistureLevel,
            MistRegime mist,
            @Nullable BandText mediumEcMsPerCm,
            BandText nitrogenPpm) {

        public static PhaseText of(StageRecipe recipe) {
            return new PhaseText(
                    recipe.phase(),
                    BandText.of(recipe.mediumC()),
                    BandText.of(recipe.dayAirC()),
                    BandText.of(recipe.nightAirC()),
                    BandText.of(recipe.humidityPercent()),
                    BandText.of(recipe.deficitKpa()),
                    BandText.of(recipe.lightUmol()),
                    BandText.of(recipe.moistureLevel()),
                    recipe.mist(),
                    BandText.of(recipe.mediumEcMsPerCm()),
                    BandText.of(recipe.nitrogenPpm()));
        }

        /** @throws FaultyValue of what cannot be meant */
        public StageRecipe recipe() {
            return new StageRecipe(
                    phase,
                    FaultyValue.within("mediumC", mediumC::band),
                    FaultyValue.within("dayAirC", dayAirC::band),
                    FaultyValue.within("nightAirC", nightAirC::band),
                    FaultyValue.within("humidityPercent", humidityPercent::band),
                    FaultyValue.within("deficitKpa", deficitKpa::band),
                    FaultyValue.within("lightUmol", lightUmol::band),
                    FaultyValue.within("moistureLevel", moistureLevel::band),
                    mist,
                    mediumEcMsPerCm == null
                            ? CommonPractice.recipe(MistNeed.MEDIUM).of(phase).mediumEcMsPerCm()
                            : FaultyValue.within("mediumEcMsPerCm", mediumEcMsPerCm::band),
                    FaultyValue.within("nitrogenPpm", nitrogenPpm::band));
        }
    }

    public static RecipeText of(CropRecipe recipe, @Nullable String note) {
        return new RecipeText(
                recipe.mistNeed(),
                recipe.fullMistDays(),
                recipe.toneAfterDays(),
                recipe.lowLightMol(),
                recipe.lowLightMediumLeastC(),
                recipe.phases().stream().map(PhaseText::of).toList(),
                note);
    }

    /** @throws FaultyValue of what cannot be meant */
    public CropRecipe recipe() {
        CropRecipe usual = CommonPractice.recipe(mistNeed);
        return new CropRecipe(
                mistNeed,
                fullMistDays == null ? usual.fullMistDays() : fullMistDays,
                toneAfterDays == null ? usual.toneAfterDays() : toneAfterDays,
                lowLightMol == null ? usual.lowLightMol() : lowLightMol,
                lowLightMediumLeastC == null ? usual.lowLightMediumLeastC() : lowLightMediumLeastC,
                phases == null
                        ? usual.phases()
                        : IntStream.range(0, phases.size())
                                .mapToObj(i -> FaultyValue.within("phases[%d]".formatted(i), phases.get(i)::recipe))
                                .toList());
    }
}
