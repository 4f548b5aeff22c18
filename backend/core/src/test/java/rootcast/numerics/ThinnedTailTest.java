package rootcast.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Random;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against the sum over N of Commons Statistics' binomial tails, which shares nothing with the code under test. */
class ThinnedTailTest {

    /** A tray is sold with some dozens of plants. */
    private static final int FEWEST = 20;

    /** Three plants for certain: 3p²(1 − p) + p³ for two of them, by hand. */
    @Test
    void ofACertainNumberItIsABinomialTail() {
        var two = new ThinnedTail(CountDistribution.certain(3), 2);

        assertThat(two.at(0.5)).isCloseTo(0.5, within(1e-4));
        assertThat(two.at(0.9)).isCloseTo(0.972, within(1e-4));
        assertThat(two.at(1)).isEqualTo(1);
        assertThat(two.at(0)).isZero();
        assertThat(two.whole()).isEqualTo(1);
    }

    @Test
    void moreThanThereCanBeIsImpossible() {
        var four = new ThinnedTail(CountDistribution.certain(3), 4);

        for (double p : new double[] {0, 0.3, 0.99, 1}) {
            assertThat(four.at(p)).isZero();
            assertThat(four.upTo(p)).isZero();
        }
        assertThatIllegalArgumentException().isThrownBy(() -> new ThinnedTail(CountDistribution.certain(3), 0));
    }

    @ParameterizedTest(name = "{0} plants, survival {1} of weight {2}")
    @CsvSource({
        "1050, 0.93, 60",
        "4200, 0.90, 150",
        "4200, 0.97, 4000",
        "24000, 0.9, 60",
        "315, 0.5, 20",
        "2000, 0.995, 1000",
    })
    void agreesWithTheSumOfBinomialTails(int stuck, double mean, double weight, TestReporter reporter) {
        CountDistribution plants = new BetaBinomial(stuck, Beta.ofMean(mean, weight)).counts();
        double worst = 0;
        for (double share : new double[] {0.02, 0.3, 0.6, 0.85, 0.95, 1}) {
            int needed = (int) Math.max(FEWEST, share * plants.mean());
            var tail = new ThinnedTail(plants, needed);
            for (double p = 0.01; p <= 1; p += 0.01) {
                worst = Math.max(worst, Math.abs(tail.at(p) - summed(plants, needed, p)));
            }
        }
        reporter.publishEntry(String.format(Locale.ROOT, "largest difference %.1e", worst));

        assertThat(worst).isLessThan(1e-3);
    }

    @ParameterizedTest(name = "{0} counted plants, {1} needed")
    @CsvSource({"1000, 900", "1000, 1000", "1005, 1000", "4000, 100", "4000, 3700", "24000, 21000", "100, 100"})
    void agreesWithTheBinomialTailOfACountedNumber(int counted, int needed) {
        var tail = new ThinnedTail(CountDistribution.certain(counted), needed);
        for (double p = 0.005; p <= 1; p += 0.005) {
            double exact = BinomialDistribution.of(counted, p).survivalProbability(needed - 1);
            assertThat(tail.at(p)).as("p %s", p).isCloseTo(exact, within(5e-4));
        }
    }

    /** The integral by the trapezoid rule over a fine grid. */
    @Test
    void theIntegralIsThatOfTheAnswers() {
        var random = new Random(5);
        for (int run = 0; run < 50; run++) {
            CountDistribution plants = new BetaBinomial(
                            500 + random.nextInt(3_000), Beta.ofMean(0.8 + 0.19 * random.nextDouble(), 100))
                    .counts();
            var tail = new ThinnedTail(plants, 20 + random.nextInt((int) plants.mean() - 20));
            double sum = 0;
            int steps = 20_000;
            for (int i = 0; i < steps; i++) {
                double before = tail.upTo((double) i / steps);
                assertThat(before).isCloseTo(sum, within(1e-6));
                sum += (tail.at((double) i / steps) + tail.at((i + 1.0) / steps)) / 2 / steps;
            }
            assertThat(tail.upTo(1)).isCloseTo(sum, within(1e-6));
        }
    }

    @Test
    void theTableOfTheNormalShareIsTheNormalShare() {
        var normal = NormalDistribution.of(0, 1);
        for (double z = -12; z <= 12; z += 0.0037) {
            assertThat(NormalShare.below(z)).isCloseTo(normal.cumulativeProbability(z), within(2e-6));
        }
        assertThat(NormalShare.below(Double.NEGATIVE_INFINITY)).isZero();
        assertThat(NormalShare.below(Double.POSITIVE_INFINITY)).isEqualTo(1);
    }

    private static double summed(CountDistribution plants, int needed, double p) {
        double sum = 0;
        for (int n = Math.max(needed, plants.first()); n <= plants.last(); n++) {
            double probability = plants.probability(n);
            if (probability > 1e-12) {
                sum += probability * BinomialDistribution.of(n, p).survivalProbability(needed - 1);
            }
        }
        return sum;
    }
}
