package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CALLUSING;
import static rootcast.outlook.GrowerFixture.ROOTING;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TONING;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.crop.CropProfile;
import rootcast.crop.RateFactors;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.Variation;
import rootcast.numerics.CountDistribution;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchHistory.Plants;

/**
 * Trays that can leave, against a simulation cell by cell and against closed forms. The house is at the reference of 22 °C, where a
 * reference-day is a day, and stays so.
 */
class UsableTraysTest {

    private static final double Z90 = 1.2815515655446004;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** Days 7, 9 and 10; spreads at the end of each stage √49/7, √130/9 and √230/10, with the crop's as their mean. */
    private static double spreadOfLast(double cellSpread) {
        double last = Math.sqrt(230) / 10;
        return cellSpread * last / ((1 + Math.sqrt(130) / 9 + last) / 3);
    }

    private static CropProfile crop(double rateSpread, double cellSpread, int holdDays) {
        return new CropProfile(
                List.of(
                        new StageProfile(Stage.STICK, 7, CALLUSING, 0.97, 150),
                        new StageProfile(Stage.CALLUS, 9, ROOTING, 0.96, 150),
                        new StageProfile(Stage.ROOT, 10, TONING, 0.98, 150)),
                rateSpread,
                holdDays,
                cellSpread,
                RateFactors.NONE,
                Variation.USUAL.withDaysKnown().entering(0));
    }

    private static BatchHistory batch(Map<Stage, Double> reachedOnDay, Plants base, List<Plants> shipped) {
        Map<Stage, Instant> reached = new java.util.EnumMap<>(Stage.class);
        reachedOnDay.forEach((stage, day) -> reached.put(stage, days(day)));
        return new BatchHistory(
                STUCK, reached, List.of(new Placement("A", STUCK)), base, List.of(), shipped, null, List.of());
    }

    private static BatchOutlook outlook(BatchHistory history, CropProfile crop, double asOfDay) {
        HouseCurves houses = houses(days(asOfDay), "A", constant(22, STUCK.minus(Duration.ofDays(9)), days(asOfDay)));
        return BatchOutlook.of(history, crop, TRAY_105, houses);
    }

    private static BatchHistory readyOn26(int counted) {
        return batch(
                Map.of(Stage.CALLUS, 7.0, Stage.ROOT, 16.0, Stage.READY, 26.0),
                new Plants(days(26.5), counted),
                List.of());
    }

    /** All batches alike: of 26 days since sticking the share Φ(ln(day / 26) · 26/10 / spread + z₀.₉) is through, 10 days being the last stage's. */
    @ParameterizedTest(name = "on day {0} of 1 000 counted plants in ten trays, ready on day 26 and held for 8")
    @CsvSource({"24.5", "25", "26", "27", "28.5", "33", "34", "35"})
    void ofACountedBatchSeenReadyTheCellsAloneAreUncertain(double day) {
        Outlook outlook = outlook(readyOn26(1_000), crop(0, 0.12, 8), 27).now();
        for (int trays = 1; trays <= 10; trays++) {
            double exact = 0;
            for (int ofSix = 0; ofSix < 6; ofSix++) {
                double usable = share(day, ofSix) - share(day - 8, ofSix);
                exact += BinomialDistribution.of(1_000, usable).survivalProbability(100 * trays - 1) / 6;
            }
            assertThat(outlook.usable().at(days(day)).applyAsDouble(trays))
                    .as("%d trays", trays)
                    .isCloseTo(exact, within(1e-3));
        }
    }

    private static double share(double day, int ofSix) {
        return NORMAL.cumulativeProbability(Math.log(day / 26) * 2.6 / (spreadOfLast(0.12) * ownFactor(ofSix)) + Z90);
    }

    /** With hardly any spread of the cells and a hold without end: P(ready) · P(at least n trays), as it was. */
    @Test
    void cellsThatAreThroughTogetherGiveTheProductOfReadinessAndNumber() {
        var batch = outlook(batch(Map.of(), new Plants(STUCK, 1_050), List.of()), crop(0.1, 0.01, 365), 5);
        Outlook outlook = batch.now();
        // The first cell is through no more than four spreads, of 0.2 days at the widest, before the ninth in ten.
        for (double day = 18; day <= 40; day += 1) {
            for (int trays = 1; trays <= 10; trays++) {
                double number = outlook.saleableTrays().atLeast(trays);
                double now = outlook.usable().at(days(day)).applyAsDouble(trays);
                assertThat(now)
                        .as("%d trays on day %s", trays, day)
                        .isBetween(
                                outlook.ready().probabilityBy(days(day - 1)) * number - 1e-3,
                                outlook.ready().probabilityBy(days(day + 1)) * number + 1e-3);
            }
        }
    }

