package rootcast.app.trackrecord.rest;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.app.outlook.rest.DateRangeWire;
import rootcast.trackrecord.Case;
import rootcast.trackrecord.Figures;

/**
 * The record at one lead. Figures are null where there is no case.
 *
 * @param coverage     share of batches ready within the 50, 80 and 90 % ranges
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
        @Nullable Double pinball,
        @Nullable Double crps,
        @Nullable Double promisedKept,
        int promisedCases,
        Baselines baselines,
        List<ByLead> byLead,
        List<ByCrop> byCrop,
        List<OfBatch> batches) {

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
            @Nullable Double pinball,
            @Nullable Double calendarMaeDays,
            @Nullable Double degreeDaysMaeDays) {

        static ByLead of(int leadDays, Figures figures) {
            return new ByLead(
                    leadDays,
                    figures.n(),
                    number(figures.maeDays()),
                    TrackRecordWire.coverage(figures),
                    number(figures.pinballDays()),
                    number(figures.calendarMaeDays()),
                    number(figures.degreeDaysMaeDays()));
        }
    }

    record ByCrop(
            String crop,
            String cropName,
            int n,
            @Nullable Double maeDays,
            Map<String, @Nullable Double> coverage,
            @Nullable Double biasDays) {

        static ByCrop of(String crop, String cropName, Figures figures) {
            return new ByCrop(
                    crop,
                    cropName,
                    figures.n(),
                    number(figures.maeDays()),
                    TrackRecordWire.coverage(figures),
                    number(figures.biasDays()));
        }
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
