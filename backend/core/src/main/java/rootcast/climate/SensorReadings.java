package rootcast.climate;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * One sensor's readings in order of the time they were measured at, to the microsecond, whatever order they came in.
 *
 * <p>Not safe for use by several threads at once.
 */
public final class SensorReadings {

    static final long HOUR_MICROS = HourlySeries.HOUR_SECONDS * 1_000_000;

    private long[] micros = new long[16];
    private double[] values = new double[16];
    private int size;

    static long micros(Instant at) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, at);
    }

    static Instant instant(long micros) {
        return Instant.EPOCH.plus(micros, ChronoUnit.MICROS);
    }

    /** The reading of that very moment, if there is one. */
    public OptionalDouble at(Instant at) {
        int index = Arrays.binarySearch(micros, 0, size, micros(at));
        return index < 0 ? OptionalDouble.empty() : OptionalDouble.of(values[index]);
    }

    /** Adds a reading, in place of what was there at that moment. */
    public void put(Instant at, double value) {
        long stamp = micros(at);
        int index = Arrays.binarySearch(micros, 0, size, stamp);
        if (index < 0) {
            index = -index - 1;
            if (size == micros.length) {
                micros = Arrays.copyOf(micros, size + size / 2);
                values = Arrays.copyOf(values, size + size / 2);
            }
            System.arraycopy(micros, index, micros, index + 1, size - index);
            System.arraycopy(values, index, values, index + 1, size - index);
            micros[index] = stamp;
            size++;
        }
        values[index] = value;
    }

    /** These readings, with {@code instead} in place of those at the same moments and beside the others. */
    public SensorReadings with(SensorReadings instead) {
        SensorReadings both = new SensorReadings();
        both.micros = Arrays.copyOf(micros, micros.length);
        both.values = Arrays.copyOf(values, values.length);
        both.size = size;
        for (int i = 0; i < instead.size; i++) {
            both.put(instant(instead.micros[i]), instead.values[i]);
        }
        return both;
    }

    /** Forgets what was measured before an hour. */
    public void forgetBefore(long hour) {
        int from = indexFrom(hour * HOUR_MICROS);
        if (from > 0) {
            micros = Arrays.copyOfRange(micros, from, Math.max(size, from + 16));
            values = Arrays.copyOfRange(values, from, Math.max(size, from + 16));
            size -= from;
        }
    }

    public int size() {
        return size;
    }

    /** Index of the first reading at or after a moment. */
    int indexFrom(long stampMicros) {
        int index = Arrays.binarySearch(micros, 0, size, stampMicros);
        return index < 0 ? -index - 1 : index;
    }

    long micros(int index) {
        return micros[index];
    }

    double value(int index) {
        return values[index];
    }

    /** Between the least and the greatest of some readings. */
    double spread(int fromInclusive, int lastInclusive) {
        double least = values[fromInclusive];
        double most = least;
        for (int i = fromInclusive + 1; i <= lastInclusive; i++) {
            least = Math.min(least, values[i]);
            most = Math.max(most, values[i]);
        }
        return most - least;
    }

    boolean isMeasured(long hour) {
        return indexFrom(hour * HOUR_MICROS) < indexFrom((hour + 1) * HOUR_MICROS);
    }
}
