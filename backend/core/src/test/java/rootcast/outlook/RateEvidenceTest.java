package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory.Look;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchHistory.Plants;

/** What looks and stages say of the rate. At 22 °C a day gives one reference-day; the stages take 7, 9 and 10. */
class RateEvidenceTest {

    private static final HouseCurves AT_22 = at22(30);
    private static final RTable R_POSTERIOR = RTable.of("outlook/rate-posterior.csv");
    private static final Map<Stage, Instant> NONE = Map.of();

    private static HouseCurves at22(double knownDays) {
        return houses(days(knownDays), "A", constant(22, STUCK.minus(Duration.ofDays(3)), days(knownDays)));
    }

    private static Look look(double day, Stage stage, int cells, int reached) {
        return new Look(days(day), stage, cells, reached);
    }

    private static BatchHistory seen(Map<Stage, Instant> reachedAt, Look... looks) {
        return new BatchHistory(
                STUCK,
                reachedAt,
                List.of(new Placement("A", STUCK)),
                new Plants(STUCK, 1_050),
                List.of(),
                List.of(),
                null,
                List.of(looks));
    }

    private static double rate(double probability, BatchHistory history) {
        return OutlookModel.rate(history, CROP, AT_22, Stage.STICK).quantile(probability);
    }

    private static DateRange ready(BatchHistory history) {
        return OutlookModel.outlook(history, CROP, TRAY_105, AT_22).readyAt();
    }

    /**
     * @param spread      of the crop's batches, standard deviation of ln M
     * @param calledShare of the cells, with which a stage is called complete
     */
    private record Case(String name, double spread, BatchHistory history, double calledShare) {

