package rootcast.outlook;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;

/**
 * A batch's way to ready at the crop's own rate under any course of temperatures, hour by hour.
 *
 * <p>Slower than the curves and independent of them: the explanation asks it what the date would have been, had this or
 * that been otherwise.
 */
final class HourlyDates {

    private static final long HOUR_MILLIS = 3_600_000;
    private static final int HORIZON_HOURS = 400 * 24;

    /**
     * °C in an hour since 1970-01-01T00:00Z, for a batch in that stage, numbered from 0; the cardinals name the reference
     * that an unmeasured house is taken at.
     */
    interface Course {
        double celsius(long hour, int stage, Cardinals cardinals);
    }

    private final long stuckAt;
    private final double[] daysAtReference;
    private final Cardinals[] cardinals;
    private final DevelopmentRate[] rates;

    HourlyDates(Instant stuckAt, CropProfile profile) {
        this.stuckAt = stuckAt.toEpochMilli();
        daysAtReference = new double[StagePath.STAGES];
        cardinals = new Cardinals[StagePath.STAGES];
        rates = new DevelopmentRate[StagePath.STAGES];
        var stages = new CalledStages(profile);
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            var ofStage = profile.of(Stage.GROWING.get(stage));
            daysAtReference[stage] = stages.days(stage);
            cardinals[stage] = ofStage.cardinals();
            rates[stage] = new DevelopmentRate(ofStage.cardinals());
        }
    }

    /** When the last stage ends, in milliseconds; {@link DevelopmentCurve#NEVER} if not within the horizon. */
    long ready(Course course) {
        return walk(course, (at, progress) -> {});
    }

    /** Stages done, 0 to 3, at each full hour until ready. */
    List<PlannedPoint> progress(Course course) {
        List<PlannedPoint> points = new ArrayList<>();
        points.add(new PlannedPoint(Instant.ofEpochMilli(stuckAt), 0));
        long ready = walk(course, (at, progress) -> points.add(new PlannedPoint(Instant.ofEpochMilli(at), progress)));
        if (ready != DevelopmentCurve.NEVER) {
            points.add(new PlannedPoint(Instant.ofEpochMilli(ready), StagePath.STAGES));
        }
        return points;
    }

    private interface AtFullHour {
        void take(long atMillis, double progress);
    }

    private long walk(Course course, AtFullHour fullHour) {
        long at = stuckAt;
        long last = stuckAt / HOUR_MILLIS + HORIZON_HOURS;
        int stage = 0;
        double done = 0;
        while (at / HOUR_MILLIS < last) {
            long hour = at / HOUR_MILLIS;
            long hourEnd = (hour + 1) * HOUR_MILLIS;
            double perMilli = rates[stage].perDay(course.celsius(hour, stage, cardinals[stage]))
                    / daysAtReference[stage]
                    / DateSpread.DAY_MILLIS;
            double gain = perMilli * (hourEnd - at);
            if (done + gain < 1) {
                done += gain;
                at = hourEnd;
                fullHour.take(at, stage + done);
            } else {
                at += Math.max(0, Math.round((1 - done) / perMilli));
                stage++;
                done = 0;
                if (stage == StagePath.STAGES) {
                    return at;
                }
            }
        }
        return DevelopmentCurve.NEVER;
    }
}
