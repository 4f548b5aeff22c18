package rootcast.outlook;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What is recorded of a batch's stages, as the likelihood of its rate multiplier M.
 *
 * <p>With x = M · reference-days gained since the stage began / days at reference, a living cell has reached the stage's
 * end with probability Φ(ln x / cell spread + z₀.₉): cells' times are log-normal, and at x = 1 nine of ten are there. A
 * look is binomial in that. Who enters a stage saw its end at ln x normal around 0 with standard deviation {@value
 * #SEEN_SPREAD}; if a look before had fallen short of nine in ten, the end lies between the two and the likelihood is
 * the probability of that interval. Each is mixed with a share {@value #ODD_SHARE} that fits any M, for looks at the
 * wrong bench. That nothing was entered says nothing.
 *
 * <p>Source: interval-censored log-normal times, Lawless 2003, Statistical Models and Methods for Lifetime Data, §2.3 and
 * §5.3; the constants are common practice, no source.
 */
final class RateEvidence {

    /** Standard deviation of ln(development at which a person calls a stage complete). Common practice, no source. */
    static final double SEEN_SPREAD = 0.08;

    /** Share of records that say nothing of their batch's rate. Common practice, no source. */
    static final double ODD_SHARE = 0.001;

    /** Trays differ more than their cells do, so more cells than this tell no more. Common practice, no source. */
    static final int MOST_TELLING_CELLS = 200;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double Z_COMPLETE = NORMAL.inverseCumulativeProbability(0.9);

    /** A narrower interval is taken by its density: the difference of two probabilities would be rounding. */
    private static final double NARROW = 1e-6;

    private final BatchHistory history;
    private final StagePath path;
    private final double cellSpread;

    /** @param cellSpread standard deviation of ln(a cell's time) within a batch */
    RateEvidence(BatchHistory history, StagePath path, double cellSpread) {
        this.history = history;
        this.path = path;
        this.cellSpread = cellSpread;
    }

    boolean isEmpty() {
        return history.looks().isEmpty() && history.reachedAt().isEmpty();
    }

    /** The looks are in order of time, so the sum does not depend on how they came in. */
    double logLikelihood(double multiplier) {
        long[] ends = path.ends(multiplier);
        double sum = 0;
        for (BatchHistory.Look look : history.looks()) {
            int stage = StagePath.endingIn(look.stage());
            double progress = path.progressOf(stage, ends, multiplier, look.at().toEpochMilli());
            sum += look(progress, look.cells(), look.reached());
        }
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            if (path.isSeen(stage)) {
                double seen = path.progressOf(stage, ends, multiplier, path.seenAt(stage));
                double before = path.progressOf(stage, ends, multiplier, path.incompleteAt(stage));
                sum += seenComplete(before, seen, path.incompleteAt(stage) > 0);
            }
        }
        return sum;
    }

    private double look(double progress, int cells, int reached) {
        double z = Math.log(progress) / cellSpread + Z_COMPLETE;
        double share = (double) reached / cells;
        double log = 0;
        if (reached > 0) {
            log += share * Math.log(NORMAL.cumulativeProbability(z) / share);
        }
        if (reached < cells) {
            log += (1 - share) * Math.log(NORMAL.survivalProbability(z) / (1 - share));
        }
        return mixed(Math.exp(log * Math.min(cells, MOST_TELLING_CELLS)), 1);
    }

    private static double seenComplete(double before, double seen, boolean hadLook) {
        double z = Math.log(seen) / SEEN_SPREAD;
        if (!hadLook) {
            return mixed(Math.exp(-z * z / 2), 1);
        }
        if (before == 0) {
            return mixed(NORMAL.cumulativeProbability(z), 1);
        }
        double width = Math.log(seen / before) / SEEN_SPREAD;
        if (width < NARROW) {
            return mixed(Math.exp(-z * z / 2), 1);
        }
        double from = z - width;
        double within = z > 0 && from > 0
                ? NORMAL.survivalProbability(from) - NORMAL.survivalProbability(z)
                : NORMAL.cumulativeProbability(z) - NORMAL.cumulativeProbability(from);
        return mixed(within, 2 * NORMAL.cumulativeProbability(width / 2) - 1);
    }

    /** @param best the likelihood at the M that fits best */
    private static double mixed(double likelihood, double best) {
        return Math.log((1 - ODD_SHARE) * likelihood + ODD_SHARE * best);
    }
}
