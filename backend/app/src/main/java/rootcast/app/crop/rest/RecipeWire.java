package rootcast.app.crop.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.CropRecipeInForce;
import rootcast.app.crop.RecipeText;
import rootcast.app.crop.store.Recipes;
import rootcast.app.problem.Problem;
import rootcast.crop.CommonPractice;
import rootcast.crop.CropRecipe;
import rootcast.crop.MistNeed;
import rootcast.crop.MistRegime;
import rootcast.crop.Phase;
import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/**
 * A recipe as it is sent. Only the mist need must be there; whatever is left out takes common practice for it.
 *
 * @param version    given by the server, 0 for common practice; ignored when sent
 * @param recordedAt likewise
 * @param note       free text: where the values come from
 */
record RecipeWire(
        @Nullable String crop,
        @Nullable Integer version,
        @Nullable Instant recordedAt,
        @NotNull MistNeed mistNeed,
        @Nullable Integer fullMistDays,
        @Nullable Integer toneAfterDays,
        @Nullable Double lowLightMol,
        @Nullable Double lowLightMediumLeastC,

        @Nullable
        @Size(min = 5, max = 5, message = "must be the five phases STICKING, CALLUSING, ROOTING, FILLING, TONING")
        List<@NotNull @Valid PhaseWire> phases,

        @Nullable @Size(max = 2000) String note) {

    /** @param least null where there is no lower end */
    record BandWire(@Nullable Double least, @Nullable Double most) {
        static BandWire of(RecipeText.BandText band) {
            return new BandWire(band.least(), band.most());
        }

        RecipeText.BandText text() {
            return new RecipeText.BandText(least, most);
        }
    }

    record PhaseWire(
            @NotNull Phase phase,
            @NotNull BandWire mediumC,
            @NotNull BandWire dayAirC,
            @NotNull BandWire nightAirC,
            @NotNull BandWire humidityPercent,
            @NotNull BandWire deficitKpa,
            @NotNull BandWire lightUmol,
            @NotNull BandWire moistureLevel,
            @NotNull MistRegime mist,
            @Nullable BandWire mediumEcMsPerCm,
            @NotNull BandWire nitrogenPpm) {

        static PhaseWire of(RecipeText.PhaseText written) {
            RecipeText.PhaseText phase = RecipeText.PhaseText.of(written.recipe());
            return new PhaseWire(
                    phase.phase(),
                    BandWire.of(phase.mediumC()),
                    BandWire.of(phase.dayAirC()),
                    BandWire.of(phase.nightAirC()),
                    BandWire.of(phase.humidityPercent()),
                    BandWire.of(phase.deficitKpa()),
                    BandWire.of(phase.lightUmol()),
                    BandWire.of(phase.moistureLevel()),
                    phase.mist(),
                    BandWire.of(phase.mediumEcMsPerCm()),
                    BandWire.of(phase.nitrogenPpm()));
        }

        RecipeText.PhaseText text() {
            return new RecipeText.PhaseText(
                    phase,
                    mediumC.text(),
                    dayAirC.text(),
                    nightAirC.text(),
                    humidityPercent.text(),
                    deficitKpa.text(),
                    lightUmol.text(),
                    moistureLevel.text(),
                    mist,
                    mediumEcMsPerCm == null ? null : mediumEcMsPerCm.text(),
                    nitrogenPpm.text());
        }
    }

    static RecipeWire of(Recipes.Stored stored) {
        return of(stored.crop(), stored.version(), stored.recordedAt(), stored.text());
    }

    static RecipeWire of(String crop, CropRecipeInForce inForce) {
        return of(crop, inForce.version(), inForce.recordedAt(), RecipeText.of(inForce.recipe(), CommonPractice.MARK));
    }

    private static RecipeWire of(String crop, int version, @Nullable Instant recordedAt, RecipeText text) {
        return new RecipeWire(
                crop,
                version,
                recordedAt,
                text.mistNeed(),
                text.fullMistDays(),
                text.toneAfterDays(),
                text.lowLightMol(),
                text.lowLightMediumLeastC(),
                text.phases() == null
                        ? null
                        : text.phases().stream().map(PhaseWire::of).toList(),
                text.note());
    }

    /** Whole and checked, so that a later change of common practice does not change what was saved. */
    RecipeText text(String code) {
        if (crop != null && !crop.equals(code)) {
            throw Problem.notAllowed("crop", crop, Fault.FIXED, code);
        }

        try {
            CropRecipe checked = new RecipeText(
                            mistNeed,
                            fullMistDays,
                            toneAfterDays,
                            lowLightMol,
                            lowLightMediumLeastC,
                            phases == null
                                    ? null
                                    : phases.stream().map(PhaseWire::text).toList(),
                            note)
                    .recipe();
            return RecipeText.of(checked, note == null && phases == null ? CommonPractice.MARK : note);
        } catch (FaultyValue wrong) {
            throw Problem.notAllowed(wrong);
        }
    }
}
