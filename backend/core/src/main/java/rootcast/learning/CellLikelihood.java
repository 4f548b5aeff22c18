package rootcast.learning;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rootcast.learning.StageTimes.LookedAt;
import rootcast.numerics.LogNormalTail;
import rootcast.outlook.CellSpread;

/**
 * What looks at cells say of y = ln(reference-days in which nine cells in ten of a batch get through a stage).
 *
 * <p>After g reference-days, g/e^y of the stage, a cell is through as {@link CellSpread} says; a look is binomial in that, counts at most {@value #MOST_TELLING_CELLS} cells, and one in a thousand is of another bench.
 */
final class CellLikelihood {

    private static final int MOST_TELLING_CELLS = 200;
    private static final double ODD_SHARE = 0.001;

    /** e to this is lost beside the share of odd looks. */
    private static final double LOG_NOTHING = -30;

    private static final double LOG_ODD = Math.log(ODD_SHARE);

    private static final int NODES = 41;
    private static final double REACH_SD = 5;
    private static final int PASSES = 3;

    /** All the weight on one node: narrower than the grid can tell, until the next pass. */
    private static final double LEAST_SHARE = 1e-3;

    private CellLikelihood() {}

    /** Mean and variance of a normal. */
    record Normal(double mean, double variance) {}

    /** Of all looks of a stage, the batch's own spread of cells being one of those that the crop's batches have. */
    static double log(List<LookedAt> looks, double y, CellSpread cells) {
        return log(looks, cells, look -> y);
    }

    private static double log(List<LookedAt> looks, CellSpread cells, ToDoubleFunction<LookedAt> y) {
        if (cells.isAlike()) {
            return ofAlike(looks, cells, y);
        }
        double[] logs = new double[CellSpread.WEIGHTS.length];
        for (LookedAt look : looks) {
            double beyond = cells.beyond(Math.exp(look.logGained() - y.applyAsDouble(look)));
            for (int factor = 0; factor < logs.length; factor++) {
                logs[factor] += log(look, cells.quantile(beyond, factor));
            }
        }
        double most = Math.max(logs[0], Math.max(logs[1], logs[2]));
        double sum = 0;
        for (int factor = 0; factor < logs.length; factor++) {
            sum += CellSpread.WEIGHTS[factor] * Math.exp(logs[factor] - most);
        }
        return most + Math.log(sum);
    }

    private static double ofAlike(List<LookedAt> looks, CellSpread cells, ToDoubleFunction<LookedAt> y) {
        double sum = 0;
        for (LookedAt look : looks) {
            double beyond = cells.beyond(Math.exp(look.logGained() - y.applyAsDouble(look)));
            sum += log(look, cells.quantile(beyond, CellSpread.USUAL));
        }
        return sum;
    }

    private static double log(LookedAt look, double z) {
        double share = (double) look.reached() / look.cells();
        double log = 0;
        if (look.reached() > 0) {
            log += share * (LogNormalTail.below(z) - Math.log(share));
        }
        if (look.reached() < look.cells()) {
            log += (1 - share) * (LogNormalTail.above(z) - Math.log(1 - share));
        }
        double counted = log * Math.min(look.cells(), MOST_TELLING_CELLS);
        return counted < LOG_NOTHING ? LOG_ODD : Math.log((1 - ODD_SHARE) * Math.exp(counted) + ODD_SHARE);
    }

    /**
     * The normal with the moments of {@code before} × the looks, by a grid that closes in on where they agree.
     *
     * @param lastTime the answer to nearly the same question, so that one grid will do; null for the first time
     */
    static Normal after(Normal before, List<LookedAt> looks, CellSpread cells, @Nullable Normal lastTime) {
        Normal found = lastTime == null ? before : lastTime;
        for (int pass = lastTime == null ? 0 : PASSES - 1; pass < PASSES; pass++) {
            found = moments(before, looks, cells, found);
        }
        return found;
    }

    private static Normal moments(Normal before, List<LookedAt> looks, CellSpread cells, Normal around) {
        double sd = Math.sqrt(around.variance);
        double[] logs = new double[NODES];
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < NODES; i++) {
            double y = around.mean + node(i) * sd;
            logs[i] = log(before, y) + log(looks, y, cells);
            largest = Math.max(largest, logs[i]);
        }
        double whole = 0;
        double first = 0;
        double second = 0;
        for (int i = 0; i < NODES; i++) {
            double weight = Math.exp(logs[i] - largest);
            whole += weight;
            first += weight * node(i);
            second += weight * node(i) * node(i);
        }
        double mean = first / whole;
        double variance = Math.max(second / whole - mean * mean, LEAST_SHARE);
        return new Normal(around.mean + mean * sd, variance * around.variance);
    }

    /** Mean of the looks' log likelihood over what is believed of y. */
    static double expectedLog(Normal believed, List<LookedAt> looks, CellSpread cells) {
        double sum = 0;
        double whole = 0;
        for (int i = 0; i < NODES; i += 4) {
            double z = node(i);
            double weight = Math.exp(-z * z / 2);
            whole += weight;
            sum += weight
                    * log(
                            looks,
                            cells,
                            look -> believed.mean + z * Math.sqrt(believed.variance + look.beginVariance()));
        }
        return sum / whole;
    }

    /**
     * ln of how likely the looks are, y being normal before; up to a constant that is the same for every spread.
     *
     * @param after of about what is believed after them: where they agree
     */
    static double logEvidence(Normal before, List<LookedAt> looks, CellSpread cells, Normal after) {
        double sd = Math.sqrt(after.variance);
        double[] logs = new double[(NODES + 1) / 2];
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < logs.length; i++) {
            double y = after.mean + node(2 * i) * sd;
            logs[i] = log(before, y) + log(looks, y, cells);
            most = Math.max(most, logs[i]);
        }
        double sum = 0;
        for (double log : logs) {
            sum += Math.exp(log - most);
        }
        return most + Math.log(sum);
    }

    private static double log(Normal normal, double y) {
        return -(y - normal.mean) * (y - normal.mean) / (2 * normal.variance);
    }

    private static double node(int i) {
        return REACH_SD * (2.0 * i / (NODES - 1) - 1);
    }
}
