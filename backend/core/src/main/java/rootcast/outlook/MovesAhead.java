package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import rootcast.crop.CropProfile;
import rootcast.crop.StageProfile;

/**
 * The moves of one batch that nobody has recorded yet and everybody expects: from its house to the usual next one, once it
 * has reached the stage at which batches are carried there, and on from there.
 *
 * <p>A batch that has reached it and still stands where it stood is expected to be carried now; after {@value #GRACE_DAYS} days it
 * is taken to stay. When the move is still to come, it comes with the median of the stage's end: that a slow batch is carried late
 * too is left out.
 */
final class MovesAhead {

    /** Hands are found within days, a weekend among them (common practice, no source). */
    private static final int GRACE_DAYS = 3;

    private MovesAhead() {}

    /** The batch with the moves to come as placements; itself if none is expected. */
    static BatchHistory of(
            BatchHistory history, CropProfile profile, StagePath path, StageRates rates, HouseCurves houses) {
        BatchHistory moved = history;
        StagePath way = path;
        Set<String> stoodIn = new HashSet<>(Set.of(history.house()));
        UsualMove next = houses.usualMove(history.house());
        // A house that sends its batches on to one that sends them back would never let them rest.
        while (next != null && stoodIn.add(next.to()) && !way.isSeen(StagePath.STAGES - 1)) {
            int stage = StagePath.endingIn(next.reached());
            long at = way.ends(rates, RateBelief.median())[stage];
            if (at == DevelopmentCurve.NEVER || stayed(way, stage, houses.asOf())) {
                break;
            }
            Instant last = moved.placements().get(moved.placements().size() - 1).fromInclusive();
            Instant carried = latest(Instant.ofEpochMilli(at), houses.asOf(), last);
            moved = moved.moved(List.of(new BatchHistory.Placement(next.to(), carried)));
            way = new StagePath(moved, profile, houses);
            next = houses.usualMove(next.to());
        }
        return moved;
    }

    private static boolean stayed(StagePath way, int stage, Instant now) {
        return way.isSeen(stage)
                && now.isAfter(Instant.ofEpochMilli(way.seenAt(stage)).plus(Duration.ofDays(GRACE_DAYS)));
    }

    /**
     * Makes the curves that {@link #of} may ask for, however the dates come out: afterwards it only reads, and many batches
     * may be asked at once.
     */
    static void prepare(BatchHistory history, CropProfile profile, HouseCurves houses) {
        Set<String> seen = new HashSet<>(Set.of(history.house()));
        UsualMove next = houses.usualMove(history.house());
        while (next != null && seen.add(next.to())) {
            for (StageProfile stage : profile.stages()) {
                houses.curve(next.to(), stage.cardinals(), houses.asOf());
            }
            houses.bridged(next.to(), houses.asOf());
            next = houses.usualMove(next.to());
        }
    }

    private static Instant latest(Instant... instants) {
        return List.of(instants).stream().max(Instant::compareTo).orElseThrow();
    }
}
