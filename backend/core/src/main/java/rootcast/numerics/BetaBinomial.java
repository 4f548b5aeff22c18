package rootcast.numerics;

import java.util.Arrays;
import org.apache.commons.numbers.gamma.LogBeta;

/**
 * How many of {@code trials} succeed when all share one success probability that is itself Beta distributed.
 *
 * <p>P(k) = C(n, k) · B(k + α, n − k + β) / B(α, β). The whole distribution is built from its largest term by
 * P(k + 1) / P(k) = (n − k)(k + α) / ((k + 1)(n − k − 1 + β)), so no term overflows and none needs a logarithm. Terms
 * under 1e-20 of the largest are dropped where the distribution has one peak.
 *
 * <p>Source: Skellam 1948, J. Roy. Statist. Soc. B 10:257-261; Johnson, Kemp and Kotz, Univariate Discrete
 * Distributions, 3rd ed. (2005), §6.2.2.
 *
 * @param trials  0 or more
 * @param success the shared probability
 */
public record BetaBinomial(int trials, Beta success) {

    private static final double NEGLIGIBLE = 1e-20;

    public BetaBinomial {
        if (trials < 0) {
            throw new IllegalArgumentException("trials " + trials + " must be 0 or more");
        }
    }

    public double mean() {
        return trials * success.mean();
    }

    /** n·αβ(α + β + n) / ((α + β)²(α + β + 1)). */
    public double variance() {
        return trials * success.variance() * (success.alpha() + success.beta() + trials);
    }

    public CountDistribution counts() {
        return between(0, trials);
    }

    /** The distribution given that the count lies from {@code low} to {@code high}, both included. */
    public CountDistribution between(int low, int high) {
        requireWithin(low, high);
        Weights weights = weights(low, high);
        return CountDistribution.ofWeights(weights.first, weights.values);
    }

    /** ln P(low ≤ count ≤ high); exact far out in a tail too, where the probability itself underflows. */
    public double logProbabilityBetween(int low, int high) {
        requireWithin(low, high);
        Weights weights = weights(low, high);
        double sum = 0;
        for (double weight : weights.values) {
            sum += weight;
        }
        return logProbability(peakWithin(low, high)) + Math.log(sum);
    }

    /** ln P(count). */
    public double logProbability(int count) {
        double ways = -Math.log1p(trials) - LogBeta.value(count + 1.0, trials - count + 1.0);
        return ways
                + LogBeta.value(count + success.alpha(), trials - count + success.beta())
                - LogBeta.value(success.alpha(), success.beta());
    }

    private record Weights(int first, double[] values) {}

    private Weights weights(int low, int high) {
        double[] all = new double[high - low + 1];
        double stop = hasTwoPeaks() ? -1 : NEGLIGIBLE;
        int peak = peakWithin(low, high);
        all[peak - low] = 1;
        int last = peak;
        while (last < high && all[last - low] > stop) {
            all[last + 1 - low] = all[last - low] * ratioUpwardFrom(last);
            last++;
        }
        int first = peak;
        while (first > low && all[first - low] > stop) {
            all[first - 1 - low] = all[first - low] / ratioUpwardFrom(first - 1);
            first--;
        }
        return new Weights(first, Arrays.copyOfRange(all, first - low, last - low + 1));
    }

    /** P(count + 1) / P(count). */
    public double ratioUpwardFrom(int count) {
        double failures = trials - count;
        return failures * (count + success.alpha()) / ((count + 1.0) * (failures - 1 + success.beta()));
    }

    private boolean hasTwoPeaks() {
        return success.alpha() < 1 && success.beta() < 1;
    }

    private int peakWithin(int low, int high) {
        double a = success.alpha();
        double b = success.beta();
        if (hasTwoPeaks()) {
            return logProbability(low) > logProbability(high) ? low : high;
        }
        if (b < 1) {
            return high;
        }
        if (a < 1) {
            return low;
        }
        double flat = a + b - 2;
        double peak = flat == 0 ? high : Math.ceil((trials * (a - 1) + 1 - b) / flat);
        return (int) Math.max(low, Math.min(high, peak));
    }

    private void requireWithin(int low, int high) {
        if (low < 0 || low > high || high > trials) {
            throw new IllegalArgumentException("%d to %d is no run within 0 to %d".formatted(low, high, trials));
        }
    }
}
