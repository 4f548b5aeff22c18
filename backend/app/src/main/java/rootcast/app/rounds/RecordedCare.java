package rootcast.app.rounds;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.rounds.Arrival;
import rootcast.rounds.Care;

/**
 * A closed round item with all that was said of it.
 *
 * @param reason  why it was skipped
 * @param entries ledger entries that it wrote
 */
public record RecordedCare(
        UUID id,
        String site,
        Care care,
        Instant recordedAt,
        String recordedBy,
        @Nullable String reason,
        @Nullable String note,
        Pests pests,
        @Nullable Double nitrogenPpm,
        @Nullable Arrival arrival,
        List<UUID> entries) {}
