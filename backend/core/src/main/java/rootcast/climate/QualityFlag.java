package rootcast.climate;

import java.time.Instant;
import java.util.Comparator;

/**
 * What a rule of {@link ReadingQuality} says about a reading, or about a sensor's hour.
 *
 * @param sensor   code of the sensor; empty for readings sent for the house without one
 * @param at       of the reading, or the start of the hour
 * @param value    the reading, or the sensor's mean of the hour, in the quantity's unit
 * @param expected what it was compared with; not a number where there is nothing to compare
 * @param limit    how far from it is still taken as good
 * @param leftOut  kept out of the house's hour, unless overridden
 */
public record QualityFlag(
        FlagKind kind, String sensor, Instant at, double value, double expected, double limit, boolean leftOut) {

    /** By time, sensor and rule. */
    public static final Comparator<QualityFlag> ORDER = Comparator.comparing(QualityFlag::at)
            .thenComparing(QualityFlag::sensor)
            .thenComparing(QualityFlag::kind);

    /** What an override is remembered by. */
    public record Key(FlagKind kind, String sensor, Instant at) {}

    public Key key() {
        return new Key(kind, sensor, at);
    }
}
