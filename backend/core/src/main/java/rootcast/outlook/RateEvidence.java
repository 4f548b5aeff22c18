package rootcast.outlook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.numerics.LogNormalTail;

/**
 * What is recorded of a batch's stages, as the likelihood of its rate multiplier M in each.
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
    static final int MOST_TELLING_CELLS = 20;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double Z_COMPLETE = NORMAL.inverseCumulativeProbability(0.9);

    /** A narrower interval is taken by its density: the difference of two probabilities would be rounding. */
    private static final double NARROW = 1e-6;

    private final BatchHistory history;
    private final StagePath path;
    private final double[] cellSpread;

    /** By stage, in order of time, so that sums do not depend on how they came in. */
    private final List<List<BatchHistory.Look>> looks = new ArrayList<>();

    RateEvidence(BatchHistory history, StagePath path, CropProfile profile) {
        this.history = history;
        this.path = path;
        this.cellSpread = CellSpread.ofStages(profile);
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            Stage reached = StagePath.REACHED[stage];
            looks.add(history.looks().stream()
                    .filter(look -> look.stage() == reached)
                    .toList());
        }
    }

    boolean isEmpty() {
        return history.looks().isEmpty() && history.reachedAt().isEmpty();
    }

    /** Whether anything was seen of how the stage goes on or ends. */
    boolean isOf(int stage) {
        return path.isSeen(stage) || !looksOf(stage).isEmpty();
    }

    private List<BatchHistory.Look> looksOf(int stage) {
        return looks.get(stage);
    }

    /** For each stage of a batch that runs at this multiplier; 0 if nothing was seen of it. */
    double[] logLikelihoods(double multiplier) {
        double[] multipliers = new double[StagePath.STAGES];
        Arrays.fill(multipliers, multiplier);
        long[] ends = path.ends(multipliers);
        double[] logs = new double[StagePath.STAGES];
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            logs[stage] = looks(stage, ends, multiplier);
            if (path.isSeen(stage)) {
                double seen = path.progressOf(stage, ends, multiplier, path.seenAt(stage));
                double before = path.progressOf(stage, ends, multiplier, path.incompleteAt(stage));
                logs[stage] += seenComplete(before, seen, path.incompleteAt(stage) > 0);
            }
        }
        return logs;
    }

    /** A batch's cells differ alike in all looks at a stage, so these are weighed together for each spread. */
    private double looks(int stage, long[] ends, double multiplier) {
        if (looksOf(stage).isEmpty()) {
            return 0;
        }
        double[] logs = new double[CellSpread.FACTORS.length];
        for (BatchHistory.Look look : looksOf(stage)) {
            double logProgress =
                    Math.log(path.progressOf(stage, ends, multiplier, look.at().toEpochMilli()));
            for (int i = 0; i < logs.length; i++) {
                double z = logProgress / (cellSpread[stage] * CellSpread.FACTORS[i]) + Z_COMPLETE;
                logs[i] += look(z, look.cells(), look.reached());
            }
        }
        double most = Arrays.stream(logs).max().orElseThrow();
        double sum = 0;
        for (int i = 0; i < logs.length; i++) {
            sum += CellSpread.WEIGHTS[i] * Math.exp(logs[i] - most);
        }
        return most + Math.log(sum);
    }

    private static double look(double z, int cells, int reached) {
        double share = (double) reached / cells;
        double log = 0;
        if (reached > 0) {
            log += share * (LogNormalTail.below(z) - Math.log(share));
        }
        if (reached < cells) {
            log += (1 - share) * (LogNormalTail.above(z) - Math.log(1 - share));
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
