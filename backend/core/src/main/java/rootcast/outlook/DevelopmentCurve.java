package rootcast.outlook;

import java.util.Arrays;
import rootcast.climate.FilledSeries;
import rootcast.crop.Cardinals;

/**
 * Development that one house gives to one set of cardinals, summed from a fixed hour on, in reference-days.
 *
 * <p>Each hour adds the rate at its mean temperature, spread evenly over it. Hours that have ended are an array; the
 * daily pattern that follows repeats, so days to come are a multiplication. The sum is kept in whole 1e-12
 * reference-days: differences do not depend on where the sum began or how often it was brought up to date.
 *
 * <p>Times are milliseconds since 1970-01-01T00:00Z. Not safe for use by several threads at once.
 */
public final class DevelopmentCurve {

    /** What {@link #reach} answers if it does not happen within {@value #HORIZON_DAYS} days of what is known. */
    public static final long NEVER = Long.MAX_VALUE;

    private static final int HORIZON_DAYS = 400;
    private static final int DAY_HOURS = 24;
    private static final long HOUR_MILLIS = 3_600_000;
    private static final double PICO = 1e12;

    private final DevelopmentRate rate;
    private final double referenceC;

    private long firstHour;
    private int pastHours;

    /** {@code cumulative[i]} is what the first i hours gave; meaningful up to {@code pastHours}. */
    private long[] cumulative = new long[1];

    /** The same for the hours of one day to come, from the first that had not ended. */
    private final long[] dayToCome = new long[DAY_HOURS + 1];

    DevelopmentCurve(Cardinals cardinals, FilledSeries filled, long firstHour) {
        this.rate = new DevelopmentRate(cardinals);
        this.referenceC = cardinals.referenceC();
        beginAt(firstHour, filled);
    }

    /** Sums anew from an hour that may be earlier than before. */
    void beginAt(long hour, FilledSeries filled) {
        firstHour = hour;
        pastHours = 0;
        update(hour, filled);
    }

    /** Takes over everything that may have changed from {@code fromHour} on. */
    void update(long fromHour, FilledSeries filled) {
        int from = (int) Math.max(0, Math.min(fromHour - firstHour, pastHours));
        pastHours = (int) Math.max(0, filled.nextHour() - firstHour);
        if (cumulative.length <= pastHours) {
            cumulative = Arrays.copyOf(cumulative, pastHours + 1 + pastHours / 2);
        }
        for (int i = from; i < pastHours; i++) {
            cumulative[i + 1] = cumulative[i] + picoIn(firstHour + i, filled);
        }
        for (int i = 0; i < DAY_HOURS; i++) {
            dayToCome[i + 1] = dayToCome[i] + picoIn(firstHour + pastHours + i, filled);
        }
    }

    private long picoIn(long hour, FilledSeries filled) {
        return Math.round(rate.perDay(filled.celsius(hour, referenceC)) / DAY_HOURS * PICO);
    }

    long firstHour() {
        return firstHour;
    }

    /** Reference-days gained from one time to a later one; both at or after the first hour. */
    public double between(long fromMillis, long toMillis) {
        return (picoAt(toMillis) - picoAt(fromMillis)) / PICO;
    }

    /** When this much has been gained since {@code fromMillis}, or {@link #NEVER}. */
    public long reach(long fromMillis, double referenceDays) {
        long need = (long) Math.ceil(referenceDays * PICO);
        if (need <= 0) {
            return fromMillis;
        }
        long target = picoAt(fromMillis) + need;
        return target <= cumulative[pastHours] ? inPast(target) : toCome(target - cumulative[pastHours]);
    }

    private long inPast(long target) {
        int i = firstAtLeast(cumulative, pastHours, target);
        return millisWithin(firstHour + i - 1, target - cumulative[i - 1], cumulative[i] - cumulative[i - 1]);
    }

    private long toCome(long need) {
        long perDay = dayToCome[DAY_HOURS];
        if (perDay == 0 || need / perDay >= HORIZON_DAYS) {
            return NEVER;
        }
        long days = (need - 1) / perDay;
        long rest = need - days * perDay;
        int i = firstAtLeast(dayToCome, DAY_HOURS, rest);
        long hour = firstHour + pastHours + days * DAY_HOURS + i - 1;
        return millisWithin(hour, rest - dayToCome[i - 1], dayToCome[i] - dayToCome[i - 1]);
    }

    private static long millisWithin(long hour, long need, long given) {
        return hour * HOUR_MILLIS + Math.round((double) need / given * HOUR_MILLIS);
    }

    /** Index of the first element of a rising array that is at least {@code target}; the last one is. */
    private static int firstAtLeast(long[] rising, int last, long target) {
        int low = 0;
        int high = last;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (rising[middle] >= target) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    private long picoAt(long millis) {
        long hour = Math.floorDiv(millis, HOUR_MILLIS);
        long atStart = picoAtStartOf(hour);
        long given = picoAtStartOf(hour + 1) - atStart;
        return atStart + Math.round((double) given * Math.floorMod(millis, HOUR_MILLIS) / HOUR_MILLIS);
    }

    private long picoAtStartOf(long hour) {
        long i = hour - firstHour;
        if (i < 0) {
            throw new IllegalArgumentException("hour %d is before the curve's first, %d".formatted(hour, firstHour));
        }
        if (i <= pastHours) {
            return cumulative[(int) i];
        }
        long later = i - pastHours;
        return cumulative[pastHours] + later / DAY_HOURS * dayToCome[DAY_HOURS] + dayToCome[(int) (later % DAY_HOURS)];
    }
}
