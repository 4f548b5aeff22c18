package rootcast.outlook;

import static rootcast.outlook.DevelopmentCurve.NEVER;

import java.time.Instant;
import java.util.Arrays;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;

/**
 * One batch's way through STICK, CALLUS and ROOT for given rate multipliers, one for each stage.
 *
 * <p>A stage begins where the one before ended and ends when multiplier × reference-days gained since reach its
 * days ({@link CalledStages}). A stage that was entered as complete ended some time before, when nobody saw: {@link StageRates} says when it
 * is believed to have. Any end is no earlier than the last look that found it incomplete and no later than the stage's, or a
 * later stage's, entry.
 *
 * <p>Stages are numbered 0 to 2 as in {@link Stage#GROWING}; times are milliseconds since 1970-01-01T00:00Z. The path
 * reads its houses' curves, so it stays good while those are brought up to date.
 */
final class StagePath {

    static final int STAGES = Stage.GROWING.size();

    /** What each stage ends in. */
    static final Stage[] REACHED = {Stage.CALLUS, Stage.ROOT, Stage.READY};

    private final long stuckAt;
    private final DevelopmentPath[] paths = new DevelopmentPath[STAGES];
    private final CalledStages stages;
    private final boolean[] isSeen = new boolean[STAGES];

    /** The last moment before its end was seen at which a look found the stage incomplete; 0 if none did. */
    private final long[] incompleteAt = new long[STAGES];

    /** The end if it was seen; else the next later end that was seen, or {@code NEVER}. */
    private final long[] latestEnd = new long[STAGES];

    StagePath(BatchHistory history, CropProfile profile, HouseCurves houses) {
        stuckAt = history.stuckAt().toEpochMilli();
        stages = new CalledStages(profile);
        long bound = NEVER;
        for (int stage = STAGES - 1; stage >= 0; stage--) {
            var ofStage = profile.of(Stage.GROWING.get(stage));
            paths[stage] = new DevelopmentPath(history.placements(), ofStage.cardinals(), houses);
            var seen = history.reached(REACHED[stage]);
            isSeen[stage] = seen.isPresent();
            bound = seen.map(Instant::toEpochMilli).orElse(bound);
            latestEnd[stage] = bound;
        }
        for (BatchHistory.Look look : history.looks()) {
            int stage = endingIn(look.stage());
            long at = look.at().toEpochMilli();
            if (!look.isComplete() && at < latestEnd[stage]) {
                incompleteAt[stage] = Math.max(incompleteAt[stage], at);
            }
        }
    }

    static int endingIn(Stage reached) {
        return reached.ordinal() - Stage.CALLUS.ordinal();
    }

    /** When each stage ends at a node of the rates; {@link DevelopmentCurve#NEVER} if it does not. */
    long[] ends(StageRates rates, int node) {
        long[] ends = new long[STAGES];
        long start = stuckAt;
        for (int stage = 0; stage < STAGES; stage++) {
            if (rates.isPast(stage)) {
                start = rates.pastEnd(stage, node);
            } else if (start != NEVER) {
                start = end(stage, start, rates.of(stage).multiplier(node));
            }
            ends[stage] = start;
        }
        return ends;
    }

    /**
     * When the stages end.
     *
     * @param ends     by stage and node of its date
     * @param lastRate of the last stage, by node of its date
     */
    record Dates(long[][] ends, RateBelief lastRate) {}

    Dates dates(StageRates rates) {
        long[][] together = endsTogether(rates);
        long[][] ends = new long[STAGES][];
        Arrays.setAll(ends, stage -> StagesTogether.upTo(stage, rates, together).dates(together[stage]));
        int last = STAGES - 1;
        return new Dates(ends, StagesTogether.upTo(last, rates, together).lastRate(rates.of(last)));
    }

