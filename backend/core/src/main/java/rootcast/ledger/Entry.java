package rootcast.ledger;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.facts.FactPosition;

/**
 * One fact of one batch. Never changed once written.
 *
 * @param position   place among all facts; decides between facts of one instant
 * @param happenedAt when it happened, as the person or device says
 * @param recordedAt when it was written here
 * @param recordedBy who wrote it
 * @param note       free text, if any
 */
public record Entry(
        UUID id,
        FactPosition position,
        String batch,
        Instant happenedAt,
        Instant recordedAt,
        String recordedBy,
        What what,
        @Nullable String note) {}
