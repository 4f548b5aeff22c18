package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static rootcast.learning.SimulatedNursery.REFERENCE_C;
import static rootcast.learning.SimulatedNursery.TRUE_DAYS;
import static rootcast.learning.SimulatedNursery.learned;
import static rootcast.learning.SimulatedNursery.profile;
import static rootcast.learning.SimulatedNursery.wholeRatio;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.learning.SimulatedNursery.Manner;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.DateRange;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.OutlookModel;

/** What batches whose truth is known teach. The truth has Wang and Engel's response, the model the beta function. */
class LearningTest {

    private static double[] ratioToTruth(LearnedProfile learned) {
        double[] ratios = new double[3];
        for (int k = 0; k < 3; k++) {
            ratios[k] = learned.profile().stages().get(k).daysAtReference() / TRUE_DAYS[k];
        }
        return ratios;
    }

    @Nested
    class AfterThirtyBatchesWithAProfileThatIsAQuarterOut {

        @ParameterizedTest(name = "seed {0}, days × {1}")
        @CsvSource({"1, 1.25", "2, 1.25", "3, 1.25", "4, 0.75", "5, 0.75", "6, 0.75", "7, 1.25", "8, 0.75"})
        void theDaysAreWithinFivePercentOfTheTruth(long seed, double factor) {
            LearnedProfile learned = learned(seed, Manner.usual(30), profile(factor, 0.15));

            for (double ratio : ratioToTruth(learned)) {
                assertThat(ratio).isCloseTo(1, within(0.05));
            }
            assertThat(wholeRatio(learned)).isCloseTo(1, within(0.05));
        }

