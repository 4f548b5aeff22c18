package rootcast.warnings;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One mistake while it lasts.
 *
 * @param batch     the batch it is about; null if it is about the house
 * @param measured  the probe it is about; null if it is about none
 * @param since     start of the first bad hour
 * @param raisedAt  end of the hour that raised it: the first moment at which it could be told
 * @param until     start of the hours that ended it; null while it lasts
 * @param worst     value furthest beyond the limit; null where there is no value
 * @param unit      of worst and limit, by its UCUM code; empty where there is none
 * @param batches   those that suffered, in order
 */
public record Warning(
        WarningKind kind,
        String house,
        @Nullable String batch,
        @Nullable Measured measured,
        Instant since,
        Instant raisedAt,
        @Nullable Instant until,
        @Nullable Double worst,
        @Nullable Double limit,
        String unit,
        List<String> batches) {

    public Warning {
        batches = List.copyOf(batches);
    }

    /** Whether both are about one thing, whenever it was. */
    public boolean isAboutTheSameAs(Warning other) {
        return kind == other.kind
                && house.equals(other.house)
                && Objects.equals(batch, other.batch)
                && measured == other.measured;
    }

    /** Whether they share a moment; ends are half-open. */
    boolean overlaps(Warning other) {
        return (until == null || other.since.isBefore(until)) && (other.until == null || since.isBefore(other.until));
    }
}
