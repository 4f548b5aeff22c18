package rootcast.trackrecord;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.crop.Calibration;
import rootcast.outlook.Foretold;
import rootcast.outlook.RTable;

class CalibrationFitTest {

    private static final RTable R = RTable.of("trackrecord/calibration.csv");
    private static final Instant READY = Instant.parse("2025-04-01T00:00:00Z");
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double HALF_A_YEAR = 182.5;

    /** Ready at the score, seen with a normal error. */
    private static Hindcast hindcast(int number, double leadDays, double score, double error) {
        return hindcast(number, "H" + number, READY, leadDays, score, error);
    }

    private static Hindcast hindcast(
            int number, String house, Instant readyAt, double leadDays, double score, double error) {
        double[] likelihood = new double[Foretold.QUANTILES];
        Arrays.setAll(likelihood, i -> Math.exp(-Math.pow((Foretold.score(i) - score) / error, 2) / 2));
        Instant origin = readyAt.minus(Duration.ofMillis(Math.round(leadDays * 86_400_000)));
        return new Hindcast("B%04d".formatted(number), house, readyAt, origin, leadDays, likelihood);
    }

    private static double[] spread() {
        double[] spread = new double[12];
        Arrays.setAll(spread, i -> NORMAL.inverseCumulativeProbability((i + 0.5) / 12));
        return spread;
    }

    private record Case(String name, double[] scores, double error, double[] weights) {

        @Override
        public String toString() {
            return name;
        }

        List<Hindcast> hindcasts() {
            List<Hindcast> all = new ArrayList<>();
            for (int i = 0; i < scores.length; i++) {
                double daysAgo = weights.length == 0 ? 0 : -HALF_A_YEAR * Math.log(weights[i]) / Math.log(2);
                Instant ready = READY.minus(Duration.ofMinutes(Math.round(daysAgo * 24 * 60)));
                all.add(hindcast(i, "H" + i, ready, 8, scores[i], error));
            }
            return all;
        }
    }

    private static Case of(String name, double error, double... scores) {
        return new Case(name, scores, error, new double[0]);
    }

    private static double[] each(double[] scores, double factor, double shift) {
        return Arrays.stream(scores).map(score -> factor * score + shift).toArray();
    }

    static List<Case> cases() {
        double[] spread = spread();
        double[] wrong = spread.clone();
        wrong[11] = -4;
        double[] lateFar = Arrays.stream(spread)
                .map(score -> score > 0 ? 2 * score : score)
                .toArray();
        double[] then = new double[24];
        double[] weights = new double[24];
        for (int i = 0; i < 24; i++) {
            then[i] = spread[i % 12] + (i < 12 ? 0 : 2);
            weights[i] = i < 12 ? 0.25 : 1;
        }
        return List.of(
                of("as the model says", 0.5, spread),
                of("twice as wide", 0.5, each(spread, 2, 0)),
                of("half as wide", 0.3, each(spread, 0.5, 0)),
                of("late", 0.5, each(spread, 1, 1)),
                of("late ones far", 0.4, lateFar),
                of("seen badly", 2, each(spread, 2, 0)),
                of("one of twelve wrong", 0.3, wrong),
                of("three batches", 0.3, 1.2, 1.5, 1.9),
                new Case("old ones count less", then, 0.4, weights));
    }

    /** Fine steps and the law of the scores as R has it against 41 quantiles, which are 0.17 of a range apart. */
    @ParameterizedTest
    @MethodSource("cases")
    void quantilesAreThoseThatRFinds(Case given) {
        double[] expected = R.row(given.name);

        Calibration.Knot knot = CalibrationFit.of(given.hindcasts()).at(8);

        assertThat(knot.early()).isCloseTo(expected[0], within(0.01));
        assertThat(knot.middle()).isCloseTo(expected[1], within(0.01));
        assertThat(knot.late()).isCloseTo(expected[2], within(0.01));
    }

    @Test
    void withoutARecordTheModelStands() {
        assertThat(CalibrationFit.of(List.of())).isEqualTo(Calibration.NONE);

        Calibration.Knot farFromAnyCase =
                CalibrationFit.of(List.of(hindcast(1, 32, 2, 0.3))).at(1);

        assertThat(farFromAnyCase.early()).isCloseTo(-1, within(1e-9));
        assertThat(farFromAnyCase.middle()).isCloseTo(0, within(1e-9));
        assertThat(farFromAnyCase.late()).isCloseTo(1, within(1e-9));
        assertThat(farFromAnyCase.batches()).isZero();
    }

    @Test
    void aRecordThatTellsNothingChangesNothing() {
        List<Hindcast> vague = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            vague.add(hindcast(i, 8, 1, 1e6));
        }

        Calibration.Knot knot = CalibrationFit.of(vague).at(8);

