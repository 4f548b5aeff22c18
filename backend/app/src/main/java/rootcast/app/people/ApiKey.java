package rootcast.app.people;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A secret with which a device or a partner's program comes in. */
public record ApiKey(
        UUID id,
        String name,
        String secretHash,
        Instant createdAt,
        String createdBy,
        @Nullable Instant lastUsedAt,
        @Nullable Instant endedAt,
        List<Grant> grants) {

    public ApiKey {
        grants = List.copyOf(grants);
    }
}
