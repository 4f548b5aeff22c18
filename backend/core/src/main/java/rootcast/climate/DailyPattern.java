package rootcast.climate;

import java.util.Arrays;
import java.util.Optional;

/**
 * How a house's day usually runs: its mean temperature by hour of the day over the last seven days with readings.
 *
 * <p>Days are the blocks of 24 hours that end where the future begins; a block counts if any hour of it was measured,
 * and blocks over four weeks old do not. An hour of the day that none of the seven has lies on a straight line between
 * its neighbours around the clock. Hours of the day are UTC, so the pattern follows the sun across a clock change.
 *
 * <p>A change of the set-point moves the pattern by as much: hours before it are taken as if the set-point in force
 * where the future begins had held, and hours to come follow their own. Where no set-point held before, a planned one
 * becomes the mean of the day.
 */
public final class DailyPattern {

    static final int HOURS = 24;
    private static final int DAYS = 7;
    private static final int OLDEST_DAYS = 28;

    private final double[] meanC;
    private final double dayMeanC;
    private final SetpointPlan plan;
    private final long lastHour;

    private DailyPattern(double[] meanC, SetpointPlan plan, long lastHour) {
        this.meanC = meanC;
        this.dayMeanC = Arrays.stream(meanC).average().orElseThrow();
        this.plan = plan;
        this.lastHour = lastHour;
    }

    /** The pattern of the days before {@code untilHourExclusive}; empty if four weeks hold no reading. */
    static Optional<DailyPattern> before(HourlySeries series, long untilHourExclusive, SetpointPlan plan) {
        long last = untilHourExclusive - 1;
        double[] sumC = new double[HOURS];
        int[] days = new int[HOURS];
        int taken = 0;
        for (int day = 1; day <= OLDEST_DAYS && taken < DAYS; day++) {
            long start = untilHourExclusive - (long) day * HOURS;
            boolean any = false;
            for (long hour = start; hour < start + HOURS; hour++) {
                if (series.isMeasured(hour)) {
                    int ofDay = Math.floorMod(hour, HOURS);
                    sumC[ofDay] += series.meanC(hour) + plan.rise(last, hour).orElse(0);
                    days[ofDay]++;
                    any = true;
                }
            }
            taken += any ? 1 : 0;
        }
        return taken == 0 ? Optional.empty() : Optional.of(new DailyPattern(meansAround(sumC, days), plan, last));
    }

    /** Temperature expected in an hour to come, °C. */
    public double celsius(long hour) {
        double usualC = meanC[Math.floorMod(hour, HOURS)];
        Double plannedC = plan.mediumC(hour);
        if (plannedC == null) {
            return usualC;
        }
        return usualC + plan.rise(hour, lastHour).orElse(plannedC - dayMeanC);
    }

    /** Temperatures expected in the 24 hours from one on, by hour of the day, °C. */
    double[] dayFrom(long firstHour) {
        double[] dayC = new double[HOURS];
        for (int i = 0; i < HOURS; i++) {
            dayC[Math.floorMod(firstHour + i, HOURS)] = celsius(firstHour + i);
        }
        return dayC;
    }

    private static double[] meansAround(double[] sumC, int[] days) {
        double[] means = new double[HOURS];
        Arrays.setAll(means, hour -> days[hour] > 0 ? sumC[hour] / days[hour] : between(sumC, days, hour));
        return means;
    }

    private static double between(double[] sumC, int[] days, int hour) {
        int before = 1;
        while (days[Math.floorMod(hour - before, HOURS)] == 0) {
            before++;
        }
        int after = 1;
        while (days[(hour + after) % HOURS] == 0) {
            after++;
        }
        int left = Math.floorMod(hour - before, HOURS);
        int right = (hour + after) % HOURS;
        double leftC = sumC[left] / days[left];
        double rightC = sumC[right] / days[right];
        return leftC + (rightC - leftC) * before / (before + after);
    }
}
