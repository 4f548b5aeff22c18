package rootcast.app.ledger.rest;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;
import rootcast.app.ledger.RecordEntry;
import rootcast.app.ledger.StickBatch;
import rootcast.app.site.Code;

/** A batch to be stuck, as it is sent. */
record BatchWire(
        @Code String site,
        @Code String house,
        @Code String variety,
        @Code String trayFormat,
        @NotNull OffsetDateTime stuckAt,
        @NotNull Integer trays,
        @Nullable Integer plants,
        @Nullable @Size(max = 2000) String note) {

    StickBatch.Wanted wanted() {
        return new StickBatch.Wanted(site, house, variety, trayFormat, stuckAt.toInstant(), trays, plants, note);
    }

    /** What sticking answers; a repeat answers the same. */
    record Stuck(
            String id,
            long position,
            String site,
            String house,
            String variety,
            String trayFormat,
            String stuckAt,
            int trays,
            int plants) {

        static Stuck of(RecordEntry.Recorded recorded) {
            var after = recorded.after();
            var batch = after.batch();
            return new Stuck(
                    batch.id(),
                    recorded.position().value(),
                    batch.site(),
                    after.house(),
                    batch.variety(),
                    batch.trayFormat().code(),
                    batch.stuckAt().toString(),
                    after.stuckTrays(),
                    after.stuckPlants());
        }
    }
}
