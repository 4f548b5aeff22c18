package rootcast.numerics;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Φ(z) of the standard normal distribution function from a table: a few nanoseconds where the function itself takes many.
 *
 * <p>Straight between nodes 1/128 apart, within 2e-6; 0 below −9 and 1 above 9, minus and plus infinity included.
 *
 * <p>Source: the nodes are those of Commons Statistics.
 */
public final class NormalShare {

    private static final int REACH = 9;
    private static final int PER_UNIT = 128;
    private static final double[] BELOW = new double[2 * REACH * PER_UNIT + 1];

    static {
        var normal = NormalDistribution.of(0, 1);
        Arrays.setAll(BELOW, i -> normal.cumulativeProbability((double) i / PER_UNIT - REACH));
    }

    private NormalShare() {}

    /** P(Z ≤ z). */
    public static double below(double z) {
        if (z <= -REACH) {
            return 0;
        }
        if (z >= REACH) {
            return 1;
        }
        double at = (z + REACH) * PER_UNIT;
        int i = (int) at;
        return BELOW[i] + (at - i) * (BELOW[i + 1] - BELOW[i]);
    }
}