    @Test
    void withoutAnEndOfTheHoldNothingFalls() {
        var batch = outlook(batch(Map.of(), new Plants(STUCK, 1_050), List.of()), crop(0.1, 0.12, 365), 5);
        Outlook outlook = batch.now();
        for (int trays = 1; trays <= 10; trays++) {
            double before = 0;
            for (double day = 10; day <= 200; day += 1) {
                double now = outlook.usable().at(days(day)).applyAsDouble(trays);
                assertThat(now).isGreaterThanOrEqualTo(before - 1e-9);
                before = now;
            }
            assertThat(before).isCloseTo(outlook.saleableTrays().atLeast(trays), within(1e-4));
        }
    }

    @Test
    void moreTraysAreNeverLikelier() {
        Outlook outlook = outlook(batch(Map.of(), new Plants(STUCK, 4_200), List.of()), crop(0.1, 0.12, 8), 5)
                .now();
        for (double day = 15; day <= 45; day += 0.5) {
            var odds = outlook.usable().at(days(day));
            for (int trays = 1; trays <= 42; trays++) {
                assertThat(odds.applyAsDouble(trays)).isBetween(0.0, odds.applyAsDouble(trays - 1) + 1e-9);
            }
            assertThat(odds.applyAsDouble(0)).isEqualTo(1);
            assertThat(odds.applyAsDouble(43)).isZero();
        }
    }

    /** The answer stays that of its own moment when the curves it came from are brought up to date. */
    @Test
    void anOutlookDoesNotChangeWhenItsHousesMoveOn() {
        var series = constant(22, STUCK.minus(Duration.ofDays(9)), days(5));
        HouseCurves houses = houses(days(5), "A", series);
        BatchHistory history = batch(Map.of(), new Plants(STUCK, 1_050), List.of());
        var kept = BatchOutlook.of(history, crop(0.1, 0.12, 8), TRAY_105, houses);
        Outlook asked = kept.now();
        Outlook askedLate = kept.now();
        double first = asked.usable().at(days(26)).applyAsDouble(5);
        for (double day = 4.5; day < 7; day += 1.0 / 48) {
            series.add(days(day), 15);
        }
        houses.changed("A", days(4.5));
        houses.advanceTo(days(7));
        houses.bringUpToDate();
        Outlook later = kept.now();

        assertThat(askedLate.usable().at(days(26)).applyAsDouble(5)).isEqualTo(first);
        assertThat(later.usable().at(days(26)).applyAsDouble(5)).isLessThan(first);
    }

