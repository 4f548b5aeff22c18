package rootcast.app.crop.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.SourcedCrop;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.RateFactors;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.Variation;
import rootcast.outlook.DevelopmentRate;
import rootcast.saying.FaultyValue;

/**
 * A profile as it is sent.
 *
 * @param rateSpread standard deviation of ln(rate multiplier) between batches, 0 to 1
 * @param holdDays   days that a ready liner may be held
 * @param cellSpread standard deviation of ln(a cell's time) within a batch; 0.12, or what it was, if not given
 * @param roundsDays how far apart people come round, 0.05 to 10 days; 2, or what it was, if not given
 * @param stageShare of the variance between batches so much is a stage's own, 0.03 to 0.9; 0.26, or what it was, if not given
 * @param cellsDiffer standard deviation of ln(cell spread) between batches, 0 to 0.6; 0.3, or what it was, if not given
 * @param daysDoubt  standard deviation of ln(days at reference) around those stated, 0 to 0.5; 0.3, or what it was, if not given
 * @param enteredShare of the stages that end so many are entered, 0 to 1; 0.5, or what it was, if not given
 * @param calledShare of the living cells so many are through with a stage when it is called complete, 0.5 to 0.995; 0.9, or what it was, if not given
 * @param rates      how varieties and sites differ; none, or what they were, if not given
 * @param version    given by the server; ignored when sent
 */
public record ProfileWire(
        @NotNull @Size(min = 3, max = 3, message = "must be the three stages STICK, CALLUS, ROOT")
        List<@NotNull @Valid StageWire> stages,

        @NotNull Double rateSpread,
        @NotNull Integer holdDays,
        @Nullable Double cellSpread,
        @Nullable Double roundsDays,
        @Nullable Double stageShare,
        @Nullable Double cellsDiffer,
        @Nullable Double daysDoubt,
        @Nullable Double enteredShare,
        @Nullable Double calledShare,
        @Nullable @Valid RatesWire rates,
        @Nullable @Size(max = 2000) String note,
        @Nullable Integer version) {

    /**
     * Factors on the crop's rate by code; over 1 is faster.
     */
    public record RatesWire(
            @Nullable Map<@NotNull String, @NotNull Double> varieties,
            @Nullable Map<@NotNull String, @NotNull Double> sites) {}

    /**
     * @param daysAtReference days until 90 % of the living cells have passed the stage at {@code referenceC}
     * @param form            BETA if not given
     * @param source          where the values come from
     */
    public record StageWire(
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
            new DevelopmentRate(cardinals); // refuses what it cannot compute with
            return new StageProfile(stage, daysAtReference, cardinals, survivalMean, survivalWeight);
        }
    }

    public static ProfileWire of(SourcedCrop sourced) {
        CropProfile profile = sourced.crop().profile();
        return new ProfileWire(
                profile.stages().stream()
                        .map(stage -> StageWire.of(stage, sourced.sources().get(stage.stage())))
                        .toList(),
                profile.rateSpread(),
                profile.holdDays(),
                profile.cellSpread(),
                profile.variation().roundsDays(),
                profile.variation().stageShare(),
                profile.variation().cellsDiffer(),
                profile.variation().daysDoubt(),
                profile.variation().enteredShare(),
                profile.variation().calledShare(),
                new RatesWire(
                        new TreeMap<>(profile.rates().varieties()),
                        new TreeMap<>(profile.rates().sites())),
                sourced.note(),
                sourced.version());
    }

    CropProfile checked(Optional<CropProfile> before) {
        double cells = cellSpread != null
                ? cellSpread
                : before.map(CropProfile::cellSpread).orElse(CropProfile.USUAL_CELL_SPREAD);
        RateFactors factors = rates != null
                ? new RateFactors(orNone(rates.varieties), orNone(rates.sites))
                : before.map(CropProfile::rates).orElse(RateFactors.NONE);
        List<StageProfile> checked = new ArrayList<>();
        for (int i = 0; i < stages.size(); i++) {
            checked.add(FaultyValue.within("stages[%d]".formatted(i), stages.get(i)::stageProfile));
        }
        return new CropProfile(checked, rateSpread, holdDays, cells, factors, variation(before));
    }

    private Variation variation(Optional<CropProfile> before) {
        Variation was = before.map(CropProfile::variation).orElse(Variation.USUAL);
        return new Variation(
                roundsDays != null ? roundsDays : was.roundsDays(),
                stageShare != null ? stageShare : was.stageShare(),
                cellsDiffer != null ? cellsDiffer : was.cellsDiffer(),
                daysDoubt != null ? daysDoubt : was.daysDoubt(),
                enteredShare != null ? enteredShare : was.enteredShare(),
                calledShare != null ? calledShare : was.calledShare());
    }

    private static Map<String, Double> orNone(@Nullable Map<String, Double> factors) {
        return factors == null ? Map.of() : factors;
    }

    Map<Stage, String> sources() {
        Map<Stage, String> sources = new EnumMap<>(Stage.class);
        stages.stream()
                .filter(stage -> stage.source() != null)
                .forEach(stage -> sources.put(stage.stage(), stage.source()));
        return sources;
    }
}