    /** By stage and node of all rates at once. */
    long[][] endsTogether(StageRates rates) {
        long[][] ends = new long[STAGES][];
        long[] starts = new long[RateBelief.NODES];
        Arrays.fill(starts, stuckAt);
        for (int stage = 0; stage < STAGES; stage++) {
            ends[stage] = rates.isPast(stage) ? rates.pastEnds(stage) : ends(stage, starts, rates.of(stage));
            starts = ends[stage];
        }
        return ends;
    }

    /** When a stage that began at a moment ends. */
    long end(int stage, long start, double multiplier) {
        return bounded(stage, paths[stage].reach(start, stages.days(stage) / multiplier));
    }

    /** When a stage that began at a moment has gained so many reference-days. */
    long reach(int stage, long start, double referenceDays) {
        return paths[stage].reach(start, referenceDays);
    }

    /** Reference-days of a stage from one moment to another; 0 if that is no later. */
    double between(int stage, long from, long to) {
        return from < to ? paths[stage].between(from, to) : 0;
    }

    long stuckAt() {
        return stuckAt;
    }

    private long[] ends(int stage, long[] starts, RateBelief rate) {
        long[] ends = new long[RateBelief.NODES];
        DevelopmentPath.Start start = null;
        for (int node = 0; node < RateBelief.NODES; node++) {
            if (starts[node] == NEVER) {
                ends[node] = NEVER;
                continue;
            }
            if (start == null || !start.isAt(starts[node])) {
                start = paths[stage].from(starts[node]);
            }
            ends[node] = bounded(stage, start.reach(stages.days(stage) / rate.multiplier(node)));
        }
        return ends;
    }

    static long[] atNode(int node, long[][] ends) {
        long[] atNode = new long[STAGES];
        Arrays.setAll(atNode, stage -> ends[stage][node]);
        return atNode;
    }

    private long bounded(int stage, long end) {
        return Math.min(Math.max(end, incompleteAt[stage]), latestEnd[stage]);
    }

    boolean isSeen(int stage) {
        return isSeen[stage];
    }

    double daysAtReference(int stage) {
        return stages.days(stage);
    }

    CalledStages stages() {
        return stages;
    }

    DevelopmentPath.Moment moment(int stage) {
        return paths[stage].moment();
    }

    /** When it was entered as complete. */
    long seenAt(int stage) {
        return latestEnd[stage];
    }

    /** When a look last found it incomplete; 0 if none did. */
    long incompleteAt(int stage) {
        return incompleteAt[stage];
    }

    long startOf(int stage, long[] ends) {
        return stage == 0 ? stuckAt : ends[stage - 1];
    }

    /** How much the rate of a stage changes with each degree where the batch stands now, as d ln(rate) / d°C. */
    double logRatePerC(int stage) {
        return paths[stage].logRatePerC();
    }

    /** Share of a stage that is done at a time, 0 to 1, on the way with these {@link #ends}. */
    double done(int stage, long[] ends, double multiplier, long atMillis) {
        long start = startOf(stage, ends);
        if (atMillis <= start) {
            return 0;
        }
        if (atMillis >= ends[stage]) {
            return 1;
        }
        double gained = paths[stage].between(start, atMillis);
        if (!isSeen[stage] && (ends[stage] != latestEnd[stage] || ends[stage] == NEVER)) {
            return Math.min(1, multiplier * gained / stages.days(stage));
        }
        double whole = paths[stage].between(start, ends[stage]);
        // Seen complete although the readings say that nothing developed: then time is all there is to share out by.
        return whole > 0 ? gained / whole : (double) (atMillis - start) / (ends[stage] - start);
    }

    double[] doneOfEach(long[] ends, double[] multiplierOf, Instant at) {
        double[] done = new double[STAGES];
        for (int stage = 0; stage < STAGES; stage++) {
            done[stage] = done(stage, ends, multiplierOf[stage], at.toEpochMilli());
        }
        return done;
    }

    /** Stages done at a time, 0 to 3. */
    double progress(long[] ends, double[] multiplierOf, long atMillis) {
        double sum = 0;
        for (int stage = 0; stage < STAGES; stage++) {
            sum += done(stage, ends, multiplierOf[stage], atMillis);
        }
        return sum;
    }
}
