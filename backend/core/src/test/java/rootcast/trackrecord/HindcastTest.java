package rootcast.trackrecord;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Calibration;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variation;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchHistory.Plants;
import rootcast.outlook.Foretold;
import rootcast.outlook.HouseCurves;
import rootcast.site.Site;

/** Batches of stages of 7, 9 and 10 days in a house at the reference, entered ready after some days. */
class HindcastTest {

    private static final Instant STUCK = Instant.parse("2026-03-02T08:00:00Z");
    private static final TrayFormat TRAY = new TrayFormat("T105", 105, 100, 540, 280);
    private static final Site SITE = new Site("S", "South", ZoneOffset.UTC, DayOfWeek.MONDAY);
    private static final CropProfile PROFILE = new CropProfile(
                    List.of(stage(Stage.STICK, 7), stage(Stage.CALLUS, 9), stage(Stage.ROOT, 10)), 0.1, 10)
            .varying(Variation.USUAL.withDaysKnown());

    private static StageProfile stage(Stage stage, double days) {
        return new StageProfile(stage, days, new Cardinals(Cardinals.Form.BETA, 8, 27, 36, 22), 0.97, 100);
    }

    private static Instant day(double day) {
        return STUCK.plusMillis(Math.round(day * 86_400_000));
    }

    private static BackTest.PastHouses at22() {
        var series = new HourlySeries();
        for (Instant at = day(-5); at.isBefore(day(60)); at = at.plus(Duration.ofHours(1))) {
            series.add(at, 22);
        }
        var curves = new HouseCurves(STUCK);
        curves.house("A", series, SetpointPlan.none());
        return moment -> {
            curves.advanceTo(moment);
            return curves;
        };
    }

    private static BatchHistory history(Map<Stage, Instant> reached) {
        return new BatchHistory(
                STUCK,
                reached,
                List.of(new Placement("A", STUCK)),
                new Plants(STUCK, 1_050),
                List.of(),
                List.of(),
                null);
    }

    private static FinishedBatch batch(String id, double readyDay, CropProfile profile) {
        return new FinishedBatch(
                id,
                "C",
                SITE,
                TRAY,
                STUCK,
                day(readyDay),
                day(readyDay),
                List.of(new Placement("A", STUCK)),
                new FinishedBatch.Then() {
                    @Override
                    public BatchHistory historyAt(Instant at) {
                        return history(at.isBefore(day(readyDay)) ? Map.of() : Map.of(Stage.READY, day(readyDay)));
                    }

                    @Override
                    public CropProfile profileAt(Instant at) {
                        return profile;
                    }

                    @Override
                    public int plantsThereAt(Instant at) {
                        return 1_000;
                    }
                });
    }

    private static List<Hindcast> of(double readyDay) {
        return Hindcast.of(List.of(batch("B", readyDay, PROFILE)), at22());
    }

    /** Of people who enter next to no stage: that none was entered says nothing. */
    @Test
    void aBatchIsForetoldOnEveryDayOfItsLifeByTheLeadItHadThen() {
        CropProfile seldomEntered = PROFILE.varying(PROFILE.variation().entering(0));
        List<Hindcast> all = Hindcast.of(List.of(batch("B", 27, seldomEntered)), at22());

        assertThat(all).hasSize(26);
        assertThat(all.get(0).origin()).isEqualTo(day(1));
        // The median of the plan: 26 days after sticking, all at the reference.
        assertThat(all.get(0).leadDays()).isCloseTo(25, within(0.01));
        assertThat(all.get(11).leadDays()).isCloseTo(14, within(0.01));
        assertThat(all).allSatisfy(each -> assertThat(each.house()).isEqualTo("A"));
    }

    /**
     * Entered on day 27 by people who come round every two days: it ended on day 25 to 27, the one or the other as likely. The
     * quantile that means day 26 is the median; that of day 29 or of day 22 cannot have been. A day is a share of a batch's
     * spread, ln(27/26)/0.1.
     */
    @Test
    void likelyIsWhatTheEntryAllows() {
        double[] likelihood = of(27).get(5).likelihood();

        int best = 0;
        for (int i = 0; i < likelihood.length; i++) {
            best = likelihood[i] > likelihood[best] ? i : best;
        }
        double day = 26 * Math.exp(0.1 * Foretold.score(best));
        assertThat(day).isBetween(24.5, 27.5);
        assertThat(likelihood[best]).isEqualTo(1);
        assertThat(at(29.5, likelihood)).isLessThan(0.1);
        assertThat(at(21.5, likelihood)).isLessThan(0.1);
        assertThat(at(26, likelihood)).isGreaterThan(0.7);
    }

    private static double at(double day, double[] likelihood) {
        double score = Math.log(day / 26) / 0.1;
        int nearest = 0;
        for (int i = 0; i < likelihood.length; i++) {
            nearest = Math.abs(Foretold.score(i) - score) < Math.abs(Foretold.score(nearest) - score) ? i : nearest;
        }
        return likelihood[nearest];
    }

    @Test
    void theProfilesOwnCalibrationHasNoPartInIt() {
        var wide = PROFILE.calibrated(new Calibration(List.of(new Calibration.Knot(7, -3, 1, 4, 9))));

        List<Hindcast> with = Hindcast.of(List.of(batch("B", 27, wide)), at22());

        assertThat(with).usingRecursiveComparison().isEqualTo(of(27));
    }

    /** What came after a day, here that it was ready two days later, has no part in what was foretold from it. */
    @Test
    void noDayKnowsALaterOne() {
        List<Hindcast> soon = of(27);
        List<Hindcast> late = of(29);

        for (int day = 0; day < soon.size(); day++) {
            assertThat(late.get(day).leadDays()).isEqualTo(soon.get(day).leadDays());
            assertThat(late.get(day).likelihood()).isNotEqualTo(soon.get(day).likelihood());
        }
    }

    @Test
    void theOrderOfBatchesChangesNoBit() {
        List<FinishedBatch> batches = new ArrayList<>();
        var random = new Random(7);
        for (int i = 0; i < 12; i++) {
            batches.add(batch("B" + i, 24 + 5 * random.nextDouble(), PROFILE));
        }
        List<Hindcast> first = Hindcast.of(batches, at22());
        Calibration fitted = CalibrationFit.of(first);
        Collections.shuffle(batches, random);

        List<Hindcast> again = Hindcast.of(batches, at22());

        assertThat(again).usingRecursiveComparison().isEqualTo(first);
        assertThat(CalibrationFit.of(again)).isEqualTo(fitted);
    }

    /** All of them two days later than the crop's days say: dates come later by up to that, and no wider than before. */
    @Test
    void batchesThatAreAllLateMoveTheDates() {
        List<FinishedBatch> batches = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            batches.add(batch("B%02d".formatted(i), 28.5 + i * 0.025, PROFILE));
        }

        Calibration fitted = CalibrationFit.of(Hindcast.of(batches, at22()));

        var byLead = new TreeMap<Double, Calibration.Knot>();
        fitted.knots().forEach(knot -> byLead.put(knot.leadDays(), knot));
        assertThat(byLead.get(16.0).middle()).isPositive();
        assertThat(byLead.get(16.0).early()).isGreaterThan(-1);
    }
}
