package rootcast.outlook;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import rootcast.numerics.FirstTrue;

/**
 * A density known up to a factor on a grid of {@value #NODES} nodes, for its quantiles.
 *
 * <p>The grid first covers the whole range, then the part that holds the probability, until it is no longer much
 * narrower than the grid. Between nodes the density runs straight, so the distribution function is the trapezoid rule.
 *
 * <p>Source: Gelman, Carlin, Stern, Dunson, Vehtari and Rubin 2013, Bayesian Data Analysis, 3rd ed., §10.1 (grid).
 */
final class RatePosterior {

    private static final int NODES = 121;

    /** A density less than e to this of the largest is left out: with 14, less than 1e-5 of the probability. */
    private static final double LOG_NEGLIGIBLE = -14;

    private static final int MOST_PASSES = 5;

    private final double first;
    private final double step;
    private final double[] density;

    /** {@code below[i]} is the probability, times a factor, below node i. */
    private final double[] below = new double[NODES];

    private RatePosterior(double first, double step, double[] density) {
        this.first = first;
        this.step = step;
        this.density = density;
        for (int i = 1; i < NODES; i++) {
            below[i] = below[i - 1] + step * (density[i - 1] + density[i]) / 2;
        }
    }

    /** @param range the density is taken to be zero outside −range … range */
    static RatePosterior of(double range, DoubleUnaryOperator logDensity) {
        double from = -range;
        double step = 2 * range / (NODES - 1);
        for (int pass = 1; ; pass++) {
            double[] logs = new double[NODES];
            for (int i = 0; i < NODES; i++) {
                logs[i] = logDensity.applyAsDouble(from + i * step);
            }
            double negligible = Arrays.stream(logs).max().orElseThrow() + LOG_NEGLIGIBLE;
            int low = 0;
            while (logs[low] < negligible) {
                low++;
            }
            int high = NODES - 1;
            while (logs[high] < negligible) {
                high--;
            }
            low = Math.max(0, low - 1);
            high = Math.min(NODES - 1, high + 1);
            if (pass == MOST_PASSES || high - low > NODES / 2) {
                double largest = negligible - LOG_NEGLIGIBLE;
                return new RatePosterior(
                        from,
                        step,
                        Arrays.stream(logs).map(log -> Math.exp(log - largest)).toArray());
            }
            from += low * step;
            step *= (double) (high - low) / (NODES - 1);
        }
    }

    double quantile(double probability) {
        double wanted = probability * below[NODES - 1];
        int node = FirstTrue.in(1, NODES - 1, i -> below[i] >= wanted);
        double left = density[node - 1];
        double slope = (density[node] - left) / step;
        double rest = wanted - below[node - 1];
        // The root of left · u + slope · u² / 2 = rest, written so that a slope of zero is no exception.
        double root = Math.sqrt(Math.max(0, left * left + 2 * slope * rest));
        double part = rest <= 0 ? 0 : 2 * rest / (left + root);
        return first + (node - 1) * step + Math.min(part, step);
    }
}
