package rootcast.outlook;

import rootcast.climate.FilledSeries;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;

/**
 * The same dates without curves: for each batch and each node of its belief every hour since sticking, from the temperature
 * to the rate, until ready. For batches that stand in one house.
 */
final class HourByHour {

    private static final long HOUR_MILLIS = 3_600_000;
    private static final int HORIZON_HOURS = 200 * 24;

    private HourByHour() {}

    /** @return milliseconds of the ready dates, by node */
    static long[] ready(
            BatchHistory history, CropProfile profile, StageRates rates, StagePath path, FilledSeries climate) {
        long[] ready = new long[RateBelief.NODES];
        for (int node = 0; node < ready.length; node++) {
            long at = history.stuckAt().toEpochMilli();
            for (int stage = 0; stage < StagePath.STAGES; stage++) {
                at = end(profile, stage, at, rates.of(stage).multiplier(node), path, climate);
            }
            ready[node] = at;
        }
        return ready;
    }

    private static long end(
            CropProfile profile, int stage, long start, double multiplier, StagePath path, FilledSeries climate) {
        if (path.isSeen(stage) && path.incompleteAt(stage) == 0) {
            return path.seenAt(stage);
        }
        var ofStage = profile.of(Stage.GROWING.get(stage));
        var rate = new DevelopmentRate(ofStage.cardinals());
        double left = ofStage.daysAtReference() / multiplier;
        long at = start;
        long lastHour = start / HOUR_MILLIS + HORIZON_HOURS;
        while (left > 0 && at / HOUR_MILLIS < lastHour) {
            long hour = at / HOUR_MILLIS;
            long hourEnd = (hour + 1) * HOUR_MILLIS;
            double perHour = rate.perDay(climate.celsius(hour, 22)) / 24;
            double given = perHour * (hourEnd - at) / HOUR_MILLIS;
            at = given < left ? hourEnd : at + Math.round(left / perHour * HOUR_MILLIS);
            left -= given;
        }
        long notBefore = Math.max(at, path.incompleteAt(stage));
        return path.isSeen(stage) ? Math.min(notBefore, path.seenAt(stage)) : notBefore;
    }
}