        assertThat(knot.early()).isCloseTo(-1, within(1e-5));
        assertThat(knot.middle()).isCloseTo(0, within(1e-5));
        assertThat(knot.late()).isCloseTo(1, within(1e-5));
    }

    /**
     * 4 000 batches whose scores are normal around 0.4 with 1.5, each seen with an error of 0.7: 10, 50 and 90 % are 0.4 ± 1.5 z and 0.4, to what
     * eight imagined batches and chance (0.04 of a score at the ends) leave.
     */
    @Test
    void whatIsSeenWithErrorIsToldWithoutIt() {
        var random = new Random(20_261_129);
        List<Hindcast> seen = new ArrayList<>();
        for (int i = 0; i < 4_000; i++) {
            double ready = 0.4 + 1.5 * random.nextGaussian();
            seen.add(hindcast(i, 8, ready + 0.7 * random.nextGaussian(), 0.7));
        }

        Calibration.Knot knot = CalibrationFit.of(seen).at(8);

        double z = 1.2815515655446004;
        assertThat(knot.early() * z).isCloseTo(0.4 - 1.5 * z, within(0.12));
        assertThat(knot.middle() * z).isCloseTo(0.4, within(0.08));
        assertThat(knot.late() * z).isCloseTo(0.4 + 1.5 * z, within(0.12));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void quantilesRiseWhateverTheRecordAndWhateverOrderItComesIn(long seed) {
        var random = new Random(seed);
        List<Hindcast> any = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double score = 4 * random.nextGaussian();
            for (int day = 0; day < 5; day++) {
                any.add(hindcast(
                        i,
                        "H" + i % 3,
                        READY.plus(Duration.ofDays(random.nextInt(60))),
                        40 * random.nextDouble() - 5,
                        score,
                        0.05 + random.nextDouble()));
            }
        }
        Calibration first = CalibrationFit.of(any);
        Collections.shuffle(any, random);

        assertThat(CalibrationFit.of(any)).isEqualTo(first);
        for (Calibration.Knot knot : first.knots()) {
            assertThat(knot.early()).isLessThan(knot.middle());
            assertThat(knot.middle()).isLessThan(knot.late());
        }
    }

    @Test
    void oneBatchOfManyDaysCountsAsOne() {
        List<Hindcast> once = List.of(hindcast(1, 8, 3, 0.1));
        List<Hindcast> often = Collections.nCopies(30, hindcast(1, 8, 3, 0.1));

        assertThat(CalibrationFit.of(often).at(8).late())
                .isCloseTo(CalibrationFit.of(once).at(8).late(), within(1e-9));
        assertThat(CalibrationFit.of(often).at(8).batches()).isEqualTo(1);
        // It lies above, so a tenth of all nine batches are 0.9 of the eight imagined ones.
        Calibration.Knot knot = CalibrationFit.of(once).at(8);
        // What so few batches leave open widens the range by a part of 0.09 / φ(z)² / 81 / 2, as far as the batch is
        // known.
        double wider = 1 + 0.09 / Math.pow(NORMAL.density(1.2815515655446004), 2) / 81 / 2;
        double exact = knot.middle() + (knot.early() - knot.middle()) / wider;
        assertThat(exact * 1.2815515655446004).isCloseTo(NORMAL.inverseCumulativeProbability(0.9 / 8), within(3e-3));
    }

    /** Four batches of each house that went alike are worth little more than one. */
    @Test
    void batchesThatShareTheirWeatherTellLess() {
        List<Hindcast> apart = new ArrayList<>();
        List<Hindcast> together = new ArrayList<>();
        double[] spread = spread();
        for (int i = 0; i < 48; i++) {
            double score = 2 * spread[i % 12];
            apart.add(hindcast(i, "H" + i, READY, 8, score, 0.3));
            together.add(hindcast(i, "H" + i % 12, READY, 8, score, 0.3));
        }

        Calibration.Knot alone = CalibrationFit.of(apart).at(8);
        Calibration.Knot inHouses = CalibrationFit.of(together).at(8);

        assertThat(alone.batches()).isEqualTo(48);
        // Twelve houses of four that are wholly alike: 4 · (12/11) · (47/48) times counted.
        assertThat(inHouses.batches()).isCloseTo(48 / (4 * 12.0 / 11 * 47 / 48), within(1e-3));
        assertThat(inHouses.width()).isBetween(1.0, alone.width());
    }

    @Test
    void leadsBetweenAreWeighedByTheLogarithm() {
        // A lead of √(4·8) lies half way between 4 and 8 days.
        Calibration of = CalibrationFit.of(List.of(hindcast(1, Math.sqrt(32), 1, 0.3)));

        assertThat(of.at(4).batches()).isCloseTo(0.5, within(1e-12));
        assertThat(of.at(8).batches()).isCloseTo(0.5, within(1e-12));
        assertThat(of.at(2).batches()).isZero();
        assertThat(of.at(16).batches()).isZero();
    }
}
