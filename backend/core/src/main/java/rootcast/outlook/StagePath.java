package rootcast.outlook;

import static rootcast.outlook.DevelopmentCurve.NEVER;

import java.time.Instant;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;

/**
 * One batch's way through STICK, CALLUS and ROOT for a given rate multiplier.
 *
 * <p>A stage begins where the one before ended and ends when multiplier × reference-days gained since reach the
 * profile's days. An end that was seen is where it was seen, whatever the multiplier; an end that was not seen is no
 * later than a later one that was.
 *
 * <p>Stages are numbered 0 to 2 as in {@link Stage#GROWING}; times are milliseconds since 1970-01-01T00:00Z.
 */
final class StagePath {

    static final int STAGES = Stage.GROWING.size();

    /** What each stage ends in. */
    static final Stage[] REACHED = {Stage.CALLUS, Stage.ROOT, Stage.READY};

    private final long stuckAt;
    private final DevelopmentPath[] paths = new DevelopmentPath[STAGES];
    private final double[] daysAtReference = new double[STAGES];
    private final boolean[] isSeen = new boolean[STAGES];

    /** The end if it was seen; else the next later end that was seen, or {@code NEVER}. */
    private final long[] latestEnd = new long[STAGES];

    StagePath(BatchHistory history, CropProfile profile, HouseCurves houses) {
        stuckAt = history.stuckAt().toEpochMilli();
        long bound = NEVER;
        for (int stage = STAGES - 1; stage >= 0; stage--) {
            var ofStage = profile.of(Stage.GROWING.get(stage));
            paths[stage] = new DevelopmentPath(history.stays(), ofStage.cardinals(), houses);
            daysAtReference[stage] = ofStage.daysAtReference();
            var seen = history.reached(REACHED[stage]);
            isSeen[stage] = seen.isPresent();
            bound = seen.map(Instant::toEpochMilli).orElse(bound);
            latestEnd[stage] = bound;
        }
    }

    /** When each stage ends; {@link DevelopmentCurve#NEVER} if it does not. */
    long[] ends(double multiplier) {
        long[] ends = new long[STAGES];
        long start = stuckAt;
        for (int stage = 0; stage < STAGES; stage++) {
            start = end(stage, start, multiplier);
            ends[stage] = start;
        }
        return ends;
    }

    /** Whether the stage begins at the same time for every multiplier. */
    boolean beginsAlike(int stage) {
        return stage == 0 || isSeen[stage - 1];
    }

    /** Multiplier × reference-days gained in a stage / its days, over 1 once it should be complete; 0 before it begins. */
    double progressOf(int stage, double multiplier, long atMillis) {
        long start = stuckAt;
        for (int earlier = 0; earlier < stage; earlier++) {
            start = end(earlier, start, multiplier);
        }
        return atMillis <= start ? 0 : multiplier * paths[stage].between(start, atMillis) / daysAtReference[stage];
    }

    private long end(int stage, long start, double multiplier) {
        if (isSeen[stage]) {
            return latestEnd[stage];
        }
        if (start == NEVER) {
            return NEVER;
        }
        return Math.min(paths[stage].reach(start, daysAtReference[stage] / multiplier), latestEnd[stage]);
    }

    /** Share of a stage that is done at a time, 0 to 1, on the way with these {@link #ends}. */
    double done(int stage, long[] ends, double multiplier, long atMillis) {
        long start = stage == 0 ? stuckAt : ends[stage - 1];
        if (atMillis <= start) {
            return 0;
        }
        if (atMillis >= ends[stage]) {
            return 1;
        }
        double gained = paths[stage].between(start, atMillis);
        if (ends[stage] != latestEnd[stage] || ends[stage] == NEVER) {
            return Math.min(1, multiplier * gained / daysAtReference[stage]);
        }
        double whole = paths[stage].between(start, ends[stage]);
        // Seen complete although the readings say that nothing developed: then time is all there is to share out by.
        return whole > 0 ? gained / whole : (double) (atMillis - start) / (ends[stage] - start);
    }

    double[] doneOfEach(long[] ends, double multiplier, Instant at) {
        double[] done = new double[STAGES];
        for (int stage = 0; stage < STAGES; stage++) {
            done[stage] = done(stage, ends, multiplier, at.toEpochMilli());
        }
        return done;
    }

    /** Stages done at a time, 0 to 3. */
    double progress(long[] ends, double multiplier, long atMillis) {
        double sum = 0;
        for (int stage = 0; stage < STAGES; stage++) {
            sum += done(stage, ends, multiplier, atMillis);
        }
        return sum;
    }
}
