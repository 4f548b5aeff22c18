package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.crop.Cardinals;
import rootcast.learning.SimulatedNursery.Manner;
import rootcast.outlook.RTable;

/** What is foretold allows for spreads and temperatures that few batches tell. R 4.2.2: {@code learned-spreads.R} in the resources. */
class LearnedSpreadsTest {

    private static final RTable R_FIGURES = RTable.of("learning/learned-spreads.csv");

    @ParameterizedTest
    @ValueSource(strings = {"2", "4", "9.5", "60"})
    void aVarianceKnownFromFewIsAsWideAsStudentsRange(String freedom) {
        assertThat(Spreads.asWide(Double.parseDouble(freedom)))
                .isCloseTo(R_FIGURES.row("as wide", freedom)[0], within(1e-5));
    }

    @Test
    void temperaturesThatWereOnlyStatedLetBatchesOfColdAndWarmHousesDifferMore() {
        var grid = new CardinalGrid(new Cardinals(Cardinals.Form.BETA, 10, 26, 35, 22));

        double variance = grid.rateVariance((optimum, minimum) -> 0, new double[] {20, 21, 24});

        assertThat(variance).isCloseTo(R_FIGURES.row("rate variance", "stated")[0], within(1e-6));
    }

    @Test
    void temperaturesThatBatchesToldOrThatAreAlikeDoNot() {
        var grid = new CardinalGrid(new Cardinals(Cardinals.Form.BETA, 10, 26, 35, 22));

        assertThat(grid.rateVariance(
                        (optimum, minimum) -> optimum == 12 && minimum == 6 ? 1_000 : 0, new double[] {20, 24}))
                .isCloseTo(0, within(1e-12));
        assertThat(grid.rateVariance((optimum, minimum) -> 0, new double[] {21, 21}))
                .isCloseTo(0, within(1e-12));
        assertThat(grid.rateVariance((optimum, minimum) -> 0, new double[0])).isZero();
    }

    /** All batches differ by 0.1 in truth. */
    @Test
    void fourBatchesForetellWiderThanForty() {
        double few = 0;
        double many = 0;
        for (long seed = 1; seed <= 6; seed++) {
            var nursery = new SimulatedNursery(seed, Manner.usual(40));
            few += rateSpread(nursery, 4) / 6;
            many += rateSpread(nursery, 40) / 6;
        }

        assertThat(few).isGreaterThan(1.1 * many);
    }

    private static double rateSpread(SimulatedNursery nursery, int batches) {
        return Learning.learn(
                        SimulatedNursery.profile(1, 0.1), nursery.records().subList(0, batches), nursery.end)
                .profile()
                .rateSpread();
    }
}
