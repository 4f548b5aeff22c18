package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.crop;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.IntUnaryOperator;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.numerics.CountDistribution;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchHistory.Plants;
import rootcast.outlook.BatchHistory.Sample;

/**
 * At constant 22 °C the stages end on days 7, 16 and 26. Expected numbers come from exact sums in R, from plants drawn one
 * by one, from an urn, or by hand.
 */
class SurvivorsTest {

    private static final int STUCK_PLANTS = 1_050;
    private static final double[] MEAN = {0.95, 0.93, 0.97};
    private static final double WEIGHT = 60;
    private static final CropProfile CROP = crop(0.1, MEAN[0], MEAN[1], MEAN[2], WEIGHT);
    private static final int RUNS = 20_000;

    /** Three standard errors of a share of {@link #RUNS}, and 0.004 for the Beta put in place of a product. */
    private static final double SHARE_TOLERANCE = 3 * Math.sqrt(0.25 / RUNS) + 0.004;

    private static final HouseCurves AT_22 =
            houses(days(40), "A", constant(22, STUCK.minus(Duration.ofDays(2)), days(40)));

    private static BatchHistory history(
            Plants base, List<Plants> losses, List<Plants> shipments, @Nullable Sample sample) {
        return new BatchHistory(STUCK, Map.of(), List.of(new Placement("A", STUCK)), base, losses, shipments, sample);
    }

    private static BatchHistory counted(double day, int plants) {
        return history(new Plants(days(day), plants), List.of(), List.of(), null);
    }

    private static CountDistribution whenReady(BatchHistory history) {
        return BatchOutlook.of(history, CROP, TRAY_105, AT_22).survivors().whenReady();
    }

    /** Equally likely survival shares of each stage, by inverting its Beta distribution function. */
    private static final double[][] SHARES = new double[3][2_000];

    static {
        for (int stage = 0; stage < 3; stage++) {
            var beta = BetaDistribution.of(MEAN[stage] * WEIGHT, (1 - MEAN[stage]) * WEIGHT);
            Arrays.setAll(SHARES[stage], i -> beta.inverseCumulativeProbability((i + 0.5) / 2_000));
        }
    }

    /** One batch's share surviving a part of a stage: p^part. */
    private static double share(SplittableRandom random, int stage, double part) {
        return Math.pow(SHARES[stage][random.nextInt(2_000)], part);
    }

    private static int alive(SplittableRandom random, int plants, double share) {
        int alive = 0;
        for (int plant = 0; plant < plants; plant++) {
            alive += random.nextDouble() < share ? 1 : 0;
        }
        return alive;
    }

    private static void shouldBeLike(int[] drawn, CountDistribution counts, String with) {
        Arrays.sort(drawn);
        for (double p : new double[] {0.02, 0.1, 0.25, 0.5, 0.75, 0.9, 0.98}) {
            int count = drawn[(int) (p * drawn.length)];
            double share = Arrays.stream(drawn).filter(one -> one >= count).count() / (double) drawn.length;
            assertThat(counts.atLeast(count))
                    .as("%s: at least %d", with, count)
                    .isCloseTo(share, within(SHARE_TOLERANCE));
        }
        assertThat(counts.mean())
                .as(with)
                .isCloseTo(Arrays.stream(drawn).average().orElseThrow(), within(1.5));
    }

    private static int[] draw(IntUnaryOperator run) {
        int[] drawn = new int[RUNS];
        Arrays.setAll(drawn, run);
        return drawn;
    }

    /**
     * R 4.2.2: {@code Rscript survivors.R > survivors.csv}, both beside each other in the resources. The 60 are recorded
     * when the first stage ends; the sample is taken then, and the rest happens when the second does.
     */
    @Test
    void quantilesAreThoseThatRSums() {
        var lost = List.of(new Plants(days(4), 45), new Plants(days(7), 15));
        var sampled = history(
                new Plants(STUCK, 210),
                List.of(new Plants(days(16), 4)),
                List.of(new Plants(days(16), 180)),
                new Sample(days(7), 210, 40, 3));

        shouldBeAsInR("1050 stuck", counted(0, STUCK_PLANTS));
        shouldBeAsInR("60 recorded lost by callus", history(new Plants(STUCK, STUCK_PLANTS), lost, List.of(), null));
        shouldBeAsInR("sample of 40, then 4 lost and 180 shipped", sampled);
    }

    /** Within one plant: a Beta stands for the product of the stages'. */
    private static void shouldBeAsInR(String name, BatchHistory history) {
        double[] expected = RTable.of("outlook/survivors.csv").row(name);
        var counts = whenReady(history);
        assertThat(counts.quantile(0.1)).as(name).isBetween((int) expected[0] - 1, (int) expected[0] + 1);
        assertThat(counts.quantile(0.5)).as(name).isBetween((int) expected[1] - 1, (int) expected[1] + 1);
        assertThat(counts.quantile(0.9)).as(name).isBetween((int) expected[2] - 1, (int) expected[2] + 1);
        assertThat(counts.mean()).as(name).isCloseTo(expected[3], within(0.5));
    }

