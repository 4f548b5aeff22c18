package rootcast.numerics;

/**
 * P(at least m of N are usable) where N is uncertain and each of the N is usable with probability p, independently; as a
 * function of p, and its mean over a stretch of p.
 *
 * <p>Go through the N one by one: the m-th usable one is found after W of them, W negative binomial, and there are m usable
 * ones exactly if W ≤ N. So the answer is E[P(N ≥ W)], and its slope E[P(N ≥ W)·(m/p − (W − m)/(1 − p))]. Where N is known
 * better than W, that is a sum over W, exact but for terms under {@value #NEGLIGIBLE} of the largest. Where W is known
 * better, P(N ≥ W) is smooth over W, and {@value #NODES} nodes stand for W (Gauss-Hermite, with the
 * skewness of W by Cornish and Fisher): within 1e-3 of the sum ({@code ThinnedTailTest}). Both are computed once at {@value #PARTS}
 * + 1 values of p where the answer moves; between them runs the cubic through values and slopes, and its integral.
 *
 * <p>Source: Johnson, Kemp and Kotz, Univariate Discrete Distributions, 3rd ed. (2005), §5.6 (binomial and negative
 * binomial tails); Cornish and Fisher 1938, Rev. Int. Stat. Inst. 5:307-320; Abramowitz and Stegun 1972, 25.4.46 (Gauss-Hermite); Wilson 1927,
 * J. Amer. Statist. Assoc. 22:209-212 (where the answer moves).
 */
public final class ThinnedTail {

    private static final int PARTS = 32;
    private static final double NEGLIGIBLE = 1e-13;

    /** So near to 1 the slope would be rounding. */
    private static final double NEARLY_ALL = 1 - 1e-9;

    /** From so many times the variance of W on that of N makes the tail of N smooth enough for a few nodes. */
    private static final double SMOOTH = 4;

    private static final int NODES = 9;
    private static final double[] NODE = {
        0,
        1.023255663789133,
        -1.023255663789133,
        2.076847978677830,
        -2.076847978677830,
        3.205429002856470,
        -3.205429002856470,
        4.512745863399783,
        -4.512745863399783
    };
    private static final double[] WEIGHT = {
        0.4063492063492063,
        0.2440975028949394,
        0.2440975028949394,
        0.04991640676521788,
        0.04991640676521788,
        0.002789141321231769,
        0.002789141321231769,
        2.234584400774658e-5,
        2.234584400774658e-5
    };

    /** Standard deviations of the binomial, and probability of N, beyond which the answer does not move. */
    private static final double REACH_SD = 5.2;

    private static final double REACH_OF_N = 1e-7;

    private final CountDistribution count;
    private final int needed;

    /** The answer for p = 1. */
    private final double whole;

    private final double low;
    private final double high;
    private final double step;
    private final double[] value = new double[PARTS + 1];
    private final double[] slope = new double[PARTS + 1];

    /** Integral from {@code low} to each node. */
    private final double[] below = new double[PARTS + 1];

    /**
     * @param needed m, at least 1
     */
    public ThinnedTail(CountDistribution count, int needed) {
        if (needed < 1) {
            throw new IllegalArgumentException("at least " + needed + " is no question");
        }
        this.count = count;
        this.needed = needed;
        this.whole = count.atLeast(needed);
        this.low = edge(needed, Math.max(needed, count.quantile(1 - REACH_OF_N)), -REACH_SD);
        this.high = Math.max(Math.nextUp(low), edge(needed, Math.max(needed, count.quantile(REACH_OF_N)), REACH_SD));
        this.step = (high - low) / PARTS;
        if (whole > 0) {
            tabulate();
        }
    }

    /** Wilson's bound of the share m/n, z standard deviations off. */
    private static double edge(int needed, int of, double z) {
        double share = (double) needed / of;
        double square = z * z / of;
        double root = Math.sqrt(square * share * (1 - share) + square * square / 4);
        double bound = (share + square / 2 + (z < 0 ? -root : root)) / (1 + square);
        return bound > NEARLY_ALL ? 1 : Math.max(0, bound);
    }

