package rootcast.app.availability;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.availability.WantedLine;
import rootcast.facts.FactPosition;

/**
 * A customer's order; each line is a promise until it is shipped or released.
 *
 * @param number     what people call it: 1, 2, 3 and so on, as orders were placed
 * @param recordedBy who took it
 * @param confidence at which its lines were promised
 * @param lines      numbered from 1
 * @param releasedAt null while the promises stand
 */
public record Order(
        UUID id,
        long number,
        String customer,
        @Nullable String note,
        double confidence,
        Instant recordedAt,
        String recordedBy,
        FactPosition position,
        List<WantedLine> lines,
        @Nullable Instant releasedAt,
        @Nullable String releasedBy) {

    public boolean isReleased() {
        return releasedAt != null;
    }

    /** As it was before it was released. */
    public Order unreleased() {
        return new Order(id, number, customer, note, confidence, recordedAt, recordedBy, position, lines, null, null);
    }
}
