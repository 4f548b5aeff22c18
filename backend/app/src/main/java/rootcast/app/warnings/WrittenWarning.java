package rootcast.app.warnings;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.warnings.Warning;

/**
 * A warning in the log.
 *
 * @param firstSeenAt when it was first found, which may be later than it could have been
 * @param deliveries  what was sent outside or is pending
 */
public record WrittenWarning(
        UUID id,
        String site,
        Warning warning,
        Instant firstSeenAt,
        @Nullable Instant acknowledgedAt,
        @Nullable String acknowledgedBy,
        @Nullable String acknowledgement,
        List<Delivery> deliveries) {

    /** @param deliveredAt null while it is pending */
    public record Delivery(
            String channel,
            Instant dueAt,
            int attempts,
            @Nullable String lastError,
            @Nullable Instant deliveredAt) {}
}
