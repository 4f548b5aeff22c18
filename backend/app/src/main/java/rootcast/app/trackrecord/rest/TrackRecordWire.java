package rootcast.app.trackrecord.rest;

import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.app.outlook.rest.DateRangeWire;
import rootcast.crop.Calibration;
import rootcast.crop.Crop;
import rootcast.trackrecord.Case;
import rootcast.trackrecord.Figures;
import rootcast.trackrecord.HeldShare;
import rootcast.trackrecord.Trust;

/**
 * The record at one lead. Figures are null where there is no case.
 *
 * @param coverage     share of batches ready within the 50, 80 and 90 % ranges
 * @param held         how often the 80 % ranges held
 * @param promisedKept share of the cases in which trays promised at 90 % were all there
 */
record TrackRecordWire(
        Instant asOf,
        int leadDays,
        @Nullable String crop,
        int n,
        @Nullable Double maeDays,
        @Nullable Double biasDays,
        Map<String, @Nullable Double> coverage,
        Held held,
        @Nullable Double pinball,
        @Nullable Double crps,
        @Nullable Double promisedKept,
        int promisedCases,
        Baselines baselines,
        List<ByLead> byLead,
        List<ByCrop> byCrop,
        List<BySite> bySite,
        List<ByQuarter> byQuarter,
        List<OfBatch> batches) {

    /**
     * @param share of the cases that were ready within the 80 % range
     * @param low   from here to {@code high} the share is known to lie, at 90 %
     */
    record Held(
            int n,
            @Nullable Double share,
            @Nullable Double low,
            @Nullable Double high) {

        static Held of(HeldShare held) {
            return new Held(held.n(), number(held.share()), number(held.low()), number(held.high()));
        }

        static Held of(List<Case> cases) {
            return of(HeldShare.of(cases));
        }
    }

    record BySite(String site, String siteName, Held held) {}

    /** @param from first day of the quarter in which the batches were ready */
    record ByQuarter(LocalDate from, Held held) {}

    record Baselines(Baseline calendar, Baseline degreeDays) {

        static Baselines of(Figures figures) {
            return new Baselines(
                    new Baseline(number(figures.calendarMaeDays()), number(figures.calendarSkill())),
                    new Baseline(number(figures.degreeDaysMaeDays()), number(figures.degreeDaysSkill())));
        }
    }

    /** @param skill 1 − our mean absolute error / the baseline's */
    record Baseline(@Nullable Double maeDays, @Nullable Double skill) {}

    record ByLead(
            int leadDays,
            int n,
            @Nullable Double maeDays,
            Map<String, @Nullable Double> coverage,
            Held held,
            @Nullable Double pinball,
            @Nullable Double calendarMaeDays,
            @Nullable Double degreeDaysMaeDays) {

        static ByLead of(int leadDays, List<Case> cases) {
            Figures figures = Figures.of(cases);
            return new ByLead(
                    leadDays,
                    figures.n(),
                    number(figures.maeDays()),
                    TrackRecordWire.coverage(figures),
                    Held.of(cases),
                    number(figures.pinballDays()),
                    number(figures.calendarMaeDays()),
                    number(figures.degreeDaysMaeDays()));
        }
    }

    /**
     * @param verdict whether its dates can be trusted by what is known of {@code held}
     * @param mends   what would help where they cannot, the likeliest first
     * @param width   so many times as wide as the model's are its ranges now at this lead, by this record; null if nothing is known yet
     * @param calledShare of the cells so many are through with a stage when it is called complete; 0.9 if no count showed otherwise
     */
    record ByCrop(
            String crop,
            String cropName,
            int n,
            @Nullable Double maeDays,
            Map<String, @Nullable Double> coverage,
            @Nullable Double biasDays,
            Held held,
            String verdict,
            List<String> mends,
            @Nullable Double width,
            double calledShare) {

        static ByCrop of(Crop crop, int leadDays, List<Case> cases) {
            Figures figures = Figures.of(cases);
            Trust trust = Trust.of(cases);
            Calibration calibration = crop.profile().calibration();
            return new ByCrop(
                    crop.code(),
                    crop.name(),
                    figures.n(),
                    number(figures.maeDays()),
                    TrackRecordWire.coverage(figures),
                    number(figures.biasDays()),
                    Held.of(trust.held()),
                    code(trust.verdict()),
                    trust.mends().stream().map(TrackRecordWire::code).toList(),
                    calibration.isNone() ? null : calibration.at(leadDays).width(),
                    crop.profile().variation().calledShare());
        }
    }

    static String code(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * @param readyAt     the moment that is taken: between the entry and the last look that found it not ready
     * @param seenReadyAt of the entry
     * @param errorDays   over 0: ready later than predicted
     */
    record OfBatch(
            String batch,
            String crop,
            Instant readyAt,
            Instant seenReadyAt,
            DateRangeWire predicted,
            double errorDays) {

        static OfBatch of(Case each) {
            return new OfBatch(
                    each.batch(),
                    each.crop(),
                    each.readyAt(),
                    each.seenReadyAt(),
                    DateRangeWire.of(each.predicted()),
                    each.errorDays());
        }
    }

    static Map<String, @Nullable Double> coverage(Figures figures) {
        Map<String, @Nullable Double> coverage = new LinkedHashMap<>();
        coverage.put("0.5", number(figures.coverage50()));
        coverage.put("0.8", number(figures.coverage80()));
        coverage.put("0.9", number(figures.coverage90()));
        return coverage;
    }

    /** JSON has no word for what is not a number. */
    static @Nullable Double number(double figure) {
        return Double.isFinite(figure) ? figure : null;
    }
}
