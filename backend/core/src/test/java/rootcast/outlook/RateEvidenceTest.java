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
        return OutlookModel.rate(history, CROP, AT_22, Stage.STICK).quantile(probability);
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

    /** √(7²), √(7² + 9²) and √(7² + 9² + 10²) over 7, 9 and 10 are 1, 1.26686 and 1.51658; their mean is 1.26115. */
    private static final double[] CELL_SPREAD = {0.12 / 1.26115, 0.12 * 1.26686 / 1.26115, 0.12 * 1.51658 / 1.26115};

    /**
     * Of cells looked at, relative to the best M; written as a product, at most 20 cells' worth, for three factors on the
     * spread of one batch's cells with Gauss-Hermite weights.
     */
    private static double cells(int stage, double progress, int cells, int reached) {
        double sum = 0;
        for (int node = -1; node <= 1; node++) {
            double spread = CELL_SPREAD[stage] * Math.exp(node * 0.3 * Math.sqrt(3));
            double p = progress <= 0 ? 0 : phi(Math.log(progress) / spread + 1.2815515655);
            double share = (double) reached / cells;
            double product = Math.pow(p / (reached == 0 ? 1 : share), reached)
                    * Math.pow((1 - p) / (reached == cells ? 1 : 1 - share), cells - reached);
            sum += (node == 0 ? 2.0 / 3 : 1.0 / 6) * (0.999 * Math.pow(product, Math.min(1, 20.0 / cells)) + 0.001);
        }
        return sum;
    }

    private static double seenAt(double progress) {
        double z = Math.log(progress) / 0.08;
        return 0.999 * Math.exp(-z * z / 2) + 0.001;
    }

    /** @param likelihood of the stages' own M, one function for each */
    private record Case(String name, double spread, BatchHistory history, List<DoubleUnaryOperator> likelihood) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static final DoubleUnaryOperator NOTHING = m -> 1;

    static List<Case> cases() {
        Map<Stage, Instant> callusedOnDay9 = Map.of(Stage.CALLUS, days(9));
        return List.of(
                new Case(
                        "34 of 50",
                        0.1,
                        seen(NONE, look(6, Stage.CALLUS, 50, 34)),
                        List.of(m -> cells(0, m * 6 / 7, 50, 34), NOTHING, NOTHING)),
                new Case(
                        "none of 50",
                        0.1,
                        seen(NONE, look(6, Stage.CALLUS, 50, 0)),
                        List.of(m -> cells(0, m * 6 / 7, 50, 0), NOTHING, NOTHING)),
                new Case(
                        "15 of 18, wide prior",
                        0.25,
                        seen(NONE, look(6, Stage.CALLUS, 18, 15)),
                        List.of(m -> cells(0, m * 6 / 7, 18, 15), NOTHING, NOTHING)),
                new Case(
                        "roots looked for, callus never entered",
                        0.1,
                        seen(NONE, look(14, Stage.ROOT, 50, 20)),
                        List.of(NOTHING, m -> cells(1, (14 * m - 7) / 9, 50, 20), NOTHING)),
                new Case(
                        "callus seen, no look",
                        0.1,
                        seen(callusedOnDay9),
                        List.of(m -> seenAt(m * 9 / 7), NOTHING, NOTHING)),
                new Case(
                        "callus seen early",
                        0.1,
                        seen(Map.of(Stage.CALLUS, days(6))),
                        List.of(m -> seenAt(m * 6 / 7), NOTHING, NOTHING)),
                new Case(
                        "callus seen between looks, then roots",
                        0.1,
                        seen(callusedOnDay9, look(8, Stage.CALLUS, 50, 30), look(16, Stage.ROOT, 40, 10)),
                        List.of(
                                m -> {
                                    double between = phi(Math.log(m * 9 / 7) / 0.08) - phi(Math.log(m * 8 / 7) / 0.08);
                                    double best = 2 * phi(Math.log(9.0 / 8) / 0.16) - 1;
                                    return cells(0, m * 8 / 7, 50, 30) * (0.999 * between + 0.001 * best);
                                },
                                m -> cells(1, (16 - Math.min(9, Math.max(8, 7 / m))) * m / 9, 40, 10),
                                NOTHING)));
    }

    /**
     * By brute force over the batch's own c and each stage's own e: the midpoint rule on 241 nodes each, six prior
     * standard deviations to each side, the share 0.26 of the variance being the stage's.
     */
    private static double[] integrated(Case each, int stage) {
        int nodes = 241;
        double[] mass = new double[nodes];
        double own = Math.sqrt(0.26);
        double batch = Math.sqrt(0.74);
        for (int i = 0; i < nodes; i++) {
            double c = node(i, nodes);
            double others = 1;
            for (int other = 0; other < 3; other++) {
                if (other != stage) {
                    others *= averaged(each, other, c, own, nodes);
                }
            }
            for (int j = 0; j < nodes; j++) {
                double u = node(j, nodes);
                double e = (u - c) / own;
                mass[j] += Math.exp(-c * c / batch / batch / 2 - e * e / 2)
                        * others
                        * each.likelihood.get(stage).applyAsDouble(Math.exp(each.spread * u));
            }
        }
        double total = java.util.Arrays.stream(mass).sum();
        double[] wanted = {0.1, 0.5, 0.9};
        double[] found = new double[3];
        double sum = 0;
        for (int i = 0, k = 0; k < 3; i++) {
            while (k < 3 && sum + mass[i] >= wanted[k] * total) {
                double part = (wanted[k] * total - sum) / mass[i] - 0.5;
                found[k++] = Math.exp(each.spread * (node(i, nodes) + part * 12 / nodes));
            }
            sum += mass[i];
        }
        return found;
    }

    private static double averaged(Case each, int stage, double c, double own, int nodes) {
        double sum = 0;
        double weights = 0;
        for (int j = 0; j < nodes; j++) {
            double e = node(j, nodes);
            double weight = Math.exp(-e * e / 2);
            weights += weight;
            sum += weight * each.likelihood.get(stage).applyAsDouble(Math.exp(each.spread * (c + own * e)));
        }
        return sum / weights;
    }

    private static double node(int i, int nodes) {
        return -6 + 12 * (i + 0.5) / nodes;
    }

    @ParameterizedTest
    @MethodSource("cases")
    void quantilesAreThoseOfAFineIntegration(Case each) {
        var crop = GrowerFixture.crop(each.spread, 0.97, 0.96, 0.98, 150);
        for (int stage = 0; stage < 3; stage++) {
            double[] expected = integrated(each, stage);
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
