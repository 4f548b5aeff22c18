package rootcast.climate;

import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The temperature of every hour as of an instant: measured where it was, bridged where it was not, forecast from there.
 *
 * <p>Only hours that had ended by then are looked at, so the view as of a past instant is what it was then, whatever has
 * been added to later hours. A missing hour is never zero:
 *
 * <ol>
 *   <li>up to three missing hours between measured ones lie on a straight line;
 *   <li>otherwise the hour is as the same hour of the nearest day that has it, both sides averaged if equally near, up
 *       to {@value #NEAR_DAYS} days away;
 *   <li>otherwise it is the house's set-point, and without one the reference temperature that the caller gives.
 * </ol>
 *
 * <p>Hours to come follow {@link DailyPattern}, or rule 3 if there is none. Our own rules, no publication.
 */
public final class FilledSeries {

    static final int NEAR_DAYS = 14;

    /** A reading can change what is taken for missing hours at most this far from it. */
    private static final long REACH_HOURS = NEAR_DAYS * 24L;

    private static final int SHORT_GAP_HOURS = 3;

    private final HourlySeries series;
    private final long nextHour;
    private final Optional<DailyPattern> pattern;
    private final SetpointPlan plan;

    /** By hour of the day, if every day to come is the same: asked for by every curve of the house. */
    private final double @Nullable [] dayToComeC;

    /** @param plan what the house is set to */
    public FilledSeries(HourlySeries series, Instant asOf, SetpointPlan plan) {
        this.series = series;
        this.plan = plan;
        this.nextHour = HourlySeries.hourOf(asOf);
        this.pattern = DailyPattern.before(series, nextHour, plan);
        this.dayToComeC = pattern.filter(any -> plan.changesAfter(nextHour).length == 0)
                .map(usual -> usual.dayFrom(nextHour))
                .orElse(null);
    }

    /** Hours after {@code hour} from which on another set-point holds. */
    public long[] setpointChangesAfter(long hour) {
        return plan.changesAfter(hour);
    }

    /** The first hour that had not ended: it and all later ones are forecast. */
    public long nextHour() {
        return nextHour;
    }

    /** °C; {@code referenceC} only where {@link #sourceOf} says so. */
    public double celsius(long hour, double referenceC) {
        if (hour >= nextHour) {
            if (dayToComeC != null) {
                return dayToComeC[Math.floorMod(hour, DailyPattern.HOURS)];
            }
            return pattern.isPresent() ? pattern.get().celsius(hour) : unmeasuredC(hour, referenceC);
        }
        if (series.isMeasured(hour)) {
            return series.meanC(hour);
        }
        double bridgedC = acrossShortGap(hour);
        if (Double.isNaN(bridgedC)) {
            bridgedC = sameHourOfNearestDay(hour);
        }
        return Double.isNaN(bridgedC) ? unmeasuredC(hour, referenceC) : bridgedC;
    }

    private double unmeasuredC(long hour, double referenceC) {
        Double plannedC = plan.mediumC(hour);
        return plannedC == null ? referenceC : plannedC;
    }

    public HourSource sourceOf(long hour) {
        if (hour >= nextHour) {
            return pattern.isPresent() ? HourSource.PATTERN : unmeasuredSource(hour);
        }
        if (series.isMeasured(hour)) {
            return HourSource.MEASURED;
        }
        if (!Double.isNaN(acrossShortGap(hour))) {
            return HourSource.NEIGHBOURS;
        }
        return Double.isNaN(sameHourOfNearestDay(hour)) ? unmeasuredSource(hour) : HourSource.SAME_HOUR;
    }

    private HourSource unmeasuredSource(long hour) {
        return plan.mediumC(hour) == null ? HourSource.REFERENCE : HourSource.SETPOINT;
    }

    /** Hours of the window that had ended and have no reading. */
    public int missingHours(long fromHourInclusive, long untilHourExclusive) {
        int missing = 0;
        for (long hour = fromHourInclusive; hour < Math.min(untilHourExclusive, nextHour); hour++) {
            missing += series.isMeasured(hour) ? 0 : 1;
        }
        return missing;
    }

    /** What stood in for the missing hours of the window; empty if none was missing. */
    public Set<HourSource> bridgedBy(long fromHourInclusive, long untilHourExclusive) {
        Set<HourSource> sources = EnumSet.noneOf(HourSource.class);
        for (long hour = fromHourInclusive; hour < Math.min(untilHourExclusive, nextHour); hour++) {
            if (!series.isMeasured(hour)) {
                sources.add(sourceOf(hour));
            }
        }
        return sources;
    }

    /** The first hour whose temperature may differ once readings from {@code changedHour} on have changed. */
    public long firstAffectedBy(long changedHour) {
        long hour = changedHour - REACH_HOURS;
        while (hour < changedHour && series.isMeasured(hour)) {
            hour++;
        }
        return hour;
    }

    private double acrossShortGap(long hour) {
        long before = hour - 1;
        while (hour - before <= SHORT_GAP_HOURS && !series.isMeasured(before)) {
            before--;
        }
        long after = hour + 1;
        while (after - before - 1 <= SHORT_GAP_HOURS && !isMeasuredByThen(after)) {
            after++;
        }
        if (after - before - 1 > SHORT_GAP_HOURS || !series.isMeasured(before)) {
            return Double.NaN;
        }
        double beforeC = series.meanC(before);
        return beforeC + (series.meanC(after) - beforeC) * (hour - before) / (after - before);
    }

    private double sameHourOfNearestDay(long hour) {
        for (int days = 1; days <= NEAR_DAYS; days++) {
            long before = hour - days * 24L;
            long after = hour + days * 24L;
            if (series.isMeasured(before) && isMeasuredByThen(after)) {
                return (series.meanC(before) + series.meanC(after)) / 2;
            }
            if (series.isMeasured(before)) {
                return series.meanC(before);
            }
            if (isMeasuredByThen(after)) {
                return series.meanC(after);
            }
        }
        return Double.NaN;
    }

    private boolean isMeasuredByThen(long hour) {
        return hour < nextHour && series.isMeasured(hour);
    }
}
