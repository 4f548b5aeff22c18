package rootcast.app.trackrecord;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.outlook.BatchesSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropProfile;
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
    Snapshots snapshots;

    private Kept kept = new Kept(new Key(FactPosition.START, Long.MIN_VALUE), List.of(), Instant.EPOCH);

    private record Key(FactPosition newestEntry, long hour) {}

    private record Kept(Key key, List<Case> cases, Instant asOf) {}

    /** @param asOf when the cases were made */
    public record Cases(List<Case> cases, Instant asOf) {}

    public synchronized Cases cases() {
        Snapshot now = snapshots.now();
        Key key = new Key(now.part(BatchesSnapshot.class).newestEntry(), HourlySeries.hourOf(now.asOf()));
        if (!key.equals(kept.key)) {
            kept = new Kept(key, computed(now.part(ClimateSnapshot.class), onRecord.all()), now.asOf());
        }
        return new Cases(kept.cases, kept.asOf);
    }

    /** The cases of one crop, had each of its batches been foretold with the profile given for it. Nothing is kept. */
    public List<Case> under(String crop, Function<String, CropProfile> profileOf) {
        return computed(snapshots.now().part(ClimateSnapshot.class), onRecord.under(crop, profileOf));
    }

    private static List<Case> computed(ClimateSnapshot climate, List<FinishedBatch> finished) {
        Set<String> houses = finished.stream()
                .flatMap(batch -> batch.placements().stream())
                .map(BatchHistory.Placement::house)
                .collect(Collectors.toSet());
        return BackTest.of(finished, climate.walk(houses)::at);
    }
}
