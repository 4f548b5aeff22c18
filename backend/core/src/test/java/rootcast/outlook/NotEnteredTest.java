package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.batch;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.crop.Stage;
import rootcast.crop.Variation;
import rootcast.outlook.BatchHistory.Placement;

/**
 * What it says that nobody entered a stage. At 22 °C a day gives one reference-day, the stages take 7, 9 and 10 of them, and ln of the rate is
 * normal with a standard deviation of 0.1. Of rounds every w days two in three are as usual, one in six e^(0.5 √3) longer and one as
 * much shorter (the nodes of a normal law of sd 0.5).
 */
class NotEnteredTest {

    private static final double[] ROUNDS = {2 * Math.exp(-0.5 * Math.sqrt(3)), 2, 2 * Math.exp(0.5 * Math.sqrt(3))};
    private static final double[] SHARES = {1 / 6.0, 2 / 3.0, 1 / 6.0};

    private static DateDistribution ready(double asOfDay, double enteredShare, Map<Stage, Instant> entered) {
        Variation variation = new Variation(2, 0.26, 0.3, 0, enteredShare, 0.9);
        return OutlookModel.outlook(
                        batch(entered, List.of(new Placement("A", STUCK))),
                        CROP.varying(variation),
                        TRAY_105,
                        houses(days(asOfDay), "A", constant(22, STUCK.minus(Duration.ofDays(9)), days(asOfDay))))
                .ready();
    }

    /** Nothing was ever entered: all three stages of this batch run at its one rate M and end at 7, 16 and 26 days over M. */
    private static double likely(double multiplier, double asOfDay, double enteredShare) {
        double likely = 1;
        for (double end : new double[] {7 / multiplier, 16 / multiplier, 26 / multiplier}) {
            double met = 0;
            for (int i = 0; i < 3; i++) {
                met += SHARES[i] * Math.min(1, Math.max(0, asOfDay - end) / ROUNDS[i]);
            }
            likely *= 1 - enteredShare * met;
        }
        return likely;
    }

    /** Bayes' rule by the trapezoid rule on 20 000 steps, apart from the code; how dates of the hours to come widen is left out of it. */
    private static double readyBy(double day, double asOfDay, double enteredShare) {
        var prior = LogNormalDistribution.of(0, 0.1);
        double step = 2e-4 / 2;
        double whole = 0;
        double by = 0;
        for (double multiplier = 0.5; multiplier < 1.7; multiplier += step) {
            double mass = prior.density(multiplier) * likely(multiplier, asOfDay, enteredShare);
            whole += mass;
            by += 26 / multiplier <= day ? mass : 0;
        }
        return by / whole;
    }

    @ParameterizedTest(name = "asked on day {0}")
    @ValueSource(doubles = {6.5, 7.5, 9})
    void whoComesEveryTwoDaysAndEntersNineStagesInTenWouldHaveMetIt(double asOfDay) {
        DateDistribution without = ready(asOfDay, 0, Map.of());
        DateDistribution with = ready(asOfDay, 0.9, Map.of());
        for (double day = 23; day <= 30; day += 1) {
            double moved = with.probabilityBy(days(day)) - without.probabilityBy(days(day));
            double expected = readyBy(day, asOfDay, 0.9) - readyBy(day, asOfDay, 0);

            // Widening by the temperatures to come blurs both alike; 41 nodes leave the rest.
            assertThat(moved).as("by day %s", day).isCloseTo(expected, within(0.03));
        }
        assertThat(with.quantile(0.5)).isAfterOrEqualTo(without.quantile(0.5));
    }

    @Test
    void nothingIsSaidBeforeAStageCanHaveEnded() {
        assertThat(ready(3, 0.9, Map.of()).quantile(0.5))
                .isEqualTo(ready(3, 0, Map.of()).quantile(0.5));
    }

    @Test
    void aStageThatWasEnteredIsNotMissed() {
        Map<Stage, Instant> entered = Map.of(Stage.CALLUS, days(7));

        assertThat(ready(9, 1, entered)).usingRecursiveComparison().isEqualTo(ready(9, 0, entered));
    }

    /** Its dates lie behind by days, and whoever comes would have entered the stage: the batch is one of the slow ones. */
    @Test
    void aBatchThatNobodyEntersStaysAhead() {
        Map<Stage, Instant> rooted = Map.of(Stage.CALLUS, days(7), Stage.ROOT, days(16));

        Instant untold = ready(30, 0, rooted).quantile(0.5);
        Instant told = ready(30, 0.5, rooted).quantile(0.5);
        Instant surely = ready(30, 1, rooted).quantile(0.5);

        assertThat(told).isAfterOrEqualTo(untold);
        assertThat(surely).isAfter(told.plus(Duration.ofHours(3)));
    }
}
