package rootcast.outlook;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rootcast.crop.Stage;

/**
 * What is recorded of a batch's stages, as the likelihood of its rate multiplier M.
 *
 * <p>With x = M · reference-days gained since the stage began / days at reference, a living cell has reached the stage's
 * end with probability Φ(ln x / {@value #CELL_SPREAD} + z₀.₉): cells' times are log-normal, and at x = 1 nine of ten are
 * there. A look is binomial in that. Who enters a stage saw its end at ln x normal around 0 with standard deviation
 * {@value #SEEN_SPREAD}, some time since the last look that fell short of nine in ten: the likelihood is the probability
 * of that interval. Each is mixed with a share {@value #ODD_SHARE} that fits any M, for looks at the wrong bench. That
 * nothing was entered says nothing.
 *
 * <p>Source: interval-censored log-normal times, Lawless 2003, Statistical Models and Methods for Lifetime Data, §2.3 and
 * §5.3; the constants are common practice, no source.
 */
final class RateEvidence {

    /** Standard deviation of ln(a cell's time) within a batch. Common practice, no source. */
    static final double CELL_SPREAD = 0.12;

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

    private final List<Observation> observations = new ArrayList<>();

    private interface Observation {
        double logLikelihood(double multiplier);
    }

    private interface Progress {
        /** x for a multiplier; 0 while the stage has not begun. */
        double at(double multiplier);
    }

    /** The observations in order of time within each kind, so that the sum does not depend on how they came in. */
    RateEvidence(BatchHistory history, StagePath path) {
        for (BatchHistory.Look look : history.looks()) {
            Progress progress = progress(path, stageEndingIn(look.stage()), look.at());
            observations.add(multiplier -> look(progress.at(multiplier), look.cells(), look.reached()));
        }
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            Stage reached = StagePath.REACHED[stage];
            Instant seenAt = history.reachedAt().get(reached);
            if (seenAt != null) {
                Progress seen = progress(path, stage, seenAt);
                Progress before = lastNotComplete(history, path, stage, seenAt);
                observations.add(multiplier -> seenComplete(before.at(multiplier), seen.at(multiplier)));
            }
        }
    }

    boolean isEmpty() {
        return observations.isEmpty();
    }

    double logLikelihood(double multiplier) {
        double sum = 0;
        for (Observation observation : observations) {
            sum += observation.logLikelihood(multiplier);
        }
        return sum;
    }

    private static int stageEndingIn(Stage reached) {
        return reached.ordinal() - Stage.CALLUS.ordinal();
    }

    private static Progress lastNotComplete(BatchHistory history, StagePath path, int stage, Instant seenAt) {
        Progress last = multiplier -> 0;
        for (BatchHistory.Look look : history.looks()) {
            boolean isComplete = 10L * look.reached() >= 9L * look.cells();
            if (look.stage() == StagePath.REACHED[stage] && look.at().isBefore(seenAt) && !isComplete) {
                last = progress(path, stage, look.at());
            }
        }
        return last;
    }

    private static Progress progress(StagePath path, int stage, Instant at) {
        long millis = at.toEpochMilli();
        if (path.beginsAlike(stage)) {
            // The same for every M but for the factor: asked once instead of at every node.
            double atOne = path.progressOf(stage, 1, millis);
            return multiplier -> multiplier * atOne;
        }
        return multiplier -> path.progressOf(stage, multiplier, millis);
    }

    private static double look(double progress, int cells, int reached) {
        double z = Math.log(progress) / CELL_SPREAD + Z_COMPLETE;
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

    private static double seenComplete(double before, double seen) {
        double z = Math.log(seen) / SEEN_SPREAD;
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
