package rootcast.app.site;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A change of a house's medium set-point, past or planned.
 *
 * @param mediumC °C; null if the heat goes off
 */
public record PlannedSetpoint(
        String house, Instant from, @Nullable Double mediumC, Instant recordedAt) {}
