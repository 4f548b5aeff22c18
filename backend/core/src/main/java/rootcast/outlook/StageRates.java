package rootcast.outlook;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What is believed of a batch's rate multiplier in each of its stages, and of when those that are past have ended.
 *
 * <p>In stage k the batch runs at ln M_k = c + e_k: c is the batch's own, the e_k differ from stage to stage. Both are
 * normal around 0; of the crop's variance of ln M a share is that of e, which is learned.
 * Before anything has been seen a batch counts as running alike in all stages, which is the wider distribution. A stage entered as
 * complete ended when nobody saw, and the next began then: {@link StageChain}.
 *
 * <p>Stages before the last one that was entered count as ended at their mean moment; the stage after it begins, at each node of
 * its date, at that node's own moment ({@link StageBegun}). A batch entered ready was ready at that moment.
 */
final class StageRates {

    private final RateBelief[] ofStage;

    /** By stage and node; null for stages that are not past. */
    private final long @Nullable [][] pastEnds;

    /** Of ln M in the stage that the batch is in with that of one that has not begun, and of two of these. */
    private final double withNext;

    private final double amongNext;

    private StageRates(RateBelief[] ofStage, long @Nullable [][] pastEnds, double withNext, double amongNext) {
        this.ofStage = ofStage;
        this.pastEnds = pastEnds;
        this.withNext = withNext;
        this.amongNext = amongNext;
    }

    /**
     * After what has been seen of the batch; without evidence, or without spread, the prior to the last bit.
     *
     * @param ownShare of the variance of ln M that is a stage's own
     */
    static StageRates given(double rateSpread, double ownShare, RateEvidence evidence, StagePath path) {
        long[][] pastEnds = new long[StagePath.STAGES][];
        int current = firstNotPast(path);
        if (evidence.isEmpty() || rateSpread == 0) {
            RateBelief prior = RateBelief.prior(rateSpread);
            long start = path.stuckAt();
            for (int stage = 0; stage < current; stage++) {
                boolean isExact = path.isSeen(stage) && path.incompleteAt(stage) == 0;
                start = isExact ? path.seenAt(stage) : path.end(stage, start, 1);
                pastEnds[stage] = filled(start);
            }
            return new StageRates(new RateBelief[] {prior, prior, prior}, pastEnds, 1, 1);
        }
        int last = Math.min(current, StagePath.STAGES - 1);
        for (int stage = last; stage < StagePath.STAGES; stage++) {
            last = evidence.isOf(stage) ? stage : last;
        }
        StageChain chain = new StageChain(rateSpread, ownShare, evidence, path, last);
        RateBelief[] beliefs = new RateBelief[StagePath.STAGES];
        Arrays.setAll(beliefs, stage -> RateBelief.of(chain.rate(stage), rateSpread));
        long[] next = null;
        if (current == StagePath.STAGES) {
            next = filled(path.seenAt(current - 1));
        } else if (current > 0) {
            StageBegun begun = new StageBegun(current, chain, path);
            beliefs[current] = beliefs[current].going(begun.multiplierByNode);
            next = begun.beginByNode;
        }
        for (int stage = current - 1; stage >= 0 && next != null; stage--) {
            pastEnds[stage] = next;
            next = stage == 0 ? null : notAfter(chain.meanBegin(stage), next);
        }
        double amongNext = chain.correlationAhead();
        double withNext =
                current < StagePath.STAGES - 1 ? chain.correlationWithBatch(current) * Math.sqrt(amongNext) : 1;
        return new StageRates(beliefs, pastEnds, Math.max(0, withNext), amongNext);
    }

    /** The stage after the last one that was entered. */
    private static int firstNotPast(StagePath path) {
        int stage = StagePath.STAGES;
        while (stage > 0 && !path.isSeen(stage - 1)) {
            stage--;
        }
        return stage;
    }

    private static long[] filled(long end) {
        long[] ends = new long[RateBelief.NODES];
        Arrays.fill(ends, end);
        return ends;
    }

    private static long[] notAfter(long end, long[] next) {
        return Arrays.stream(next).map(each -> Math.min(each, end)).toArray();
    }

    /**
     * As {@link NotEntered} moves the nodes.
     *
     * @param places among the nodes, by node
     */
    StageRates moved(double[] places) {
        RateBelief[] beliefs = ofStage.clone();
        long[][] past = pastEnds.clone();
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            if (isPast(stage)) {
                past[stage] = StagesTogether.at(places, pastEnds[stage]);
            } else {
                beliefs[stage] = ofStage[stage].moved(places);
            }
        }
        return new StageRates(beliefs, past, withNext, amongNext);
    }

    RateBelief of(int stage) {
        return ofStage[stage];
    }

    /** Whether it, or a later stage, was entered as complete. */
    boolean isPast(int stage) {
        return pastEnds[stage] != null;
    }

    long pastEnd(int stage, int node) {
        return pastEnds[stage][node];
    }

    /** By node; the caller's own. */
    long[] pastEnds(int stage) {
        return pastEnds[stage].clone();
    }

    /** The first stage that was not entered and is followed by none that was; {@link StagePath#STAGES} if there is none. */
    int current() {
        int stage = 0;
        while (stage < StagePath.STAGES && isPast(stage)) {
            stage++;
        }
        return stage;
    }

    /** Correlation of ln M in two different stages that are not past. */
    double correlation(int one, int other) {
        return Math.min(one, other) == current() ? withNext : amongNext;
    }

    /** The multiplier of each stage at a node of its belief. */
    double[] atNode(int node) {
        double[] multipliers = new double[StagePath.STAGES];
        Arrays.setAll(multipliers, stage -> ofStage[stage].multiplier(node));
        return multipliers;
    }
}