    /**
     * Drawn cell by cell: how fast the batch is, how many plants live, when each is through, what was shipped of those that
     * were; trays filled with what is usable. The dates and numbers of the batch are drawn from its own laws, which have tests of
     * their own.
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "growing and held for 8 days,       0, 0.10, 0.12, 8,  0,   20;24;26;28;31;34;38;42",
        "growing and held for 3 days,       0, 0.10, 0.15, 3,  0,   20;24;26;27;28;30;33",
        "growing with cells wide apart,     0, 0.05, 0.25, 8,  0,   18;20;22;25;28;32;36",
        "roots seen and few,               16, 0.10, 0.12, 8,  0,   22;24;26;28;31;34;36",
        "seen ready,                       26, 0.10, 0.12, 8,  0,   26;27;28;30;32;33;34;35",
        "seen ready and 600 shipped,       26, 0.10, 0.12, 8,  600, 28;28.5;29;30;31;32;33;34;35",
    })
    void agreesWithASimulationCellByCell(
            String what,
            double seenOn,
            double rateSpread,
            double cellSpread,
            int holdDays,
            int shipped,
            String onDays) {
        Map<Stage, Double> seen = seenOn == 0
                ? Map.of()
                : seenOn == 16
                        ? Map.of(Stage.CALLUS, 7.0, Stage.ROOT, 16.0)
                        : Map.of(Stage.CALLUS, 7.0, Stage.ROOT, 16.0, Stage.READY, 26.0);
        double shippedOn = 27;
        List<Plants> left = shipped == 0 ? List.of() : List.of(new Plants(days(shippedOn), shipped));
        var batch = outlook(
                batch(seen, new Plants(STUCK, 1_050), left),
                crop(rateSpread, cellSpread, holdDays),
                seenOn == 0 ? 5 : seenOn == 16 ? 17 : 27.5);
        double[] moments = java.util.Arrays.stream(onDays.split(";"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        int runs = 20_000;
        int[][] atLeast = simulated(
                batch, runs, spreadOfLast(cellSpread), holdDays, shipped, shippedOn, moments, new Random(20261128));
        Outlook outlook = batch.now();
        int worlds = 5_000;
        int[][] inWorlds = inWorlds(outlook, worlds, moments);
        for (int i = 0; i < moments.length; i++) {
            for (int trays = 1; trays <= 10; trays++) {
                double share = (double) atLeast[i][trays] / runs;
                double error = 4 * Math.sqrt(Math.max(share * (1 - share), 1e-4) / runs);
                double ofWorlds = 4 * Math.sqrt(Math.max(share * (1 - share), 1e-4) / worlds);
                assertThat((double) inWorlds[i][trays] / worlds)
                        .as("%s: %d trays on day %s, world by world", what, trays, moments[i])
                        .isCloseTo(share, within(error + ofWorlds + 0.01));
                assertThat(outlook.usable().at(days(moments[i])).applyAsDouble(trays))
                        .as("%s: %d trays on day %s", what, trays, moments[i])
                        .isCloseTo(share, within(error + 0.004));
            }
        }
    }

    /** In how many worlds so many trays can leave, by moment and number. */
    private static int[][] inWorlds(Outlook outlook, int worlds, double[] moments) {
        Instant[] leaves =
                java.util.Arrays.stream(moments).mapToObj(day -> days(day)).toArray(Instant[]::new);
        UsableIn batch = outlook.usable().in("B1", "C1", outlook.shared());
        int[][] atLeast = new int[moments.length][11];
        for (int world = 0; world < worlds; world++) {
            int[] trays = batch.trays(new World(world), leaves);
            for (int i = 0; i < moments.length; i++) {
                for (int n = 1; n <= trays[i]; n++) {
                    atLeast[i][n]++;
                }
            }
        }
        return atLeast;
    }

    /** Of six batches one has cells nearer together, one wider apart: e^(±0.3 √3), the nodes of a normal law of sd 0.3. */
    private static double ownFactor(int ofSix) {
        return ofSix == 0 ? Math.exp(-0.3 * Math.sqrt(3)) : ofSix == 1 ? Math.exp(0.3 * Math.sqrt(3)) : 1;
    }

    private static int[][] simulated(
            BatchOutlook batch,
            int runs,
            double spread,
            int holdDays,
            int shipped,
            double shippedOn,
            double[] moments,
            Random random) {
        Outlook outlook = batch.now();
        CountDistribution alive = batch.survivors().whenReady();
        int[][] atLeast = new int[moments.length][12];
        for (int run = 0; run < runs; run++) {
            double u = Math.max(1e-5, Math.min(1 - 1e-5, random.nextDouble()));
            double date = GrowerFixture.daysAfterSticking(outlook.ready().quantile(u));
            double rate = batch.rate().quantile(1 - u);
            double own = spread * ownFactor(random.nextInt(6));
            double[] through = new double[alive.quantile(random.nextDouble()) + shipped];
            for (int cell = 0; cell < through.length; cell++) {
                double ofAllDays = Math.exp(own * 10 / 26 * (random.nextGaussian() - Z90));
                through[cell] = date + (ofAllDays - 1) * 26 / rate;
            }
            for (int left = shipped; left > 0; ) {
                int cell = random.nextInt(through.length);
                if (through[cell] <= shippedOn) {
                    through[cell] = Double.POSITIVE_INFINITY;
                    left--;
                }
            }
            for (int i = 0; i < moments.length; i++) {
                int usable = 0;
                for (double at : through) {
                    usable += at <= moments[i] && moments[i] <= at + holdDays ? 1 : 0;
                }
                for (int trays = usable / 100; trays >= 1; trays--) {
                    atLeast[i][Math.min(trays, 11)]++;
                }
            }
        }
        return atLeast;
    }
}
