package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.learning.SimulatedNursery.TRUE_DAYS;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.learning.SimulatedNursery.Manner;

/** Prints the table of docs/models/learning.md; run by name. Each line is 40 nurseries, seeds 1 to 40. */
class LearningFigures {

    private static final int SEEDS = 40;

    @ParameterizedTest(name = "{0} batches seen {1} days apart, looks entered: {2}")
    @CsvSource({
        "30, 1, true",
        "30, 2, true",
        "30, 3, true",
        "30, 7, true",
        "30, 1, false",
        "30, 2, false",
        "30, 7, false",
        "30, 0, false",
        "10, 1, true"
    })
    void printsHowFarTheDaysAreOut(int batches, double everyDays, boolean looks) {
        double[] square = new double[4];
        int withinFive = 0;
        int inRange = 0;
        double spread = 0;
        double millis = 0;
        for (long seed = 1; seed <= SEEDS; seed++) {
            var nursery = new SimulatedNursery(seed, Manner.usual(batches).rounds(everyDays, looks));
            var records = nursery.records();
            long begun = System.nanoTime();
            LearnedProfile learned = Learning.learn(SimulatedNursery.profile(1.25, 0.15), records, nursery.end);
            millis += (System.nanoTime() - begun) / 1e6 / SEEDS;
            double whole = 0;
            boolean allWithin = true;
            for (int k = 0; k < 3; k++) {
                Evidence.OfStage stage = learned.evidence().stages().get(k);
                double ratio = stage.daysLearned() / TRUE_DAYS[k];
                whole += stage.daysLearned();
                square[k] += (ratio - 1) * (ratio - 1) / SEEDS;
                allWithin &= Math.abs(ratio - 1) <= 0.05;
                inRange += stage.daysLow() <= TRUE_DAYS[k] && TRUE_DAYS[k] <= stage.daysHigh() ? 1 : 0;
            }
            square[3] += (whole / 26 - 1) * (whole / 26 - 1) / SEEDS;
            withinFive += allWithin ? 1 : 0;
            spread += learned.profile().rateSpread() / SEEDS;
        }
        System.out.printf(
                Locale.ROOT,
                "| %d | %.0f | %s | %.1f %% | %.1f %% | %.1f %% | %.1f %% | %d of %d | %d of %d | %.3f | %.0f ms |%n",
                batches,
                everyDays,
                looks ? "yes" : "no",
                100 * Math.sqrt(square[0]),
                100 * Math.sqrt(square[1]),
                100 * Math.sqrt(square[2]),
                100 * Math.sqrt(square[3]),
                withinFive,
                SEEDS,
                inRange,
                3 * SEEDS,
                spread,
                millis);

        assertThat(Math.sqrt(square[3])).isCloseTo(0, within(0.06));
    }
}
