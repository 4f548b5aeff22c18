package rootcast.trackrecord;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.StageProfile;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.DevelopmentCurve;
import rootcast.outlook.HouseCurves;

/**
 * What anybody could have said without the model.
 *
 * <p>Calendar days: sticking and the mean days of the crop's batches that were ready before. Degree-days: sticking and
 * the mean degree-days above the crop's base of the same batches, the days to come as the outlook expects them; the base
 * is the mean of the stages' minima, each for its days. Before the first batch is ready both go by the profile. A date
 * that has passed without the batch being ready is taken as now.
 *
 * <p>Degree-days are summed by the hour and without an upper limit, in days at the reference temperature.
 *
 * <p>Source: Murphy 1988, Mon. Wea. Rev. 116:2417-2424 (skill against a reference); degree-days McMaster and Wilhelm
 * 1997, Agric. For. Meteorol. 87:291-300.
 */
final class Baselines {

    private static final double DAY_MILLIS = 86_400_000;

    /** Hotter than any medium: the line has no upper limit. */
    private static final double BEYOND_C = 80;

    private final Map<String, Learned> crops = new HashMap<>();

    private static final class Learned {
        private int batches;
        private double calendarDays;
        private double referenceDays;
    }

    /** Takes in a batch at the moment it is ready. */
    void learn(FinishedBatch batch, CropProfile profile, HouseCurves houses) {
        Learned learned = crops.computeIfAbsent(batch.crop(), any -> new Learned());
        learned.batches++;
        learned.calendarDays += days(batch.stuckAt(), batch.readyAt());
        learned.referenceDays += gained(batch.placements(), line(profile), batch.stuckAt(), batch.readyAt(), houses);
    }

    Instant byCalendar(FinishedBatch batch, CropProfile profile, Instant now) {
        Learned learned = crops.get(batch.crop());
        double days = learned == null ? profileDays(profile) : learned.calendarDays / learned.batches;
        return notBeforeNow(batch.stuckAt().plusMillis(Math.round(days * DAY_MILLIS)), now);
    }

    /** @param placements as known now; it is taken to stand in the last */
    Instant byDegreeDays(FinishedBatch batch, List<Placement> placements, CropProfile profile, HouseCurves houses) {
        Learned learned = crops.get(batch.crop());
        Cardinals line = line(profile);
        double needed = learned == null ? profileDays(profile) : learned.referenceDays / learned.batches;
        double left = needed - gained(placements, line, batch.stuckAt(), houses.asOf(), houses);
        DevelopmentCurve last =
                houses.curve(placements.get(placements.size() - 1).house(), line, batch.stuckAt());
        long reached = last.reach(houses.asOf().toEpochMilli(), left);
        return reached == DevelopmentCurve.NEVER
                ? BackTest.horizon(houses.asOf())
                : notBeforeNow(Instant.ofEpochMilli(reached), houses.asOf());
    }

    private static Instant notBeforeNow(Instant date, Instant now) {
        return date.isBefore(now) ? now : date;
    }

    private static double profileDays(CropProfile profile) {
        return profile.stages().stream()
                .mapToDouble(StageProfile::daysAtReference)
                .sum();
    }

    private static Cardinals line(CropProfile profile) {
        double days = profileDays(profile);
        double baseC = 0;
        double referenceC = 0;
        for (StageProfile stage : profile.stages()) {
            baseC += stage.cardinals().minC() * stage.daysAtReference() / days;
            referenceC += stage.cardinals().referenceC() * stage.daysAtReference() / days;
        }
        return new Cardinals(Cardinals.Form.LINEAR, baseC, BEYOND_C, BEYOND_C + 1, referenceC);
    }

    private static double gained(
            List<Placement> placements, Cardinals line, Instant from, Instant until, HouseCurves houses) {
        double sum = 0;
        for (int i = 0; i < placements.size(); i++) {
            Instant begin = placements.get(i).fromInclusive();
            Instant end = i + 1 < placements.size() ? placements.get(i + 1).fromInclusive() : until;
            Instant last = end.isBefore(until) ? end : until;
            if (begin.isBefore(last)) {
                sum += houses.curve(placements.get(i).house(), line, from)
                        .between(begin.toEpochMilli(), last.toEpochMilli());
            }
        }
        return sum;
    }

    static double days(Instant from, Instant to) {
        return (to.toEpochMilli() - from.toEpochMilli()) / DAY_MILLIS;
    }
}