        Case(String name, double spread, BatchHistory history) {
            this(name, spread, history, 0.9);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    static List<Case> cases() {
        Map<Stage, Instant> callusedOnDay9 = Map.of(Stage.CALLUS, days(9));
        return List.of(
                new Case("34 of 50", 0.1, seen(NONE, look(6, Stage.CALLUS, 50, 34))),
                new Case("none of 50", 0.1, seen(NONE, look(6, Stage.CALLUS, 50, 0))),
                new Case("15 of 18, wide prior", 0.25, seen(NONE, look(6, Stage.CALLUS, 18, 15))),
                new Case("roots looked for, callus never entered", 0.1, seen(NONE, look(14, Stage.ROOT, 50, 20))),
                new Case("callus seen, no look", 0.1, seen(callusedOnDay9)),
                new Case("callus seen early", 0.1, seen(Map.of(Stage.CALLUS, days(6)))),
                new Case(
                        "callus seen between looks, then roots",
                        0.1,
                        seen(callusedOnDay9, look(8, Stage.CALLUS, 50, 30), look(16, Stage.ROOT, 40, 10))),
                new Case(
                        "called complete at seven in ten",
                        0.1,
                        seen(
                                Map.of(Stage.CALLUS, days(7)),
                                look(6, Stage.CALLUS, 50, 20),
                                look(14, Stage.ROOT, 40, 20)),
                        0.7));
    }

    /** R 4.2.2: {@code Rscript rate-posterior.R > rate-posterior.csv}, both beside each other in the resources. */
    @ParameterizedTest
    @MethodSource("cases")
    void quantilesAreThoseThatRIntegrates(Case each) {
        CropProfile usual = GrowerFixture.crop(each.spread, 0.97, 0.96, 0.98, 150);
        CropProfile crop = usual.varying(usual.variation().calling(each.calledShare));
        for (int stage = 0; stage < 3; stage++) {
            double[] expected = R_POSTERIOR.row(each.name, String.valueOf(stage));
            var rate = OutlookModel.rate(each.history, crop, AT_22, Stage.GROWING.get(stage));

            assertThat(rate.quantile(0.1) / expected[0]).as("stage %d", stage).isCloseTo(1, within(0.005));
            assertThat(rate.quantile(0.5) / expected[1]).as("stage %d", stage).isCloseTo(1, within(0.005));
            assertThat(rate.quantile(0.9) / expected[2]).as("stage %d", stage).isCloseTo(1, within(0.005));
        }
    }

    @Test
    void noneOfTheCellsDelaysTheDatesAndAllOfThemBringThemForward() {
        var before = ready(seen(NONE));
        var none = ready(seen(NONE, look(6, Stage.CALLUS, 50, 0)));
        var all = ready(seen(NONE, look(6, Stage.CALLUS, 50, 50)));

        assertThat(none.p50()).isAfter(before.p50());
        assertThat(none.p10()).isAfter(before.p10());
        assertThat(all.p50()).isBefore(before.p50());
        assertThat(all.p90()).isBefore(before.p90());
    }

    @Test
    void moreCellsNarrowTheRange() {
        double last = rate(0.9, seen(NONE)) / rate(0.1, seen(NONE));
        for (int cells : new int[] {2, 4, 8, 20}) {
            var history = seen(NONE, look(6, Stage.CALLUS, cells, cells / 2));
            double now = rate(0.9, history) / rate(0.1, history);
            assertThat(now).as("%d cells", cells).isLessThan(last);
            last = now;
        }
    }

    @Test
    void thatNothingWasEnteredSaysNothing() {
        var rate = OutlookModel.rate(seen(NONE), CROP, at22(60), Stage.ROOT);

        assertThat(rate.quantile(0.5)).isEqualTo(1);
        // ln M is normal with spread 0.1; 1.2815515655 is its 90 % point (tables).
        assertThat(rate.quantile(0.9)).isCloseTo(Math.exp(0.12815515655), within(1e-9));
    }

    @Test
    void aLookThatNoRateExplainsChangesNothing() {
        var odd = seen(NONE, look(1, Stage.READY, 50, 50));

        assertThat(rate(0.1, odd)).isCloseTo(rate(0.1, seen(NONE)), within(0.002));
        assertThat(rate(0.5, odd)).isCloseTo(1, within(0.002));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void theOrderInWhichLooksComeInDoesNotMatter(long seed) {
        var random = new Random(seed);
        List<Look> looks = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            int cells = 1 + random.nextInt(60);
            looks.add(look(
                    random.nextInt(20),
                    random.nextBoolean() ? Stage.CALLUS : Stage.ROOT,
                    cells,
                    random.nextInt(cells + 1)));
        }
        List<Look> shuffled = new ArrayList<>(looks);
        Collections.shuffle(shuffled, random);
        var first = seen(NONE, looks.toArray(Look[]::new));
        var second = seen(NONE, shuffled.toArray(Look[]::new));

        for (double p : new double[] {0.01, 0.1, 0.37, 0.5, 0.9}) {
            assertThat(rate(p, second)).as("seed %d", seed).isEqualTo(rate(p, first));
        }
        assertThat(ready(second)).as("seed %d", seed).isEqualTo(ready(first));
    }

    @Test
    void readingsThatComeAfterTheLookGiveWhatTheyWouldHaveGivenBefore() {
        var history = seen(NONE, look(8, Stage.CALLUS, 50, 34));
        var inTime = houses(days(10), "A", constant(19, STUCK.minus(Duration.ofDays(3)), days(10)));
        HourlySeries series = constant(19, STUCK.minus(Duration.ofDays(3)), days(2));
        var late = houses(days(10), "A", series);
        OutlookModel.outlook(history, CROP, TRAY_105, late);
        for (Instant at = days(10).minus(Duration.ofMinutes(20));
                !at.isBefore(days(2));
                at = at.minus(Duration.ofMinutes(20))) {
            series.add(at, 19);
            late.changed("A", at);
        }

        assertThat(OutlookModel.outlook(history, CROP, TRAY_105, late).readyAt())
                .isEqualTo(OutlookModel.outlook(history, CROP, TRAY_105, inTime).readyAt());
    }
}
