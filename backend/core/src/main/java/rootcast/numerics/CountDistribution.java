package rootcast.numerics;

import java.util.Arrays;

/**
 * The distribution of a whole number that is not negative, kept as upper tails on the run of numbers that have weight.
 *
 * <p>Below the run {@link #atLeast} is one, above it zero.
 */
public final class CountDistribution {

    private final int first;

    /** {@code tails[i]} is the probability of at least {@code first + i}; the last element is 0. */
    private final double[] tails;

    private final double mean;
    private final double variance;

    private CountDistribution(int first, double[] tails, double mean, double variance) {
        this.first = first;
        this.tails = tails;
        this.mean = mean;
        this.variance = variance;
    }

    /** All the probability on one number. */
    public static CountDistribution certain(int count) {
        return ofWeights(count, new double[] {1});
    }

    /**
     * Probabilities in proportion to {@code weights}, where {@code weights[i]} belongs to {@code first + i}.
     *
     * @throws IllegalArgumentException if a weight is negative or not finite, or none is over 0
     */
    public static CountDistribution ofWeights(int first, double[] weights) {
        if (first < 0) {
            throw new IllegalArgumentException("a count cannot be " + first);
        }
        double[] tails = new double[weights.length + 1];
        double moment = 0;
        for (int i = weights.length - 1; i >= 0; i--) {
            if (!(weights[i] >= 0 && weights[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("weight %s of %d".formatted(weights[i], first + i));
            }
            tails[i] = tails[i + 1] + weights[i];
            moment += weights[i] * i;
        }
        double total = tails[0];
        if (!(total > 0 && total < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("weights sum to " + total);
        }
        double centre = moment / total;
        double square = 0;
        for (int i = 0; i < weights.length; i++) {
            square += weights[i] * (i - centre) * (i - centre);
            tails[i] /= total;
        }
        return new CountDistribution(first, tails, first + centre, square / total);
    }

    /** Probabilities in proportion to exp(logWeights); minus infinity is a weight of 0. */
    public static CountDistribution ofLogWeights(int first, double[] logWeights) {
        double largest = Double.NEGATIVE_INFINITY;
        for (double logWeight : logWeights) {
            largest = Math.max(largest, logWeight);
        }
        double[] weights = new double[logWeights.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = Math.exp(logWeights[i] - largest);
        }
        return ofWeights(first, weights);
    }

    public double probability(int count) {
        return atLeast(count) - atLeast(count + 1);
    }

    public double atLeast(int count) {
        if (count <= first) {
            return 1;
        }
        return count - first < tails.length ? tails[count - first] : 0;
    }

    /** The same between two counts in a straight line. */
    public double atLeast(double count) {
        if (count <= first) {
            return 1;
        }
        double at = count - first;
        int i = (int) at;
        return i + 1 < tails.length ? tails[i] + (at - i) * (tails[i + 1] - tails[i]) : 0;
    }

    public double atMost(int count) {
        return 1 - atLeast(count + 1);
    }

    /** The least count that is not exceeded with at least this probability (0 to 1). */
    public int quantile(double probability) {
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("probability " + probability + " must lie between 0 and 1");
        }
        return FirstTrue.in(first, last(), count -> atLeast(count + 1) <= 1 - probability);
    }

    /**
     * What is left when {@code taken} are taken away, given that there were so many.
     *
     * @throws IllegalArgumentException if there cannot have been so many
     */
    public CountDistribution minus(int taken) {
        if (taken < 0 || taken > last()) {
            throw new IllegalArgumentException("cannot take %d from at most %d".formatted(taken, last()));
        }
        if (taken <= first) {
            return new CountDistribution(first - taken, tails, mean - taken, variance);
        }
        int from = taken;
        double[] weights = new double[last() - from + 1];
        Arrays.setAll(weights, i -> probability(from + i));
        return ofWeights(from - taken, weights);
    }

    /** The same with {@code more} added to every number. */
    public CountDistribution plus(int more) {
        return new CountDistribution(first + more, tails, mean + more, variance);
    }

    public double mean() {
        return mean;
    }

    public double variance() {
        return variance;
    }

    /** The least number kept; nothing below it has weight. */
    public int first() {
        return first;
    }

    /** The greatest number kept; nothing above it has weight. */
    public int last() {
        return first + tails.length - 2;
    }
}
