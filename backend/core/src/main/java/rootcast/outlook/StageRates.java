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

    /**
     * Dates of a stage's end by node, if the stages up to it do not all go as fast or slow together as the nodes take them to.
     *
     * <p>Each stage adds to how far the dates lie apart. Taken together at one node they add up; with correlation ρ they add up to
     * √(Σ dᵢdⱼρᵢⱼ), and the dates are those of nodes nearer to the median by that ratio.
     *
     * @param ends by stage and node
     */
    long[] apart(int stage, long[][] ends) {
        int current = 0;
        while (current < StagePath.STAGES && isPast(current)) {
            current++;
        }
        if (stage <= current) {
            return ends[stage];
        }
        double here = reach(ends[current]);
        double ahead = 0;
        double square = here * here;
        for (int k = current + 1; k <= stage; k++) {
            double adds = Math.max(0, reach(ends[k]) - reach(ends[k - 1]));
            square += adds * adds + 2 * adds * (withNext * here + amongNext * ahead);
            ahead += adds;
        }
        return here + ahead > 0 ? nearer(ends[stage], Math.min(1, Math.sqrt(square) / (here + ahead))) : ends[stage];
    }

    /** Half the way from the late to the early one in ten; 0 where one never comes. */
    private static double reach(long[] ends) {
        long late = ends[RateBelief.P10];
        return late == DevelopmentCurve.NEVER ? 0 : (late - ends[RateBelief.P90]) / 2.0;
    }

    private static long[] nearer(long[] ends, double ratio) {
        long[] nearer = new long[RateBelief.NODES];
        for (int node = 0; node < nearer.length; node++) {
            double at = RateBelief.median() + ratio * (node - RateBelief.median());
            int low = Math.min(RateBelief.NODES - 2, (int) at);
            double part = at - low;
            boolean never = ends[low] == DevelopmentCurve.NEVER || ends[low + 1] == DevelopmentCurve.NEVER;
            nearer[node] = part == 0 || never
                    ? ends[part > 0.5 ? low + 1 : low]
                    : ends[low] + Math.round(part * (ends[low + 1] - ends[low]));
        }
        return nearer;
    }

    /** The multiplier of each stage at a node of its belief. */
    double[] atNode(int node) {
        double[] multipliers = new double[StagePath.STAGES];
        Arrays.setAll(multipliers, stage -> ofStage[stage].multiplier(node));
        return multipliers;
    }
}
