package rootcast.outlook;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What is believed of a batch's rate multiplier M in one stage: its quantiles at {@value #NODES} fixed probabilities.
 *
 * <p>To begin with M is log-normal with median 1 and the crop's rate spread as standard deviation of ln M; what is seen
 * of the batch makes a posterior of it (see {@link StageRates}). Node 20 is the median, 14 and 26 are the 10 % and
 * 90 % points, so the dates shown are computed at nodes; in between the distribution function runs straight. What lies
 * beyond the end nodes, 1e-5 each, counts as at them.
 *
 * <p>Source: the multiplicative model is ours; log-normal because rates are positive and their causes multiply.
 */
public final class RateBelief {

    static final int NODES = 41;
    static final int P10 = 14;
    static final int P90 = 26;

    private static final int MEDIAN = 20;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double STEP_SD = NORMAL.inverseCumulativeProbability(0.9) / 6;

    private static final double[] NODE_PROBABILITY = new double[NODES];
    private static final double[] PRIOR_SLOWER_SHARE = new double[NODES];

    static {
        Arrays.setAll(NODE_PROBABILITY, node -> NORMAL.cumulativeProbability(normalQuantile(node)));
        System.arraycopy(NODE_PROBABILITY, 0, PRIOR_SLOWER_SHARE, 0, NODES);
        PRIOR_SLOWER_SHARE[0] = 0;
        PRIOR_SLOWER_SHARE[NODES - 1] = 1;
    }

    private final double[] quantiles;
    private final double[] slowerShare;

    /** The rate that goes with a node's date; the quantiles themselves unless the stage's begin is in doubt too. */
    private final double[] multiplier;

    private RateBelief(double[] quantiles, double[] multiplier, double[] slowerShare) {
        this.quantiles = quantiles;
        this.multiplier = multiplier;
        this.slowerShare = slowerShare;
    }

    private static RateBelief of(double[] quantiles) {
        return new RateBelief(quantiles, quantiles, PRIOR_SLOWER_SHARE);
    }

    /**
     * Before anything has been seen of the batch.
     *
     * @param rateSpread standard deviation of ln M; 0 if all batches run alike
     */
    public static RateBelief prior(double rateSpread) {
        double[] quantiles = new double[NODES];
        Arrays.setAll(quantiles, node -> Math.exp(rateSpread * (node - MEDIAN) * STEP_SD));
        return of(quantiles);
    }

    /**
     * @param distribution of ln M / rate spread
     */
    static RateBelief of(GridDistribution distribution, double rateSpread) {
        double[] quantiles = new double[NODES];
        Arrays.setAll(quantiles, node -> Math.exp(rateSpread * distribution.quantile(NODE_PROBABILITY[node])));
        return of(quantiles);
    }

    /** The same belief where the nodes are those of the date and not of the rate alone. */
    RateBelief going(double[] multiplierByNode) {
        return new RateBelief(quantiles, multiplierByNode, slowerShare);
    }

    /** The same belief where a node of the date says less of the rate: its multiplier is that of a node nearer to the median. */
    RateBelief nearer(double ratio) {
        double[] places = new double[NODES];
        Arrays.setAll(places, node -> nearer(node, ratio));
        return new RateBelief(quantiles, at(places, multiplier), slowerShare);
    }

    /** The belief of which each node is what lay at a place among the nodes. */
    RateBelief moved(double[] places) {
        return new RateBelief(at(places, quantiles), at(places, multiplier), slowerShare);
    }

    private static double[] at(double[] places, double[] values) {
        double[] at = new double[NODES];
        for (int node = 0; node < NODES; node++) {
            int low = Math.min(NODES - 2, (int) places[node]);
            double part = places[node] - low;
            at[node] = values[low] * (1 - part) + values[low + 1] * part;
        }
        return at;
    }

    /** The place among the nodes that lies nearer to the median by a ratio. */
    static double nearer(int node, double ratio) {
        return MEDIAN + ratio * (node - MEDIAN);
    }

    static double nodeProbability(int node) {
        return NODE_PROBABILITY[node];
    }

    /** The node in the middle. */
    static int median() {
        return MEDIAN;
    }

    /** Standard normal quantile of the probability that a batch is slower than at the node. */
    static double normalQuantile(int node) {
        return (node - MEDIAN) * STEP_SD;
    }

    double multiplier(int node) {
        return multiplier[node];
    }

    /** Probability that the batch is no faster than at the node; from 0 at the first to 1 at the last. */
    double slowerShare(int node) {
        return slowerShare[node];
    }

    /** The multiplier that the batch's does not exceed with this probability. */
    public double quantile(double probability) {
        int node = 1;
        while (node < NODES - 1 && slowerShare[node] < probability) {
            node++;
        }
        double below = slowerShare[node - 1];
        double part = (probability - below) / (slowerShare[node] - below);
        double logM = Math.log(quantiles[node - 1]) * (1 - part) + Math.log(quantiles[node]) * part;
        return Math.exp(logM);
    }
}
