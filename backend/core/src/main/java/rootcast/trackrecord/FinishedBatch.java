package rootcast.trackrecord;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import rootcast.crop.CropProfile;
import rootcast.crop.TrayFormat;
import rootcast.outlook.BatchHistory;
import rootcast.site.Site;

/**
 * A batch that was seen ready, and what was known of it at any earlier moment.
 *
 * <p>That it is ready is seen when somebody looks: it became so some time after the last look that found it not ready.
 * What is taken as the moment is the middle, {@link #readyAt()}.
 *
 * @param id          tells batches apart and puts those of one moment in one order
 * @param notReadyAt  the last look that found it not ready; {@code seenReadyAt} if there was none, or none of late
 * @param seenReadyAt entered as ready
 * @param placements       the houses it stood in until it was ready
 * @param then        what was known at a moment
 */
public record FinishedBatch(
        String id,
        String crop,
        Site site,
        TrayFormat format,
        Instant stuckAt,
        Instant notReadyAt,
        Instant seenReadyAt,
        List<BatchHistory.Placement> placements,
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
        placements = List.copyOf(placements);
        if (!stuckAt.isBefore(seenReadyAt)) {
            throw new IllegalArgumentException(
                    "batch %s was ready at %s, not after sticking at %s".formatted(id, seenReadyAt, stuckAt));
        }
        if (notReadyAt.isBefore(stuckAt) || notReadyAt.isAfter(seenReadyAt)) {
            throw new IllegalArgumentException("batch %s was found not ready at %s, outside %s to %s"
                    .formatted(id, notReadyAt, stuckAt, seenReadyAt));
        }
    }

    public Instant readyAt() {
        return notReadyAt.plus(Duration.between(notReadyAt, seenReadyAt).dividedBy(2));
    }
}
