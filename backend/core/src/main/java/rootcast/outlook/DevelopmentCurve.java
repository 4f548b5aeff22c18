package rootcast.outlook;

import java.util.Arrays;
import rootcast.climate.FilledSeries;
import rootcast.crop.Cardinals;

/**
 * Development that one house gives to one set of cardinals, summed from a fixed hour on, in reference-days.
 *
 * <p>Each hour adds the rate at its mean temperature, spread evenly over it. Hours that have ended are an array; the
 * daily pattern that follows repeats from one change of the set-point to the next, so days to come are a
 * multiplication. The sum is kept in whole 1e-12 reference-days: differences do not depend on where the sum began or how
 * often it was brought up to date.
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

    /** Beyond it a straight line through the rate says nothing. */
    private static final double LARGEST_LOG_CHANGE = Math.log(2);

    private final DevelopmentRate rate;
    private final double referenceC;

    private long firstHour;
    private int pastHours;

    /**
     * {@code cumulative[i]} is what the first i hours gave; meaningful up to {@code pastHours}. Written further on, but
     * never over: a {@link Moment} goes on reading it.
     */
    private long[] cumulative = new long[1];

    /** The hours to come: a day that repeats until the next one of these begins, the first where the past ends. */
    private Repeating[] toCome = {};

    private Moment moment;

    /** What one hour of each hour of the day gave last, and at which temperature: most of a day to come is the same. */
    private final double[] lastC = new double[DAY_HOURS];

    private final long[] lastPico = new long[DAY_HOURS];
    private double logRatePerC;

    DevelopmentCurve(Cardinals cardinals, FilledSeries filled, long firstHour) {
        this.rate = new DevelopmentRate(cardinals);
        this.referenceC = cardinals.referenceC();
        Arrays.fill(lastC, Double.NaN);
        beginAt(firstHour, filled);
    }

    /** Rebuilds the sums from an hour that may be earlier than before. */
    void beginAt(long hour, FilledSeries filled) {
        firstHour = hour;
        pastHours = 0;
        cumulative = new long[1];
        update(hour, filled);
    }

    /** Takes over everything that may have changed from {@code fromHour} on. */
    void update(long fromHour, FilledSeries filled) {
        int from = (int) Math.max(0, Math.min(fromHour - firstHour, pastHours));
        boolean overwrites = from < pastHours;
        pastHours = (int) Math.max(0, filled.nextHour() - firstHour);
        if (overwrites || cumulative.length <= pastHours) {
            cumulative = Arrays.copyOf(cumulative, pastHours + 1 + pastHours / 2);
        }
        for (int i = from; i < pastHours; i++) {
            cumulative[i + 1] = cumulative[i] + picoIn(firstHour + i, filled);
        }
        expect(filled);
    }

    private void expect(FilledSeries filled) {
        long begin = firstHour + pastHours;
        long[] changes = filled.setpointChangesAfter(begin);
        toCome = new Repeating[1 + changes.length];
        long before = cumulative[pastHours];
        for (int i = 0; i < toCome.length; i++) {
            toCome[i] = new Repeating(begin, before, dayFrom(begin, filled));
            if (i < changes.length) {
                before = toCome[i].picoAtStartOf(changes[i]);
                begin = changes[i];
            }
        }
        double meanC = 0;
        for (int i = 0; i < DAY_HOURS; i++) {
            meanC += filled.celsius(toCome[0].firstHour + i, referenceC) / DAY_HOURS;
        }
        logRatePerC = logRatePerC(meanC);
        moment = new Moment(firstHour, pastHours, cumulative, toCome);
    }

    private long[] dayFrom(long begin, FilledSeries filled) {
        long[] day = new long[DAY_HOURS + 1];
        for (int i = 0; i < DAY_HOURS; i++) {
            day[i + 1] = day[i] + picoIn(begin + i, filled);
        }
        return day;
    }

    private long picoIn(long hour, FilledSeries filled) {
        double celsius = filled.celsius(hour, referenceC);
        int ofDay = Math.floorMod(hour, DAY_HOURS);
        if (lastC[ofDay] != celsius) {
            lastC[ofDay] = celsius;
            lastPico[ofDay] = Math.round(rate.perDay(celsius) / DAY_HOURS * PICO);
        }
        return lastPico[ofDay];
    }

    /** The mean of the changes to a degree above and a degree below; each at most what doubles or halves the rate. */
    private double logRatePerC(double celsius) {
        double here = rate.perDay(celsius);
        if (here == 0) {
            return 0;
        }
        double warmer = Math.abs(Math.log(rate.perDay(celsius + 1) / here));
        double cooler = Math.abs(Math.log(rate.perDay(celsius - 1) / here));
        return (Math.min(warmer, LARGEST_LOG_CHANGE) + Math.min(cooler, LARGEST_LOG_CHANGE)) / 2;
    }

    /** How much the rate changes with a degree at the mean temperature of the day to come: |d ln(rate)| / °C. */
    double logRatePerC() {
        return logRatePerC;
    }

    /** A day that repeats, from {@code firstHour} on; {@code before} is what all hours before gave. */
    private record Repeating(long firstHour, long before, long[] day) {

        long picoAtStartOf(long hour) {
            long later = hour - firstHour;
            return before + later / DAY_HOURS * day[DAY_HOURS] + day[(int) (later % DAY_HOURS)];
        }
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
        return reach(fromMillis, picoAt(fromMillis), referenceDays);
    }

    /** The same for a start that is asked for many times, whose sum is known. */
    long reach(long fromMillis, long picoAtFrom, double referenceDays) {
        long need = (long) Math.ceil(referenceDays * PICO);
        if (need <= 0) {
            return fromMillis;
        }
        long target = picoAtFrom + need;
        return target <= cumulative[pastHours] ? inPast(target) : toCome(target);
    }

    private long inPast(long target) {
        int i = firstAtLeast(cumulative, pastHours, target);
        return millisWithin(firstHour + i - 1, target - cumulative[i - 1], cumulative[i] - cumulative[i - 1]);
    }

    private long toCome(long target) {
        int in = 0;
        while (in + 1 < toCome.length && toCome[in + 1].before < target) {
            in++;
        }
        Repeating repeating = toCome[in];
        long need = target - repeating.before;
        long perDay = repeating.day[DAY_HOURS];
        if (perDay == 0) {
            return NEVER;
        }
        long days = (need - 1) / perDay;
        if (days >= HORIZON_DAYS) {
            return NEVER;
        }
        long rest = need - days * perDay;
        int i = firstAtLeast(repeating.day, DAY_HOURS, rest);
        long hour = repeating.firstHour + days * DAY_HOURS + i - 1;
        return millisWithin(hour, rest - repeating.day[i - 1], repeating.day[i] - repeating.day[i - 1]);
    }

    private static long millisWithin(long hour, long need, long given) {
        return hour * HOUR_MILLIS + Math.round((double) need / given * HOUR_MILLIS);
    }

    /**
     * Index of the first element of an array rising from 0 that is at least {@code target}; the last one is, the first is
     * not. Hours give much the same, so the search begins where even hours would have it and widens from there.
     */
    private static int firstAtLeast(long[] rising, int last, long target) {
        int guess = (int) ((double) target / rising[last] * last);
        int low = guess;
        int high = guess;
        int step = 1;
        while (rising[low] >= target) {
            high = low;
            low = Math.max(0, low - step);
            step *= 2;
        }
        while (rising[high] < target) {
            low = high;
            high = Math.min(last, high + step);
            step *= 2;
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (rising[middle] >= target) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    /** What has been gained by a time since the sum began, in 1e-12 reference-days. */
    long picoAt(long millis) {
        return moment.picoAt(millis);
    }

    /** The curve as it stands; it stays so when the curve is brought up to date, and any thread may ask it. */
    Moment moment() {
        return moment;
    }

    record Moment(long firstHour, int pastHours, long[] cumulative, Repeating[] toCome) {

        long picoAt(long millis) {
            long hour = Math.floorDiv(millis, HOUR_MILLIS);
            long atStart = picoAtStartOf(hour);
            long given = picoAtStartOf(hour + 1) - atStart;
            return atStart + Math.round((double) given * Math.floorMod(millis, HOUR_MILLIS) / HOUR_MILLIS);
        }

        private long picoAtStartOf(long hour) {
            long i = hour - firstHour;
            if (i < 0) {
                throw new IllegalArgumentException(
                        "hour %d is before the curve's first, %d".formatted(hour, firstHour));
            }
            if (i <= pastHours) {
                return cumulative[(int) i];
            }
            int in = toCome.length - 1;
            while (toCome[in].firstHour > hour) {
                in--;
            }
            return toCome[in].picoAtStartOf(hour);
        }
    }
}
