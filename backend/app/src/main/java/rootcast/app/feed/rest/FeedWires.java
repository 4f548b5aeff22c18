package rootcast.app.feed.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the feed helper is asked and what it answers. */
final class FeedWires {

    private FeedWires() {}

    /**
     * A strength wanted.
     *
     * @param injector          D of 1:D; 1 for a tank that is fed from directly
     * @param stockVolume       of the stock tank
     * @param clearWaterMsPerCm together with {@code msPerCmPer100Ppm}: what the meter should show is answered too
     */
    record StockWire(
            @NotNull Double nitrogenPercent,
            @NotNull Double ppm,
            @NotNull Double injector,
            @NotNull @Valid AmountWire stockVolume,
            @Nullable Double clearWaterMsPerCm,
            @Nullable Double msPerCmPer100Ppm) {}

    record StockAnswer(
            double gramsPerLitre,
            double ouncesPerGallon,
            List<AmountWire> fertilizer,
            List<AmountWire> feedVolume,
            @Nullable Double expectedMsPerCm) {}

    /** A stock that was mixed. */
    record StrengthWire(
            @NotNull Double nitrogenPercent,
            @NotNull Double injector,
            @NotNull @Valid AmountWire fertilizer,
            @NotNull @Valid AmountWire stockVolume) {}

    record StrengthAnswer(double ppm, double gramsPerLitre) {}

    /** A stock and a strength, and the injector is wanted. */
    record InjectorWire(
            @NotNull Double nitrogenPercent,
            @NotNull Double ppm,
            @NotNull @Valid AmountWire fertilizer,
            @NotNull @Valid AmountWire stockVolume) {}

    record InjectorAnswer(double injector, String ratio) {}

    /** What the meter shows. */
    record ConductivityWire(
            @NotNull Double measuredMsPerCm,
            @NotNull Double clearWaterMsPerCm,
            @NotNull Double msPerCmPer100Ppm) {}

    record ConductivityAnswer(double feedMsPerCm, double ppm) {}

    /**
     * A rate read off a label: either product per volume, or ppm of an active ingredient with its content.
     *
     * @param label          what the label says, in its own words
     * @param product        rate by volume: so much product …
     * @param perVolume      … in so much spray
     * @param activePpm      rate in mg of active ingredient per litre of spray
     * @param activeMgPerMl  content of a liquid product, mg/mL (1 % of weight by volume is 10)
     * @param activePercent  content of a solid product, % by weight
     * @param sprayVolume    how much spray is wanted; or
     * @param areaM2         the area to treat, with
     * @param litresPerM2    the volume that the label gives a square metre
     */
    record DilutionWire(
            @NotBlank @Size(max = 500) String label,
            @Nullable @Valid AmountWire product,
            @Nullable @Valid AmountWire perVolume,
            @Nullable Double activePpm,
            @Nullable Double activeMgPerMl,
            @Nullable Double activePercent,
            @Nullable @Valid AmountWire sprayVolume,
            @Nullable Double areaM2,
            @Nullable Double litresPerM2) {}

    record DilutionAnswer(
            String label, List<AmountWire> product, List<AmountWire> sprayVolume, List<String> cautions) {}
}
