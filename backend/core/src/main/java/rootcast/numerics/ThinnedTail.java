package rootcast.numerics;

import org.jspecify.annotations.Nullable;

/**
 * P(at least m of N are usable) where N is uncertain and each of the N is usable with probability p, independently; as a
 * function of p, and its mean over a stretch of p.
 *
 * <p>Go through the N one by one: the m-th usable one is found after W of them, W negative binomial, and there are m usable
 * ones exactly if W ≤ N. So the answer is E[P(N ≥ W)], and its slope E[P(N ≥ W)·(m/p − (W − m)/(1 − p))]. Where N is not known
 * far better than W, P(N ≥ W) is smooth over W, which is taken as a shifted gamma with its mean, variance and skewness, by the
 * cube-root rule at evenly spaced normal quantiles, the closer the better N is known. Else N is put together in sixteen equal shares, and the binomial of
 * each is summed. Both are within 1e-3 of the sum over every N ({@code ThinnedTailTest}). They are computed once, when first
 * asked for, at {@value #PARTS} + 1 values of p where the answer moves; between them runs the cubic through values and slopes.
 *
 * <p>Source: Johnson, Kemp and Kotz, Univariate Discrete Distributions, 3rd ed. (2005), §5.6 (binomial and negative
 * binomial tails); Wilson and Hilferty 1931, Proc. Natl. Acad. Sci. 17:684-688 (cube root); Wilson 1927, J. Amer. Statist. Assoc.
 * 22:209-212 (where the answer moves).
 */
public final class ThinnedTail {

    private static final int PARTS = 32;
    private static final int OF_NODE = 3;
    private static final double NEGLIGIBLE = 1e-13;

    /** So near to 1 the slope would be rounding. */
    private static final double NEARLY_ALL = 1 - 1e-9;

    /** If the variance of N is a smaller share of that of W, too few of the nodes tell the one from the other. */
    private static final double TELLING = 1.0 / 16;

    /** Normal quantiles for W, this far apart, and their probabilities. */
    private static final double NODE_STEP = 0.25;

    private static final double[] NODE = new double[49];
    private static final double[] WEIGHT = new double[NODE.length];

    static {
        for (int i = 0; i < NODE.length; i++) {
            NODE[i] = (i - NODE.length / 2) * NODE_STEP;
            WEIGHT[i] = NODE_STEP * Math.exp(-NODE[i] * NODE[i] / 2) / Math.sqrt(2 * Math.PI);
        }
    }

    /** Below this shape the gamma is too skewed for nodes far apart: the cube root bends it by a quarter within four spreads. */
    private static final double EVEN_SHAPE = 32;

    private static final int SHARES = 16;

    /** Over a shorter piece the answer is that at its middle: of a float's integral the quotient would be rounding. */
    private static final double STILL = 1e-4;

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

