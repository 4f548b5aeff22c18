package rootcast.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BetaBinomialTest {

    /** So much weight that the success rate is as good as known: the binomial. */
    private static final double KNOWN = 1e10;

    /** Draws from an urn, one at a time: an algorithm that shares nothing with the code. */
    private static double[] byUrn(int trials, double alpha, double beta) {
        double[] successes = {1};
        for (int drawn = 0; drawn < trials; drawn++) {
            double[] next = new double[drawn + 2];
            for (int k = 0; k <= drawn; k++) {
                double success = (alpha + k) / (alpha + beta + drawn);
                next[k + 1] += successes[k] * success;
                next[k] += successes[k] * (1 - success);
            }
            successes = next;
        }
        return successes;
    }

    @Test
    void agreesWithDrawingFromAnUrnForAnyShape() {
        var random = new Random(20260301);
        for (int run = 0; run < 300; run++) {
            int trials = random.nextInt(0, 120);
            double alpha = Math.exp(random.nextDouble(-3, 7));
            double beta = Math.exp(random.nextDouble(-3, 7));
            double[] expected = byUrn(trials, alpha, beta);

            var counts = new BetaBinomial(trials, new Beta(alpha, beta)).counts();

            double tail = 0;
            for (int k = trials; k >= 0; k--) {
                tail += expected[k];
                assertThat(counts.probability(k))
                        .as("seed 20260301, n %d a %s b %s k %d", trials, alpha, beta, k)
                        .isCloseTo(expected[k], within(1e-12));
                assertThat(counts.atLeast(k)).isCloseTo(tail, within(1e-12));
            }
        }
    }

    /** SciPy 1.17.1: {@code d = scipy.stats.betabinom(n, a, b)}; d.pmf(k), d.sf(k - 1), d.ppf(.1), ppf(.5), ppf(.9). */
    @ParameterizedTest
    @CsvSource({
        "10, 2.0, 3.0, 0, 0.06593406593406595, 1, 1, 4, 7, 6",
        "10, 2.0, 3.0, 5, 0.1258741258741259, 0.4055944055944056, 1, 4, 7, 6",
        "10, 2.0, 3.0, 9, 0.02997002997002995, 0.0409590409590409, 1, 4, 7, 6",
        "10, 2.0, 3.0, 10, 0.01098901098901099, 0.01098901098901095, 1, 4, 7, 6",
        "105, 95.0, 5.0, 0, 4.234041402736844e-54, 1, 95, 100, 103, 10.12314356435644",
        "105, 95.0, 5.0, 52, 4.027607726848799e-15, 0.9999999999999976, 95, 100, 103, 10.12314356435644",
        "105, 95.0, 5.0, 94, 0.02368546429007296, 0.9572966969049803, 95, 100, 103, 10.12314356435644",
        "105, 95.0, 5.0, 105, 0.02552255891630061, 0.02552255891632871, 95, 100, 103, 10.12314356435644",
        "2100, 180.0, 20.0, 0, 3.626355842864231e-247, 1, 1829, 1893, 1947, 2162.686567164179",
        "2100, 180.0, 20.0, 1050, 8.65163089867101e-33, 1, 1829, 1893, 1947, 2162.686567164179",
        "2100, 180.0, 20.0, 1890, 0.008520902093967629, 0.5293813091896207, 1829, 1893, 1947, 2162.686567164179",
        "2100, 180.0, 20.0, 2100, 2.256182965205698e-22, 6.035172361862351e-13, 1829, 1893, 1947, 2162.686567164179",
        "50, 0.5, 0.5, 0, 0.07958923738717874, 1, 1, 25, 49, 318.75",
        "50, 0.5, 0.5, 25, 0.01260571439565697, 0.5063028571978285, 1, 25, 49, 318.75",
        "50, 0.5, 0.5, 45, 0.02064015917300299, 0.2192174922088176, 1, 25, 49, 318.75",
        "50, 0.5, 0.5, 50, 0.07958923738717874, 0.07958923738717916, 1, 25, 49, 318.75",
        "40, 9.0, 0.6, 0, 1.451792762119053e-10, 1, 33, 39, 40, 10.96698113207547",
        "40, 9.0, 0.6, 20, 0.0005936259901728303, 0.9987467501061721, 33, 39, 40, 10.96698113207547",
        "40, 9.0, 0.6, 36, 0.06293042584830377, 0.8035575043206884, 33, 39, 40, 10.96698113207547",
        "40, 9.0, 0.6, 40, 0.357869224572292, 0.357869224572299, 33, 39, 40, 10.96698113207547",
    })
    void agreesWithSciPy(
            int n, double a, double b, int k, double pmf, double atLeast, int q10, int q50, int q90, double variance) {
        var distribution = new BetaBinomial(n, new Beta(a, b));
        var counts = distribution.counts();

        assertThat(counts.probability(k)).isCloseTo(pmf, within(1e-11));
        assertThat(Math.exp(distribution.logProbability(k))).isCloseTo(pmf, within(1e-11));
        assertThat(counts.atLeast(k)).isCloseTo(atLeast, within(1e-11));
        assertThat(counts.quantile(0.1)).isEqualTo(q10);
        assertThat(counts.quantile(0.5)).isEqualTo(q50);
        assertThat(counts.quantile(0.9)).isEqualTo(q90);
        assertThat(distribution.variance()).isCloseTo(variance, within(variance * 1e-12));
        assertThat(counts.variance()).isCloseTo(variance, within(variance * 1e-9));
        assertThat(counts.mean()).isCloseTo(distribution.mean(), within(n * 1e-12));
    }

    /** facts-operations.md B3: least n with P(at least N good of n) ≥ c. Computed there with SciPy. */
    @ParameterizedTest(name = "{0} good at rate {1} worth {2}: start {3}, {4}, {5}")
    @CsvSource({
        "100, .90, 100, 111, 118, 121",
        "100, .90,  50, 110, 120, 124",
        "100, .90,  10, 108, 130, 141",
        "100, .90, 1e10, 111, 116, 117",
        " 84, .92, 1e10,  91,  95,  96",
        "1000, .85, 1e10, 1176, 1195, 1201",
        "1000, .894039, 1e10, 1118, 1133, 1138",
    })
    void numberToStartForSoManyGood(int good, double rate, double weight, int half, int nine, int nineteen) {
        double[] confidence = {0.5, 0.9, 0.95};
        int[] expected = {half, nine, nineteen};
        for (int i = 0; i < 3; i++) {
            double sure = confidence[i];
            assertThat(FirstTrue.in(
                            good,
                            3 * good,
                            n -> new BetaBinomial(n, Beta.ofMean(rate, weight))
                                            .counts()
                                            .atLeast(good)
                                    >= sure))
                    .isEqualTo(expected[i]);
        }
    }

    /** facts-operations.md B4: four stages .98/.97/.95/.99 from 1,120. Computed there. */
    @Test
    void aKnownRateGivesTheBinomial() {
        var counts = new BetaBinomial(1_120, Beta.ofMean(0.98 * 0.97 * 0.95 * 0.99, KNOWN)).counts();

        assertThat(counts.mean()).isCloseTo(1001.3, within(0.05));
        assertThat(Math.sqrt(counts.variance())).isCloseTo(10.3, within(0.05));
        assertThat(counts.quantile(0.05)).isEqualTo(984);
        assertThat(counts.quantile(0.1)).isEqualTo(988);
    }

    @Test
    void cuttingOffLeavesTheSameProportions() {
        double[] all = byUrn(60, 20, 3);
        double kept = 0;
        for (int k = 10; k <= 40; k++) {
            kept += all[k];
        }

        var distribution = new BetaBinomial(60, new Beta(20, 3));
        var cut = distribution.between(10, 40);

        assertThat(cut.probability(41)).isZero();
        assertThat(cut.probability(9)).isZero();
        assertThat(cut.probability(38)).isCloseTo(all[38] / kept, within(1e-12));
        assertThat(distribution.logProbabilityBetween(10, 40)).isCloseTo(Math.log(kept), within(1e-10));
    }

    /** Hand: with n = 1,000 and P known to be 0.98, P(0 alive) = 0.02^1000, which no double can hold. */
    @Test
    void farTailsDoNotVanish() {
        var distribution = new BetaBinomial(1_000, Beta.ofMean(0.98, 1e12));

        assertThat(distribution.between(0, 0).mean()).isZero();
        assertThat(distribution.logProbabilityBetween(0, 0)).isCloseTo(1_000 * Math.log(0.02), within(0.01));
        assertThat(distribution.between(0, 500).quantile(0.5)).isEqualTo(500);
    }

    @Test
    void noTrialsGiveNoSuccesses() {
        assertThat(new BetaBinomial(0, new Beta(2, 2)).counts().quantile(0.9)).isZero();
    }

    @Test
    void refusesARunOutsideTheTrials() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new BetaBinomial(10, new Beta(1, 1)).between(3, 11))
                .withMessageContaining("3 to 11");
        assertThatIllegalArgumentException().isThrownBy(() -> new Beta(0, 1));
    }
}