    /** Day 11.5 is half of the second stage's nine days. */
    @Test
    void fromACountInMidStageOnlyTheRestIsStillToLive() {
        var random = new SplittableRandom(43);
        int[] drawn = draw(run -> {
            int left = alive(random, 900, share(random, 1, 0.5));
            return alive(random, left, share(random, 2, 1));
        });

        shouldBeLike(drawn, whenReady(counted(11.5, 900)), "seed 43");
    }

    /** 100 leave as the first stage ends, then 40 of the 320 places that stay are sampled. */
    @Test
    void aSampleAfterAShipmentSpeaksOfThePlacesThatStayed() {
        var random = new SplittableRandom(47);
        int[] drawn = draw(run -> {
            while (true) {
                int left = alive(random, 420, share(random, 0, 1)) - 100;
                if (left >= 0 && blanksIn(random, 320, left, 40) == 6) {
                    left = alive(random, left, share(random, 1, 1));
                    return alive(random, left, share(random, 2, 1));
                }
            }
        });

        var sampled = history(
                new Plants(STUCK, 420), List.of(), List.of(new Plants(days(7), 100)), new Sample(days(7), 320, 40, 6));
        shouldBeLike(drawn, whenReady(sampled), "seed 47");
    }

    /** Callused on day 9 and not 7, at an even 22 °C: a count on day 4.5 has half of the stage before it. */
    @Test
    void aStageSeenLateWasDoneInProportion() {
        var late = new BatchHistory(
                STUCK,
                Map.of(Stage.CALLUS, days(9)),
                List.of(new Placement("A", STUCK)),
                new Plants(days(4.5), 1_000),
                List.of(),
                List.of(),
                null,
                List.of(new BatchHistory.Look(days(8.999), Stage.CALLUS, 50, 44)));
        double halfStage = Arrays.stream(SHARES[0]).map(Math::sqrt).average().orElseThrow();

        assertThat(whenReady(late).mean()).isCloseTo(1_000 * halfStage * MEAN[1] * MEAN[2], within(0.2));
    }

    private static int blanksIn(SplittableRandom random, int places, int alive, int cells) {
        int blanks = 0;
        for (int cell = 0; cell < cells; cell++) {
            blanks += random.nextInt(places - cell) >= alive - (cell - blanks) ? 1 : 0;
        }
        return blanks;
    }

    /**
     * With every stage behind it, a batch of N places sampled at n cells with k blanks has n − k good ones and a
     * beta-binomial number among the rest, Beta(a + n − k, b + k); the urn draws that number.
     */
    @Test
    void aSampleLeavesTheUnsampledCellsUncertain() {
        double mean = 1;
        double square = 1;
        for (double m : MEAN) {
            mean *= m;
            square *= m * (m * WEIGHT + 1) / (WEIGHT + 1);
        }
        double weight = mean * (1 - mean) / (square - mean * mean) - 1;
        double[] urn = {1};
        for (int drawn = 0; drawn < 60; drawn++) {
            double[] next = new double[drawn + 2];
            for (int k = 0; k <= drawn; k++) {
                double good = (mean * weight + 37 + k) / (weight + 45 + drawn);
                next[k + 1] += urn[k] * good;
                next[k] += urn[k] * (1 - good);
            }
            urn = next;
        }

        var counts =
                whenReady(history(new Plants(STUCK, 105), List.of(), List.of(), new Sample(days(26.5), 105, 45, 8)));

        for (int k = 0; k <= 60; k++) {
            assertThat(counts.probability(37 + k)).isCloseTo(urn[k], within(1e-9));
        }
    }

    @Test
    void aSampleOfEveryCellIsACount() {
        var counts =
                whenReady(history(new Plants(STUCK, 105), List.of(), List.of(), new Sample(days(26.5), 105, 105, 9)));

        assertThat(counts.probability(96)).isCloseTo(1, within(1e-12));
    }

    @Test
    void countingNarrowsTheRangeAndCountingTheReadyBatchEndsIt() {
        double last = Double.MAX_VALUE;
        for (double day : new double[] {0, 3, 7, 12, 16, 20, 25}) {
            double variance = whenReady(counted(day, 1_000)).variance();
            assertThat(variance).as("day %s", day).isLessThan(last);
            last = variance;
        }
        var ready = new BatchHistory(
                STUCK,
                Map.of(Stage.READY, days(25)),
                List.of(new Placement("A", STUCK)),
                new Plants(days(25.2), 873),
                List.of(),
                List.of(),
                null);

        var outlook = OutlookModel.outlook(ready, CROP, TRAY_105, AT_22);

        assertThat(outlook.saleableTrays().p10()).isEqualTo(8);
        assertThat(outlook.saleableTrays().p90()).isEqualTo(8);
        assertThat(outlook.saleableTrays().atLeast(8)).isEqualTo(1);
        assertThat(outlook.saleableTrays().atLeast(9)).isZero();
        assertThat(outlook.expectedAlive()).isEqualTo(873);
    }