        /** Batches of the truth differ by 10 %, so 0.8 of them lie within ±12.8 %: 6.66 of 26 days. */
        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3, 4, 5, 6})
        void theRangeOfANewBatchShrinksToWhatBatchesDifferBy(long seed) {
            var nursery = new SimulatedNursery(seed, Manner.usual(30));
            CropProfile before = profile(1.25, 0.15);
            LearnedProfile learned = Learning.learn(before, nursery.records(), nursery.end);
            double daysBefore = rangeDays(nursery.end, before);
            double daysAfter = rangeDays(nursery.end, learned.profile());

            assertThat(daysAfter).isLessThan(0.75 * daysBefore);
            assertThat(daysAfter).isBetween(6.66 * 0.7, 6.66 * 1.4);
        }

        /** In a house that is always at 22 °C, so that what the weather may do adds nothing. */
        private double rangeDays(Instant stuckAt, CropProfile profile) {
            var medium = new HourlySeries();
            for (int hour = -40 * 24; hour < 0; hour++) {
                medium.add(stuckAt.plus(Duration.ofHours(hour)), 22);
            }
            var houses = new HouseCurves(stuckAt);
            houses.house("even", medium, SetpointPlan.none());
            var history = new BatchHistory(
                    stuckAt,
                    Map.of(),
                    List.of(new BatchHistory.Placement("even", stuckAt)),
                    new BatchHistory.Plants(stuckAt, 1_050),
                    List.of(),
                    List.of(),
                    null);
            DateRange ready = OutlookModel.outlook(history, profile, new TrayFormat("T", 105, 100, 540, 280), houses)
                    .readyAt();
            return Duration.between(ready.p10(), ready.p90()).toMinutes() / 1440.0;
        }
    }

    @Test
    void theMoreBatchesTheNarrowerTheRangeOfTheDays() {
        double last = Double.POSITIVE_INFINITY;
        for (int batches : new int[] {4, 12, 36, 108}) {
            Evidence.OfStage callus = learned(3, Manner.usual(batches), profile(1.25, 0.1))
                    .evidence()
                    .stages()
                    .get(0);
            double width = callus.daysHigh() - callus.daysLow();
            assertThat(width).as("%d batches", batches).isLessThan(last);
            last = width;
        }
    }

    /** Stated at 80 %; of 3 × 40 stages 96 are expected, and 83 to 109 lie within four standard deviations. */
    @Test
    void theTrueDaysLieInTheirRangeAboutAsOftenAsStated() {
        int inside = 0;
        for (long seed = 100; seed < 140; seed++) {
            // One temperature, so that the response's other form has no part in it.
            var learned = learned(seed, Manner.usual(20).setpoints(22), profile(1.1, 0.1));
            for (int k = 0; k < 3; k++) {
                Evidence.OfStage stage = learned.evidence().stages().get(k);
                inside += stage.daysLow() <= TRUE_DAYS[k] && TRUE_DAYS[k] <= stage.daysHigh() ? 1 : 0;
            }
        }

        assertThat(inside).isBetween(83, 113);
    }

    /** Where nobody enters looks, how long a stage had been complete when it was seen is itself found from the batches. */
    @ParameterizedTest(name = "seen {1} days apart, seed {0}")
    @CsvSource({"1, 0", "2, 0", "3, 0", "1, 1", "3, 1", "4, 1", "1, 2", "3, 2", "4, 2", "1, 3", "3, 3"})
    void stagesWithoutLooksAreLearnedWhateverTheRounds(long seed, double everyDays) {
        LearnedProfile learned = learned(seed, Manner.usual(30).rounds(everyDays, false), profile(1.25, 0.15));

        assertThat(wholeRatio(learned)).isCloseTo(1, within(0.05));
        for (double ratio : ratioToTruth(learned)) {
            assertThat(ratio).isCloseTo(1, within(0.1));
        }
    }

    @ParameterizedTest(name = "batches differ by {0}")
    @ValueSource(doubles = {0.04, 0.1, 0.2})
    void theSpreadBetweenBatchesIsFound(double truth) {
        var learned = learned(11, Manner.usual(80).spreads(truth, 0.12), profile(1, 0.1));

        assertThat(learned.profile().rateSpread() / truth).isBetween(0.75, 1.35);
    }

    /** It was 5.5 to 8.6 % in three of these four while a round was taken to be four days long at most. */
    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24})
    void weeklyLooksDoNotBiasTheDays(long seed) {
        LearnedProfile learned = learned(seed, Manner.usual(60).rounds(7, true), profile(1.25, 0.15));

        assertThat(wholeRatio(learned)).isCloseTo(1, within(0.05));
    }

    @ParameterizedTest(name = "cells differ by {0}")
    @ValueSource(doubles = {0.07, 0.12, 0.2})
    void theSpreadWithinBatchesIsFoundFromLooks(double truth) {
        var learned = learned(12, Manner.usual(60).spreads(0.1, truth), profile(1, 0.1));

        assertThat(learned.profile().cellSpread() / truth).isBetween(0.8, 1.25);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theOrderOfTheRecordsDoesNotMatter(long seed) {
        var nursery =
                new SimulatedNursery(seed, Manner.usual(25).varieties(Map.of("A", 1.0, "B", 1.1, "C", 0.95, "D", 1.0)));
        List<BatchRecord> records = nursery.records();
        List<BatchRecord> shuffled = new ArrayList<>(records);
        Collections.shuffle(shuffled, new Random(seed));

        assertThat(Learning.learn(profile(1.2, 0.1), shuffled, nursery.end))
                .isEqualTo(Learning.learn(profile(1.2, 0.1), records, nursery.end));
    }

    /** The prior stays what was stated: were it what was learned before, the spread would fall with each time. */
    @Test
    void learningAgainFromTheSameBatchesChangesNothing() {
        var nursery = new SimulatedNursery(3, Manner.usual(20));
        CropProfile stated = profile(1.25, 0.15);
        CropProfile once =
                Learning.learn(stated, nursery.records(), nursery.end).profile();

        LearnedProfile again = Learning.learn(stated, once, nursery.records(), nursery.end);

        assertThat(again.profile()).isEqualTo(once);
        assertThat(again.evidence().rateSpreadBefore()).isEqualTo(once.rateSpread());
        assertThat(Learning.learn(once, nursery.records(), nursery.end)
                        .profile()
                        .rateSpread())
                .as("from a prior that knew the batches already")
                .isLessThan(once.rateSpread());
    }

    @Test
    void withoutABatchTheProfileInForceStands() {
        CropProfile inForce = profile(0.8, 0.2);

        assertThat(Learning.learn(profile(1, 0.1), inForce, List.of(), SimulatedNursery.START)
                        .profile())
                .isEqualTo(inForce);
    }

    @Test
    void withoutABatchTheProfileStands() {
        CropProfile before = profile(1, 0.1);

        LearnedProfile learned = Learning.learn(before, List.of(), SimulatedNursery.START);

        assertThat(learned.profile()).isEqualTo(before);
        assertThat(learned.evidence().finishedBatches()).isZero();
        assertThat(learned.evidence().cardinals()).noneMatch(Evidence.OfCardinals::identified);
    }

    @Test
    void aBatchEnteredOnTheWrongBenchHardlyMovesTheDays() {
        var nursery = new SimulatedNursery(5, Manner.usual(30).setpoints(22));
        List<BatchRecord> records = new ArrayList<>(nursery.records());
        LearnedProfile without = Learning.learn(profile(1, 0.1), records, nursery.end);
        Instant stuckAt = SimulatedNursery.START.plus(Duration.ofDays(10));
        var odd = new BatchHistory(
                stuckAt,
                Map.of(Stage.CALLUS, stuckAt.plus(Duration.ofDays(40))),
                List.of(new BatchHistory.Placement("H0", stuckAt)),
                new BatchHistory.Plants(stuckAt, 1_050),
                List.of(),
                List.of(),
                null);
        records.add(BatchRecord.of("ZZ", "V", "S", odd, Map.of(), nursery.houses, REFERENCE_C));

        LearnedProfile with = Learning.learn(profile(1, 0.1), records, nursery.end);

        assertThat(wholeRatio(with) / wholeRatio(without)).isCloseTo(1, within(0.02));
    }

    /** Not one cell in 50 callused on day 8 of 7: nobody has seen an end, and still the days must grow. */
    @Test
    void runningBatchesThatAreLateCount() {
        var nursery = new SimulatedNursery(6, Manner.usual(8).setpoints(22));
        List<BatchRecord> late = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            Instant stuckAt = SimulatedNursery.START.plus(Duration.ofDays(i));
            var look = new BatchHistory.Look(stuckAt.plus(Duration.ofDays(8)), Stage.CALLUS, 50, 0);
            var running = new BatchHistory(
                    stuckAt,
                    Map.of(),
                    List.of(new BatchHistory.Placement("H0", stuckAt)),
                    new BatchHistory.Plants(stuckAt, 1_050),
                    List.of(),
                    List.of(),
                    null,
                    List.of(look));
            late.add(BatchRecord.of("R" + i, "V", "S", running, Map.of(), nursery.houses, REFERENCE_C));
        }

        LearnedProfile learned = Learning.learn(profile(1, 0.1), late, nursery.end);

        assertThat(learned.profile().of(Stage.STICK).daysAtReference()).isGreaterThan(9);
        assertThat(learned.evidence().runningBatches()).isEqualTo(8);
        assertThat(learned.evidence().finishedBatches()).isZero();
    }

    @Nested
    class Varieties {

        private static final Map<String, Double> TRUE_RATES =
                Map.of("A", 1.0, "B", 1.15, "C", 0.87, "D", 1.0, "E", 1.0);

        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3})
        void thatRootFasterAreFoundAndOthersShrinkToTheCrop(long seed) {
            var rates = learned(seed, Manner.usual(75).varieties(TRUE_RATES), profile(1, 0.1))
                    .profile()
                    .rates()
                    .varieties();

            assertThat(rates.get("B") / rates.get("A")).isCloseTo(1.15, within(0.09));
            assertThat(rates.get("C") / rates.get("A")).isCloseTo(0.87, within(0.09));
        }

        @Test
        void ofWhichThereIsOneAreTheCrop() {
            assertThat(learned(1, Manner.usual(20), profile(1, 0.1))
                            .profile()
                            .rates()
                            .varieties())
                    .isEmpty();
        }
    }

    @Test
    void twoRecordsOfOneBatchAreRefused() {
        var record = new BatchRecord("B1", "V", "S", false, List.of(), List.of(), Map.of(), 0, 0);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> Learning.learn(profile(1, 0.1), List.of(record, record), SimulatedNursery.START))
                .withMessageContaining("B1");
    }

    @Test
    void theEvidenceSaysItInSentences() {
        var text = learned(1, Manner.usual(30), profile(1.25, 0.15)).evidence().text();

        assertThat(text.get(0)).isEqualTo("30 finished and 0 running batches.");
        assertThat(text.get(1)).startsWith("Sticking to callus: ").contains("shorter than before");
    }
}
