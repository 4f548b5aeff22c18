package rootcast.trackrecord;

import java.time.Instant;
import java.util.List;
import rootcast.crop.CropProfile;
import rootcast.crop.TrayFormat;
import rootcast.outlook.BatchHistory;
import rootcast.site.Site;

/**
 * A batch that was seen ready, and what was known of it at any earlier moment.
 *
 * @param id    tells batches apart and puts those of one moment in one order
 * @param stays the houses it stood in until it was ready
 * @param then  what was known at a moment
 */
public record FinishedBatch(
        String id,
        String crop,
        Site site,
        TrayFormat format,
        Instant stuckAt,
        Instant readyAt,
        List<BatchHistory.Stay> stays,
        Then then) {

    /** Answers from facts that had happened by {@code at} and no later ones. */
    public interface Then {

        BatchHistory historyAt(Instant at);

        /** The profile in force at that moment, for this batch's variety and site. */
        CropProfile profileAt(Instant at);

        /** Plants that a ship day could have had: alive by the books then, shipped ones before, less what was missing. */
        int plantsThereAt(Instant at);
    }

    public FinishedBatch {
        stays = List.copyOf(stays);
        if (!stuckAt.isBefore(readyAt)) {
            throw new IllegalArgumentException(
                    "batch %s was ready at %s, not after sticking at %s".formatted(id, readyAt, stuckAt));
        }
    }
}
