package rootcast.app.crop.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.problem.Problem;
import rootcast.app.site.Code;
import rootcast.crop.Cardinals;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.outlook.DevelopmentRate;

/** A crop as it is sent. */
record CropWire(
        @Code String code,
        @NotBlank @Size(max = 120) String name,
        @NotNull @Valid ProfileWire profile) {

    /**
     * @param rateSpread standard deviation of ln(rate multiplier) between batches, 0 to 1
     * @param holdDays   days that a ready liner may be held
     * @param version    given by the server; ignored when sent
     */
    record ProfileWire(
            @NotNull @Size(min = 3, max = 3, message = "must be the three stages STICK, CALLUS, ROOT")
            List<@NotNull @Valid StageWire> stages,

            @NotNull Double rateSpread,
            @NotNull Integer holdDays,
            @Nullable @Size(max = 2000) String note,
            @Nullable Integer version) {}

    /**
     * @param daysAtReference days until 90 % of the living cells have passed the stage at {@code referenceC}
     * @param form            BETA if not given
     * @param source          where the values come from
     */
    record StageWire(
            @NotNull Stage stage,
            @NotNull Double daysAtReference,
            @NotNull Double referenceC,
            @NotNull Double minC,
            @NotNull Double optimumC,
            @NotNull Double maxC,
            @NotNull Double survivalMean,
            @NotNull Double survivalWeight,
            Cardinals.@Nullable Form form,
            @Nullable @Size(max = 4000) String source) {

        static StageWire of(StageProfile stage, @Nullable String source) {
            Cardinals cardinals = stage.cardinals();
            return new StageWire(
                    stage.stage(),
                    stage.daysAtReference(),
                    cardinals.referenceC(),
                    cardinals.minC(),
                    cardinals.optimumC(),
                    cardinals.maxC(),
                    stage.survivalMean(),
                    stage.survivalWeight(),
                    cardinals.form(),
                    source);
        }

        StageProfile stageProfile() {
            Cardinals cardinals =
                    new Cardinals(form == null ? Cardinals.Form.BETA : form, minC, optimumC, maxC, referenceC);
            return new StageProfile(stage, daysAtReference, cardinals, survivalMean, survivalWeight);
        }
    }

    static CropWire of(SourcedCrop sourced) {
        CropProfile profile = sourced.crop().profile();
        return new CropWire(
                sourced.crop().code(),
                sourced.crop().name(),
                new ProfileWire(
                        profile.stages().stream()
                                .map(stage ->
                                        StageWire.of(stage, sourced.sources().get(stage.stage())))
                                .toList(),
                        profile.rateSpread(),
                        profile.holdDays(),
                        sourced.note(),
                        sourced.version()));
    }

    SourcedCrop sourcedCrop() {
        Map<Stage, String> sources = new EnumMap<>(Stage.class);
        profile.stages().stream()
                .filter(stage -> stage.source() != null)
                .forEach(stage -> sources.put(stage.stage(), stage.source()));
        try {
            CropProfile checked = new CropProfile(
                    profile.stages().stream().map(StageWire::stageProfile).toList(),
                    profile.rateSpread(),
                    profile.holdDays());
            checked.stages()
                    .forEach(stage -> new DevelopmentRate(stage.cardinals())); // refuses what it cannot reckon with
            return new SourcedCrop(new Crop(code, name.strip(), checked), 0, sources, profile.note());
        } catch (IllegalArgumentException refused) {
            throw Problem.notAllowed("profile", code, refused.getMessage());
        }
    }
}
