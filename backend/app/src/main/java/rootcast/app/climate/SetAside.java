package rootcast.app.climate;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.climate.FlagKind;

/**
 * A reading that is kept but not in the series.
 *
 * @param kind     range, duplicate or clock skew
 * @param expected what it was held against: the nearest limit or the value that placements; null for a clock
 */
public record SetAside(
        HouseReading reading, FlagKind kind, @Nullable Double expected, Instant recordedAt) {

    /** The same wherever and however often the same reading comes. */
    public UUID id() {
        String what = String.join(
                "|",
                reading.house(),
                reading.quantity().wireName(),
                reading.sensor(),
                kind.wireName(),
                reading.at().toString(),
                Double.toString(reading.value()));
        return UUID.nameUUIDFromBytes(what.getBytes(StandardCharsets.UTF_8));
    }
}