    @Test
    void afterReadyOnlyRecordedLossesAndShipmentsCount() {
        var ready = new BatchHistory(
                STUCK,
                Map.of(Stage.READY, days(25)),
                List.of(new Placement("A", STUCK)),
                new Plants(days(25.2), 873),
                List.of(new Plants(days(27), 20)),
                List.of(new Plants(days(28), 300)),
                null);

        assertThat(BatchOutlook.of(ready, CROP, TRAY_105, AT_22)
                        .survivors()
                        .whenReady()
                        .probability(553))
                .isEqualTo(1);
    }

    /** Plants that left were alive: the rest is what lives of all of them, less those that left. */
    @Test
    void shippedPlantsWereSurvivors() {
        var random = new SplittableRandom(46);
        int[] drawn = draw(run -> {
            int left;
            do {
                left = STUCK_PLANTS;
                for (int stage = 0; stage < 3; stage++) {
                    left = alive(random, left, share(random, stage, 1));
                }
            } while (left < 840);
            return left - 840;
        });

        shouldBeLike(
                drawn,
                whenReady(
                        history(new Plants(STUCK, STUCK_PLANTS), List.of(), List.of(new Plants(days(27), 840)), null)),
                "seed 46");
    }

    /** Hand: mean survival of half a stage of Beta(57, 3) is near 0.95^0.5; a quarter of the stage is lost by then. */
    @Test
    void lossesNobodyHasRecordedAreExpectedAllTheSame() {
        var now = houses(days(3.5), "A", constant(22, STUCK, days(3.5)));
        var outlook = OutlookModel.outlook(counted(0, 1_000), CROP, TRAY_105, now);

        assertThat(outlook.expectedAlive()).isCloseTo(1_000 * Math.sqrt(0.95), within(1.0));
    }

    @Test
    void aSampleThatLaterShipmentsDisproveIsSetAside() {
        var nothingSeen = new Sample(days(16), 1_050, 1_000, 1_000);
        var shipped = List.of(new Plants(days(27), 600));
        Plants base = new Plants(STUCK, STUCK_PLANTS);

        assertThat(whenReady(history(base, List.of(), shipped, nothingSeen)).mean())
                .isEqualTo(whenReady(history(base, List.of(), shipped, null)).mean());
    }

    @Test
    void plantsThatASampleSawAreThereWhateverTheBookSays() {
        var seen = history(
                new Plants(STUCK, 100),
                List.of(new Plants(days(20), 30)),
                List.of(),
                new Sample(days(26.5), 105, 90, 5));

        assertThat(whenReady(seen).probability(85)).isEqualTo(1);
    }

    @Test
    void disasterFarOutsideTheProfileIsBelieved() {
        var lost = history(new Plants(STUCK, 1_050), List.of(new Plants(days(6), 1_040)), List.of(), null);

        assertThat(whenReady(lost).atMost(10)).isEqualTo(1);
        assertThat(whenReady(lost).mean()).isBetween(4.0, 10.0);
    }

    @Test
    void anyProfileGivesADistribution() {
        for (double mean : new double[] {1e-4, 0.5, 0.999, 0.999_999}) {
            for (double weight : new double[] {1e-3, 1, 200, 1e6}) {
                for (double day : new double[] {0, 1e-7, 6.999_999_9, 16, 25.999_999_9, 26}) {
                    var profile = crop(0.1, mean, mean, mean, weight);
                    var counts = BatchOutlook.of(counted(day, 5_000), profile, TRAY_105, AT_22)
                            .survivors()
                            .whenReady();
                    assertThat(counts.mean())
                            .as("mean %s weight %s day %s", mean, weight, day)
                            .isBetween(0.0, 5_000.0);
                }
            }
        }
    }

    @Test
    void refusesMoreGoneThanThereWereAndRecordsBeforeTheBase() {
        Plants base = new Plants(days(3), 100);
        Instant after = days(4);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> history(base, List.of(new Plants(after, 60)), List.of(new Plants(after, 41)), null))
                .withMessageContaining("101 plants")
                .withMessageContaining("100");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> history(base, List.of(new Plants(days(2), 1)), List.of(), null));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Sample(after, 100, 50, 51))
                .withMessageContaining("51");
    }
}
