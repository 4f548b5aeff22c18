package rootcast.numerics;

import org.apache.commons.numbers.gamma.GammaRatio;

/**
 * An uncertain probability P with a Beta distribution.
 *
 * <p>Source: Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions, vol. 2 (1995), ch. 25.
 *
 * @param alpha over 0; as many successes seen, loosely
 * @param beta  over 0; as many failures seen, loosely
 */
public record Beta(double alpha, double beta) {

    public Beta {
        if (!(alpha > 0 && alpha < Double.POSITIVE_INFINITY && beta > 0 && beta < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("alpha %s and beta %s must be over 0 and finite".formatted(alpha, beta));
        }
    }

    /** The Beta with this mean that is worth {@code weight} observations. */
    public static Beta ofMean(double mean, double weight) {
        return new Beta(mean * weight, (1 - mean) * weight);
    }

    public double mean() {
        return alpha / (alpha + beta);
    }

    public double variance() {
        double weight = alpha + beta;
        return alpha * beta / (weight * weight * (weight + 1));
    }

    /**
     * E[P^power] = B(α + power, β) / B(α, β), for a power of at least 0.
     *
     * <p>By ratios of gamma functions, because the difference of two logarithms loses the digits that a variance needs.
     */
    public double powerMoment(double power) {
        return power == 0 ? 1 : GammaRatio.delta(alpha + beta, power) / GammaRatio.delta(alpha, power);
    }
}
