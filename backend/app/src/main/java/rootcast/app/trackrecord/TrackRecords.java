package rootcast.app.trackrecord;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import rootcast.app.climate.LiveClimate;
import rootcast.app.climate.LiveLock;
import rootcast.app.climate.PastWalk;
import rootcast.app.outlook.BatchPicture;
import rootcast.app.outlook.LiveBatches;
import rootcast.climate.HourlySeries;
import rootcast.facts.FactPosition;
import rootcast.outlook.BatchHistory;
import rootcast.trackrecord.BackTest;
import rootcast.trackrecord.Case;
import rootcast.trackrecord.FinishedBatch;

/**
 * The cases of the back-test, kept until an entry comes in or the hour ends.
 *
 * <p>Made from the tables and from copies of the houses' hours, so nothing live waits for it. Who asks while it is being
 * made waits for the same answer.
 */
@ApplicationScoped
public class TrackRecords {

    @Inject
    BatchesOnRecord onRecord;

    @Inject
    LiveBatches batches;

    @Inject
    LiveClimate climate;

    @Inject
    LiveLock live;

    private Kept kept = new Kept(new Key(FactPosition.START, Long.MIN_VALUE), List.of(), Instant.EPOCH);

    private record Key(FactPosition newestEntry, long hour) {}

    private record Kept(Key key, List<Case> cases, Instant asOf) {}

    /** @param asOf when the cases were made */
    public record Cases(List<Case> cases, Instant asOf) {}

    public synchronized Cases cases() {
        Key key = new Key(newestEntry(), HourlySeries.hourOf(batches.asOf()));
        if (!key.equals(kept.key)) {
            kept = new Kept(key, made(), batches.asOf());
        }
        return new Cases(kept.cases, kept.asOf);
    }

    private FactPosition newestEntry() {
        return batches.pictures().stream()
                .map(BatchPicture::position)
                .max(FactPosition::compareTo)
                .orElse(FactPosition.START);
    }

    private List<Case> made() {
        List<FinishedBatch> finished = onRecord.all();
        Set<String> houses = finished.stream()
                .flatMap(batch -> batch.placements().stream())
                .map(BatchHistory.Placement::house)
                .collect(Collectors.toSet());
        PastWalk walk = live.holding(() -> climate.walk(houses));
        return BackTest.of(finished, walk::at);
    }
}