    /**
     * At each node three numbers: value, slope over a part, and the integral from {@code low} on. A business has some hundred thousand
     * tables, so they are kept short; the integral is that of the cubics kept.
     */
    private float @Nullable [] table;

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
    }

    /** Wilson's bound of the share m/n, z standard deviations off. */
    private static double edge(int needed, int of, double z) {
        double share = (double) needed / of;
        double square = z * z / of;
        double root = Math.sqrt(square * share * (1 - share) + square * square / 4);
        double bound = (share + square / 2 + (z < 0 ? -root : root)) / (1 + square);
        return bound > NEARLY_ALL ? 1 : Math.max(0, bound);
    }

    /** Worked out when first asked for; worked out twice at worst, to the same. */
    private float[] table() {
        float[] known = table;
        if (known == null) {
            known = tabulated();
            table = known;
        }
        return known;
    }

    private float[] tabulated() {
        double[] value = new double[PARTS + 1];
        double[] slope = new double[PARTS + 1];
        float[] nodes = new float[OF_NODE * (PARTS + 1)];
        for (int i = 0; i <= PARTS && whole > 0; i++) {
            evaluate(i == PARTS ? high : low + i * step, i, value, slope);
            nodes[OF_NODE * i] = (float) value[i];
            nodes[OF_NODE * i + 1] = (float) (step * slope[i]);
        }
        double below = 0;
        for (int part = 0; part < OF_NODE * PARTS; part += OF_NODE) {
            double values = (double) nodes[part] + nodes[part + OF_NODE];
            double slopes = (double) nodes[part + 1] - nodes[part + OF_NODE + 1];
            below += step * (values / 2 + slopes / 12);
            nodes[part + OF_NODE + 2] = (float) below;
        }
        return nodes;
    }

    private void evaluate(double p, int at, double[] value, double[] slope) {
        if (p <= 0) {
            return;
        }
        if (p >= 1) {
            value[at] = whole;
            slope[at] = needed * (whole - count.atLeast(needed + 1));
        } else if (count.variance() >= TELLING * needed * (1 - p) / (p * p)) {
            overW(p, at, value, slope);
        } else {
            overShares(p, at, value, slope);
        }
    }

    private void overW(double p, int at, double[] value, double[] slope) {
        double q = 1 - p;
        double sd = Math.sqrt(needed * q) / p;
        double shape = 4 * needed * q / ((1 + q) * (1 + q));
        double root = 1 / (3 * Math.sqrt(shape));
        int stride = shape < EVEN_SHAPE ? 1 : stride(Math.sqrt(count.variance()) / sd);
        for (int i = 0; i < NODE.length; i += stride) {
            double cube = Math.max(0, 1 - root * root + NODE[i] * root);
            double w = needed / p + sd * Math.sqrt(shape) * (cube * cube * cube - 1);
            double tail = stride * WEIGHT[i] * count.atLeast(w);
            value[at] += tail;
            slope[at] += tail * (needed / p - (w - needed) / q);
        }
    }

    /** Nodes are taken as far apart as N spreads, and no further than one standard deviation of W. */
    private static int stride(double spreads) {
        return spreads >= 4 * NODE_STEP ? 4 : spreads >= 2 * NODE_STEP ? 2 : 1;
    }

    private void overShares(double p, int at, double[] value, double[] slope) {
        for (int share = 0; share < SHARES; share++) {
            int n = count.quantile((share + 0.5) / SHARES);
            if (n >= needed) {
                addBinomial(n, p, at, value, slope);
            }
        }
    }

    private void addBinomial(int n, double p, int at, double[] value, double[] slope) {
        double odds = p / (1 - p);
        int mode = Math.min(n, (int) ((n + 1) * p));
        double sum = 0;
        double inside = 0;
        double exactly = 0;
        double weight = 1;
        for (int k = mode; k <= n && weight > NEGLIGIBLE; k++) {
            sum += weight;
            inside += k >= needed ? weight : 0;
            exactly += k == needed ? weight : 0;
            weight *= odds * (n - k) / (k + 1);
        }
        weight = 1;
        for (int k = mode; k > 0 && weight > NEGLIGIBLE; k--) {
            weight *= k / (odds * (n - k + 1));
            sum += weight;
            inside += k - 1 >= needed ? weight : 0;
            exactly += k - 1 == needed ? weight : 0;
        }
        value[at] += inside / sum / SHARES;
        slope[at] += needed / p * exactly / sum / SHARES;
    }

    /** The answer for one p, 0 to 1. */
    public double at(double p) {
        if (p <= low) {
            return 0;
        }
        if (p >= high) {
            return whole;
        }
        float[] nodes = table();
        double at = (p - low) / step;
        int i = Math.min(PARTS - 1, (int) at);
        double u = at - i;
        int part = OF_NODE * i;
        double rise = nodes[part + OF_NODE] - nodes[part];
        double from = nodes[part + 1];
        double to = nodes[part + OF_NODE + 1];
        return nodes[part] + u * (from + u * (3 * rise - 2 * from - to + u * (from + to - 2 * rise)));
    }

    /** Integral of {@link #at} from 0 to p. */
    public double upTo(double p) {
        if (p <= low) {
            return 0;
        }
        float[] nodes = table();
        if (p >= high) {
            return nodes[OF_NODE * PARTS + 2] + (p - high) * whole;
        }
        double at = (p - low) / step;
        int i = Math.min(PARTS - 1, (int) at);
        double u = at - i;
        int part = OF_NODE * i;
        double rise = nodes[part + OF_NODE] - nodes[part];
        double from = nodes[part + 1];
        double to = nodes[part + OF_NODE + 1];
        double mean =
                nodes[part] + u * (from / 2 + u * ((3 * rise - 2 * from - to) / 3 + u * (from + to - 2 * rise) / 4));
        return nodes[part + 2] + step * u * mean;
    }

    /**
     * The answer where p itself is uncertain: it moves straight from one point to the next, with the probability given for
     * the piece.
     *
     * @param points p at each point
     * @param mass   by piece, numbered as the point at which it begins; that of the last point does not count
     * @param size   number of points
     */
    public double mean(double[] points, double[] mass, int size) {
        double sum = 0;
        double from = points[0];
        double belowFrom = upTo(from);
        for (int i = 1; i < size; i++) {
            double to = points[i];
            double belowTo = upTo(to);
            if (mass[i - 1] > 0) {
                sum += mass[i - 1] * over(from, to, belowFrom, belowTo);
            }
            from = to;
            belowFrom = belowTo;
        }
        return sum;
    }

    private double over(double from, double to, double belowFrom, double belowTo) {
        if (from <= low && to <= low) {
            return 0;
        }
        if (from >= high && to >= high) {
            return whole;
        }
        double width = to - from;
        return Math.abs(width) < STILL ? at((from + to) / 2) : (belowTo - belowFrom) / width;
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