    private void tabulate() {
        for (int i = 0; i <= PARTS; i++) {
            evaluate(i, i == PARTS ? high : low + i * step);
            if (i > 0) {
                below[i] = below[i - 1]
                        + step * (value[i - 1] + value[i]) / 2
                        + step * step * (slope[i - 1] - slope[i]) / 12;
            }
        }
    }

    private void evaluate(int node, double p) {
        if (p <= 0) {
            return;
        }
        if (p >= 1) {
            value[node] = whole;
            slope[node] = needed * (whole - count.atLeast(needed + 1));
            return;
        }
        double varianceOfW = needed * (1 - p) / (p * p);
        if (count.variance() >= SMOOTH * varianceOfW) {
            fromNodes(node, p, Math.sqrt(varianceOfW));
        } else {
            fromSum(node, p);
        }
    }

    private void fromNodes(int node, double p, double sdOfW) {
        double q = 1 - p;
        double skewness = (1 + q) / Math.sqrt(needed * q);
        double inside = 0;
        double moment = 0;
        for (int i = 0; i < NODES; i++) {
            double w = needed / p + sdOfW * (NODE[i] + skewness * (NODE[i] * NODE[i] - 1) / 6);
            double tail = WEIGHT[i] * count.atLeast(w);
            inside += tail;
            moment += tail * (needed / p - (w - needed) / q);
        }
        value[node] = inside;
        slope[node] = moment;
    }

    private void fromSum(int node, double p) {
        double q = 1 - p;
        int mode = needed + (int) Math.floor((needed - 1) * q / p);
        double weight = 1;
        double sum = 0;
        double inside = 0;
        double moment = 0;
        for (int w = mode; weight > NEGLIGIBLE; w++) {
            double tail = weight * count.atLeast(w);
            sum += weight;
            inside += tail;
            moment += tail * (w - needed);
            weight *= q * w / (w - needed + 1);
        }
        weight = 1;
        for (int w = mode; w > needed; ) {
            weight *= (w - needed) / (q * (w - 1));
            w--;
            if (weight < NEGLIGIBLE) {
                break;
            }
            double tail = weight * count.atLeast(w);
            sum += weight;
            inside += tail;
            moment += tail * (w - needed);
        }
        value[node] = inside / sum;
        slope[node] = (inside * needed / p - moment / q) / sum;
    }

    /** The answer for one p, 0 to 1. */
    public double at(double p) {
        if (p <= low) {
            return 0;
        }
        if (p >= high) {
            return whole;
        }
        double at = (p - low) / step;
        int i = Math.min(PARTS - 1, (int) at);
        double u = at - i;
        double v = 1 - u;
        return v * v * ((1 + 2 * u) * value[i] + u * step * slope[i])
                + u * u * ((1 + 2 * v) * value[i + 1] - v * step * slope[i + 1]);
    }

    /** Integral of {@link #at} from 0 to p. */
    public double upTo(double p) {
        if (p <= low) {
            return 0;
        }
        if (p >= high) {
            return below[PARTS] + (p - high) * whole;
        }
        double at = (p - low) / step;
        int i = Math.min(PARTS - 1, (int) at);
        double u = at - i;
        double u2 = u * u;
        double u3 = u2 * u;
        double u4 = u3 * u;
        return below[i]
                + step
                        * ((u - u3 + u4 / 2) * value[i]
                                + (u3 - u4 / 2) * value[i + 1]
                                + step
                                        * ((u2 / 2 - 2 * u3 / 3 + u4 / 4) * slope[i]
                                                + (u4 / 4 - u3 / 3) * slope[i + 1]));
    }

    /** For less than this p the answer is 0. */
    public double low() {
        return low;
    }

    /** From this p on the answer is that of 1. */
    public double high() {
        return high;
    }

    public double whole() {
        return whole;
    }
}
