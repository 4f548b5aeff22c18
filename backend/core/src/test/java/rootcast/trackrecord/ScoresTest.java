package rootcast.trackrecord;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScoresTest {

    private static final double[] OUTCOMES = {3, -.5, 2, 7, 2};

    private static double mean(double quantile, double... forecasts) {
        return IntStream.range(0, OUTCOMES.length)
                .mapToDouble(i -> Scores.pinball(quantile, forecasts[i], OUTCOMES[i]))
                .average()
                .orElseThrow();
    }

    /** The example of sktime 0.23's documentation of its pinball loss (V). */
    @Test
    void pinballLossesAreThePublishedOnes() {
        double low = mean(.05, 1.25, 0, 1, 4, .625);
        double middle = mean(.5, 2.5, 0, 2, 8, 1.25);
        double high = mean(.95, 3.75, 0, 3, 12, 1.875);

        assertThat(low).isCloseTo(.16625, within(1e-12));
        assertThat(middle).isCloseTo(.275, within(1e-12));
        assertThat(high).isCloseTo(.09625, within(1e-12));
        assertThat((low + middle + high) / 3).isCloseTo(.1791667, within(1e-7));
    }

    /** gefcom17Model (V): three times y = 2700, f = 2671, q = 0.1 sum to 8.7. Ready dates by hand (C). */
    @ParameterizedTest(name = "quantile {0} at {1}, outcome {2}: {3}")
    @CsvSource({
        "0.1, 2671, 2700, 2.9",
        "0.1, 25.4, 31, 0.56",
        "0.5, 28.0, 31, 1.50",
        "0.9, 30.6, 31, 0.36",
        "0.1, 25.4, 26, 0.06",
        "0.5, 28.0, 26, 1.00",
        "0.9, 30.6, 26, 0.46"
    })
    void pinballOfReadyDates(double quantile, double forecast, double outcome, double loss) {
        assertThat(Scores.pinball(quantile, forecast, outcome)).isCloseTo(loss, within(1e-9));
    }

    /** Mean |x − y| is 7/3, mean |x − x′| is 20/9: 7/3 − 10/9 = 1.222222 (C). */
    @Test
    void theRankedScoreOfThreeValues() {
        assertThat(Scores.crps(new double[] {27, 29, 32}, 31)).isCloseTo(1.222222, within(1e-6));
        assertThat(Scores.crps(new double[] {4}, 6.5)).isCloseTo(2.5, within(1e-12));
    }

    /**
     * Closed forms. Normal: Gneiting and others 2005, Mon. Wea. Rev. 133:1098; 0.10339992515976162 is the example of the
     * scoringrules documentation (V), the others computed and checked by integration (C).
     */
    @ParameterizedTest(name = "N({0}, {1}²), outcome {2}: {3}")
    @CsvSource({"0.1, 0.4, 0, 0.10339992515976162", "0, 1, 0, .2336950", "0, 1, 1, .6024414", "28, 2, 31, 1.988848"})
    void manyEquallyLikelyValuesOfANormalComeToItsClosedForm(double mean, double sd, double outcome, double crps) {
        var normal = NormalDistribution.of(mean, sd);
        double[] values = IntStream.range(0, 2_000)
                .mapToDouble(i -> normal.inverseCumulativeProbability((i + 0.5) / 2_000))
                .toArray();

        assertThat(Scores.crps(values, outcome)).isCloseTo(crps, within(2e-4 * sd));
    }

    /** Lognormal: Jordan 2017, computed and checked by integration (C). */
    @Test
    void manyEquallyLikelyValuesOfALogNormalComeToItsClosedForm() {
        var rates = LogNormalDistribution.of(Math.log(28), 0.1);
        double[] values = IntStream.range(0, 2_000)
                .mapToDouble(i -> rates.inverseCumulativeProbability((i + 0.5) / 2_000))
                .toArray();

        assertThat(Scores.crps(values, 31)).isCloseTo(1.795966, within(1e-3));
    }
}
