package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The moments against plain summing over all ends: the midpoint rule on 160 nodes a stage over the whole of each bound, written
 * apart from the code.
 */
class UnseenEndsTest {

    private static final int NODES = 160;

    private static final double[] GAINED = {8.2, 9.5, 9.1};
    private static final double[] BEGIN_RATE = {0, 0.95, 1.1};
    private static final double[] END_RATE = {0.9, 1.05, 1};
    private static final double[] MEAN = {Math.log(6.6), Math.log(9), Math.log(9.8)};
    private static final double[][] COVARIANCE = {{0.0125, 0.01, 0.01}, {0.01, 0.0125, 0.01}, {0.01, 0.01, 0.0125}};

    /** Mass, three means, three variances and the covariance of the first two, mean of the last end. */
    private static double[] summed(int stages, double leastDays, double mostDays) {
        double step = (mostDays - leastDays) / NODES;
        double[][] precision = inverted(stages);
        double[] sum = new double[9];
        int whole = (int) Math.pow(NODES, stages);
        double[] y = new double[3];
        for (int cell = 0; cell < whole; cell++) {
            double begun = 0;
            double weight = 1;
            boolean isPossible = true;
            int rest = cell;
            for (int k = 0; k < stages; k++) {
                double u = leastDays + (rest % NODES + 0.5) * step;
                rest /= NODES;
                double took = GAINED[k] + BEGIN_RATE[k] * begun - END_RATE[k] * u;
                isPossible &= took > 0.01;
                y[k] = Math.log(Math.max(took, 0.01));
                weight *= END_RATE[k] / took * step;
                begun = u;
            }
            if (isPossible) {
                double square = 0;
                for (int i = 0; i < stages; i++) {
                    for (int j = 0; j < stages; j++) {
                        square += (y[i] - MEAN[i]) * precision[i][j] * (y[j] - MEAN[j]);
                    }
                }
                weight *= Math.exp(-square / 2);
                sum[0] += weight;
                for (int k = 0; k < stages; k++) {
                    sum[1 + k] += weight * y[k];
                    sum[4 + k] += weight * y[k] * y[k];
                }
                sum[7] += weight * y[0] * y[1];
                sum[8] += weight * begun;
            }
        }
        for (int i = 1; i < sum.length; i++) {
            sum[i] /= sum[0];
        }
        return sum;
    }

    private static double[][] inverted(int stages) {
        double[][] m = Matrix3.of(0, 1);
        for (int i = 0; i < stages; i++) {
            for (int j = 0; j < stages; j++) {
                m[i][j] = COVARIANCE[i][j];
            }
        }
        return Matrix3.inverse(m);
    }

    private static UnseenEnds ends(int stages, double leastDays, double mostDays) {
        return new UnseenEnds(
                stages, GAINED, BEGIN_RATE, END_RATE, new double[] {leastDays, leastDays, leastDays}, new double[] {
                    mostDays, mostDays, mostDays
                });
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 2, 7})
    void threeStagesAreAsSummingOverAllEndsHasThem(double mostDays) {
        double[] expected = summed(3, -0.3, mostDays);
        UnseenEnds.Moments moments = ends(3, -0.3, mostDays).after(MEAN, COVARIANCE);

        for (int k = 0; k < 3; k++) {
            assertThat(moments.mean()[k]).as("mean %d", k).isCloseTo(expected[1 + k], within(2e-3));
            double variance = expected[4 + k] - expected[1 + k] * expected[1 + k];
            assertThat(Math.sqrt(moments.covariance()[k][k] / variance)).isCloseTo(1, within(0.02));
        }
        assertThat(moments.covariance()[0][1]).isCloseTo(expected[7] - expected[1] * expected[2], within(2e-4));
        assertThat(moments.unseenDays()[2]).isCloseTo(expected[8], within(0.02));
        assertThat(moments.logMass() - ends(3, -0.3, 1).after(MEAN, COVARIANCE).logMass())
                .isCloseTo(Math.log(expected[0] / summed(3, -0.3, 1)[0]), within(0.01));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void soAreFewer(int stages) {
        double[] expected = summed(stages, 0, 4);
        UnseenEnds.Moments moments = ends(stages, 0, 4).after(MEAN, COVARIANCE);

        for (int k = 0; k < stages; k++) {
            assertThat(moments.mean()[k]).isCloseTo(expected[1 + k], within(2e-3));
            double variance = expected[4 + k] - expected[1 + k] * expected[1 + k];
            assertThat(Math.sqrt(moments.covariance()[k][k] / variance)).isCloseTo(1, within(0.02));
        }
    }
}
