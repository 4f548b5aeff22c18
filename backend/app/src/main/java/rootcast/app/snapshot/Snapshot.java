package rootcast.app.snapshot;

import java.time.Instant;
import java.util.Map;
import rootcast.facts.FactPosition;

/**
 * Everything that follows from the facts up to a position, as of an instant. Nothing in it changes.
 *
 * @param position every fact up to here is in it
 * @param asOf     the time that development has been computed up to
 * @param parts    one per room, by its class; a room to come adds its own
 */
public record Snapshot(FactPosition position, Instant asOf, Map<Class<?>, Object> parts) {

    /** Before anything was read from the tables. */
    public static final Snapshot NOTHING = new Snapshot(FactPosition.START, Instant.EPOCH, Map.of());

    public Snapshot {
        parts = Map.copyOf(parts);
    }

    /** A room's part. */
    public <T> T part(Class<T> type) {
        Object part = parts.get(type);
        if (part == null) {
            throw new IllegalStateException("nothing has been read from the tables yet");
        }
        return type.cast(part);
    }

    public boolean isAtLeast(FactPosition wanted) {
        return position.compareTo(wanted) >= 0;
    }
}
