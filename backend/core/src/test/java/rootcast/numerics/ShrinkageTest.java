package rootcast.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ShrinkageTest {

    /** Hits of 18 players in their first 45 at-bats of 1970: Efron and Morris 1977, Scientific American 236(5) (V). */
    private static final int[] HITS = {18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7};

    private static final double[] SEASON = {
        .346, .298, .276, .222, .273, .270, .263, .210, .269, .230, .264, .256, .303, .264, .226, .285, .316, .200
    };

    /** Published c = .212 and mean .265 (V); c = .21165, .2939 to .2422, errors .0753 and .0213 computed (C). */
    @Test
    void baseballAveragesShrinkByThePublishedFactor() {
        double[] averages = Arrays.stream(HITS).mapToDouble(hits -> hits / 45.0).toArray();
        double mean = Arrays.stream(averages).average().orElseThrow();
        double[] variances = new double[18];
        Arrays.fill(variances, mean * (1 - mean) / 45);

        Shrinkage shrunk = Shrinkage.of(averages, variances, 1);

        assertThat(shrunk.mean()).isCloseTo(0.26543, within(1e-5));
        assertThat((shrunk.values()[0] - mean) / (averages[0] - mean)).isCloseTo(0.21165, within(1e-5));
        assertThat(shrunk.values()[0]).isCloseTo(0.2939, within(1e-4));
        assertThat(shrunk.values()[17]).isCloseTo(0.2422, within(1e-4));
        assertThat(squaredError(averages)).isCloseTo(0.0753, within(1e-4));
        assertThat(squaredError(shrunk.values())).isCloseTo(0.0213, within(1e-4));
    }

    private static double squaredError(double[] guesses) {
        double sum = 0;
        for (int i = 0; i < guesses.length; i++) {
            sum += (guesses[i] - SEASON[i]) * (guesses[i] - SEASON[i]);
        }
        return sum;
    }

    @Test
    void valuesThatDifferLessThanTheirErrorsBecomeNearlyOne() {
        Shrinkage shrunk = Shrinkage.of(new double[] {1.0, 1.1, 0.9, 1.0, 1.05}, new double[] {1, 1, 1, 1, 1}, 1);

        assertThat(shrunk.spread()).isZero();
        // k = 5: what is left is 1 − 2/4.
        assertThat(shrunk.values()[1] - shrunk.mean()).isCloseTo(0.09 / 2, within(1e-9));
    }

    /** Two values, spread 3 between and error 4 each: 9 / (9 + 16) of the distance stays. */
    @Test
    void twoValuesShrinkByTheUsualSpread() {
        Shrinkage shrunk = Shrinkage.of(new double[] {0, 10}, new double[] {16, 16}, 3);

        assertThat(shrunk.mean()).isCloseTo(5, within(1e-12));
        assertThat(shrunk.values()[1]).isCloseTo(5 + 5 * 0.36, within(1e-12));
    }

    @Test
    void theLessSureValueMovesFurther() {
        Shrinkage shrunk = Shrinkage.of(new double[] {-2, 2, -2, 2, -2, 2}, new double[] {.1, .1, .1, .1, 2, 2}, 1);

        assertThat(Math.abs(shrunk.values()[5])).isLessThan(Math.abs(shrunk.values()[1]));
    }
}
