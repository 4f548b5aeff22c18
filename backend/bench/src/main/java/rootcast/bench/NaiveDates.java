package rootcast.bench;

import java.time.Instant;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.DevelopmentRate;

/**
 * The same dates without curves: for each batch and each of its rate multipliers every hour since sticking, from the
 * temperature to the rate, until ready.
 */
final class NaiveDates {

    private static final long HOUR_MILLIS = 3_600_000;
    private static final int HORIZON_HOURS = 200 * 24;

    private NaiveDates() {}

    /** @return milliseconds of the ready dates, one for each multiplier */
    static long[] ready(BatchHistory history, CropProfile profile, FilledSeries climate, double[] multipliers) {
        long[] ready = new long[multipliers.length];
        for (int i = 0; i < multipliers.length; i++) {
            ready[i] = ready(history, profile, climate, multipliers[i]);
        }
        return ready;
    }

    private static long ready(BatchHistory history, CropProfile profile, FilledSeries climate, double multiplier) {
        long at = history.stuckAt().toEpochMilli();
        for (Stage stage : Stage.GROWING) {
            var ofStage = profile.of(stage);
            Instant seen = history.reachedAt().get(Stage.values()[stage.ordinal() + 1]);
            if (seen != null) {
                at = seen.toEpochMilli();
                continue;
            }
            DevelopmentRate rate = new DevelopmentRate(ofStage.cardinals());
            double left = ofStage.daysAtReference() / multiplier;
            long last = at / HOUR_MILLIS + HORIZON_HOURS;
            while (left > 0 && at / HOUR_MILLIS < last) {
                long hour = HourlySeries.hourOf(Instant.ofEpochMilli(at));
                long end = (hour + 1) * HOUR_MILLIS;
                double perHour = rate.perDay(climate.celsius(hour, 22)) / 24;
                double given = perHour * (end - at) / HOUR_MILLIS;
                at = given < left ? end : at + Math.round(left / perHour * HOUR_MILLIS);
                left -= given;
            }
        }
        return at;
    }
}
