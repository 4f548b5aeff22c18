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
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory.Look;
import rootcast.outlook.BatchHistory.Plants;
import rootcast.outlook.BatchHistory.Stay;

/** What looks and stages say of the rate. At 22 °C a day gives one reference-day; the stages take 7, 9 and 10. */
class RateEvidenceTest {

    private static final HouseCurves AT_22 = at22(30);
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
                List.of(new Stay("A", STUCK)),
                new Plants(STUCK, 1_050),
                List.of(),
                List.of(),
                null,
                List.of(looks));
    }

    private static double rate(double probability, BatchHistory history) {
        return OutlookModel.rate(history, CROP, AT_22).quantile(probability);
    }

    private static DateRange ready(BatchHistory history) {
        return OutlookModel.outlook(history, CROP, TRAY_105, AT_22).readyAt();
    }

    /** Marsaglia 2004, J. Stat. Software 11(4): Φ(x) = ½ + φ(x)·(x + x³/3 + x⁵/(3·5) + …). */
    private static double phi(double x) {
        if (Math.abs(x) > 7) {
            return x > 0 ? 1 : 0;
        }
        double sum = x;
        double term = x;
        for (int i = 3; i < 400; i += 2) {
            term *= x * x / i;
            sum += term;
        }
        return 0.5 + sum * Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
    }

    /** Of cells looked at, relative to the best M; written as a product, at most 200 cells' worth. */
    private static double cells(double progress, int cells, int reached) {
        double p = progress <= 0 ? 0 : phi(Math.log(progress) / 0.12 + 1.2815515655);
        double share = (double) reached / cells;
        double product = Math.pow(p / (reached == 0 ? 1 : share), reached)
                * Math.pow((1 - p) / (reached == cells ? 1 : 1 - share), cells - reached);
        return 0.999 * Math.pow(product, Math.min(1, 200.0 / cells)) + 0.001;
    }

    private static double seenAt(double progress) {
        double z = Math.log(progress) / 0.08;
        return 0.999 * Math.exp(-z * z / 2) + 0.001;
    }

    private record Case(String name, double spread, BatchHistory history, DoubleUnaryOperator likelihood) {
        @Override
        public String toString() {
            return name;
        }
    }

    static List<Case> cases() {
        Map<Stage, Instant> callusedOnDay9 = Map.of(Stage.CALLUS, days(9));
        return List.of(
                new Case("34 of 50", 0.1, seen(NONE, look(6, Stage.CALLUS, 50, 34)), m -> cells(m * 6 / 7, 50, 34)),
                new Case("none of 50", 0.1, seen(NONE, look(6, Stage.CALLUS, 50, 0)), m -> cells(m * 6 / 7, 50, 0)),
                new Case(
                        "400 of 500, wide prior",
                        0.25,
                        seen(NONE, look(6, Stage.CALLUS, 500, 400)),
                        m -> cells(m * 6 / 7, 500, 400)),
                new Case(
                        "roots looked for, callus never entered",
                        0.1,
                        seen(NONE, look(14, Stage.ROOT, 50, 20)),
                        m -> cells((14 * m - 7) / 9, 50, 20)),
                new Case("callus seen, no look", 0.1, seen(callusedOnDay9), m -> seenAt(m * 9 / 7)),
                new Case("callus seen early", 0.1, seen(Map.of(Stage.CALLUS, days(6))), m -> seenAt(m * 6 / 7)),
                new Case(
                        "callus seen between looks, then roots",
                        0.1,
                        seen(callusedOnDay9, look(8, Stage.CALLUS, 50, 30), look(16, Stage.ROOT, 40, 10)),
                        m -> {
                            double between = phi(Math.log(m * 9 / 7) / 0.08) - phi(Math.log(m * 8 / 7) / 0.08);
                            double best = 2 * phi(Math.log(9.0 / 8) / 0.16) - 1;
                            return cells(m * 8 / 7, 50, 30)
                                    * cells((16 - Math.min(9, Math.max(8, 7 / m))) * m / 9, 40, 10)
                                    * (0.999 * between + 0.001 * best);
                        }));
    }

    /** The midpoint rule on 2 001 nodes of ln M, six prior standard deviations to each side. */
    private static double[] integrated(double spread, DoubleUnaryOperator likelihood) {
        double[] mass = new double[2_001];
        double total = 0;
        for (int i = 0; i < mass.length; i++) {
            double z = -6 + 12 * (i + 0.5) / mass.length;
            mass[i] = Math.exp(-z * z / 2) * likelihood.applyAsDouble(Math.exp(spread * z));
            total += mass[i];
        }
        double[] wanted = {0.1, 0.5, 0.9};
        double[] found = new double[3];
        double sum = 0;
        for (int i = 0, k = 0; k < 3; i++) {
            sum += mass[i];
            while (k < 3 && sum >= wanted[k] * total) {
                found[k++] = Math.exp(spread * (-6 + 12 * (i + 0.5) / mass.length));
            }
        }
        return found;
    }

    @ParameterizedTest
    @MethodSource("cases")
    void quantilesAreThoseOfAFineIntegration(Case each) {
        double[] expected = integrated(each.spread, each.likelihood);
        var crop = GrowerFixture.crop(each.spread, 0.97, 0.96, 0.98, 150);
        var rate = OutlookModel.rate(each.history, crop, AT_22);

        assertThat(rate.quantile(0.1) / expected[0]).isCloseTo(1, within(0.005));
        assertThat(rate.quantile(0.5) / expected[1]).isCloseTo(1, within(0.005));
        assertThat(rate.quantile(0.9) / expected[2]).isCloseTo(1, within(0.005));
    }

    /**
     * Half the cells at day 6: ln(M · 6/7) / 0.12 = −1.28155, so M = 7/6 · e^−0.153786 = 1.00037; a wide prior around 1
     * leaves it there.
     */
    @Test
    void aLookAtManyCellsFixesTheRateWhereItsShareSays() {
        var crop = GrowerFixture.crop(0.4, 0.97, 0.96, 0.98, 150);
        var rate = OutlookModel.rate(seen(NONE, look(6, Stage.CALLUS, 200, 100)), crop, AT_22);

        assertThat(rate.quantile(0.5)).isCloseTo(1.00037, within(0.003));
        assertThat(rate.quantile(0.9) / rate.quantile(0.1)).isBetween(1.0, 1.06);
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
        for (int cells : new int[] {4, 16, 64, 196}) {
            var history = seen(NONE, look(6, Stage.CALLUS, cells, cells / 2));
            double now = rate(0.9, history) / rate(0.1, history);
            assertThat(now).as("%d cells", cells).isLessThan(last);
            last = now;
        }
    }

    @Test
    void thatNothingWasEnteredSaysNothing() {
        var rate = OutlookModel.rate(seen(NONE), CROP, at22(60));

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
