package rootcast.climate;

import java.time.Instant;
import java.util.Arrays;

/**
 * The readings of one quantity in one house, summed by hour.
 *
 * <p>An hour keeps the sum of its readings in whole millionths of the unit and their number. Sums of integers do not
 * depend on their order, so any order of arrival leaves the same series to the last bit. Telling a repeated reading
 * from a new one is the store's business: what is added here counts.
 *
 * <p>Not safe for use by several threads at once.
 */
public final class HourlySeries {

    static final long HOUR_SECONDS = 3_600;

    private static final double MICRO = 1e6;

    /** Keeps one reading with a wild clock from making the arrays huge: 50 years of hours. */
    private static final long WIDEST_HOURS = 50L * 366 * 24;

    private long firstHour;
    private long[] totalMicroC = new long[0];
    private int[] readings = new int[0];

    /** The hour that holds {@code at}, counted from 1970-01-01T00:00Z. */
    public static long hourOf(Instant at) {
        return Math.floorDiv(at.getEpochSecond(), HOUR_SECONDS);
    }

    public static Instant startOf(long hour) {
        return Instant.ofEpochSecond(hour * HOUR_SECONDS);
    }

    /** A reading in the millionths of its unit that {@link #put} takes. */
    public static long microC(double celsius) {
        if (!Double.isFinite(celsius) || Math.abs(celsius) > 1e6) {
            throw new IllegalArgumentException(celsius + " is no reading");
        }
        return Math.round(celsius * MICRO);
    }

    /** Adds one reading. Whether it is plausible is for {@link Quantity#refusalOf}. */
    public void add(Instant at, double celsius) {
        long micro = microC(celsius);
        int index = indexMadeFor(hourOf(at));
        totalMicroC[index] += micro;
        readings[index]++;
    }

    public HourlySeries copy() {
        HourlySeries copy = new HourlySeries();
        copy.firstHour = firstHour;
        copy.totalMicroC = totalMicroC.clone();
        copy.readings = readings.clone();
        return copy;
    }

    /** Sets what is stored of an hour, in place of whatever was there; no readings means a missing hour. */
    public void put(long hour, long totalMicroC, int readings) {
        if (readings < 0 || (readings == 0 && totalMicroC != 0)) {
            throw new IllegalArgumentException(
                    "hour %d: %d readings cannot sum to %d millionths".formatted(hour, readings, totalMicroC));
        }
        int index = indexMadeFor(hour);
        this.totalMicroC[index] = totalMicroC;
        this.readings[index] = readings;
    }

    public boolean isMeasured(long hour) {
        return readings(hour) > 0;
    }

    public int readings(long hour) {
        long index = hour - firstHour;
        return index >= 0 && index < readings.length ? readings[(int) index] : 0;
    }

    /** Mean of the hour's readings in the quantity's unit (the C of the name is for the temperatures it began with); not a number if it has none. */
    public double meanC(long hour) {
        return isMeasured(hour)
                ? totalMicroC[(int) (hour - firstHour)] / MICRO / readings[(int) (hour - firstHour)]
                : Double.NaN;
    }

    private int indexMadeFor(long hour) {
        if (readings.length == 0) {
            firstHour = hour;
        }
        long from = Math.min(firstHour, hour);
        long until = Math.max(firstHour + readings.length, hour + 1);
        if (until - from > WIDEST_HOURS) {
            throw new IllegalArgumentException(
                    "a reading at %s is over 50 years from the others".formatted(startOf(hour)));
        }
        if (until - from > readings.length) {
            growTo(from, until);
        }
        return (int) (hour - firstHour);
    }

    /** Grows by half of what is there on the side that is short, so that a long run of hours costs few copies. */
    private void growTo(long fromInclusive, long untilExclusive) {
        long spare = readings.length / 2;
        long from = fromInclusive < firstHour ? fromInclusive - spare : firstHour;
        long until =
                untilExclusive > firstHour + readings.length ? untilExclusive + spare : firstHour + readings.length;
        int shift = (int) (firstHour - from);
        int length = (int) (until - from);
        long[] totals = new long[length];
        int[] counts = new int[length];
        System.arraycopy(totalMicroC, 0, totals, shift, totalMicroC.length);
        System.arraycopy(readings, 0, counts, shift, readings.length);
        totalMicroC = totals;
        readings = counts;
        firstHour = from;
    }

    /** Readings in all hours together. */
    public long readings() {
        return Arrays.stream(readings).asLongStream().sum();
    }
}
