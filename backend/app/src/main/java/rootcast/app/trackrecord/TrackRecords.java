package rootcast.app.trackrecord;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.climate.HourlySeries;
import rootcast.crop.Calibration;
import rootcast.crop.CropProfile;
import rootcast.facts.FactPosition;
import rootcast.outlook.BatchHistory;
import rootcast.trackrecord.BackTest;
import rootcast.trackrecord.CalibrationFit;
import rootcast.trackrecord.Case;
import rootcast.trackrecord.FinishedBatch;
import rootcast.trackrecord.Hindcast;

/**
 * The cases of the back-test, kept until a batch that was seen ready has a new entry, and made again by the hour for readings that
 * came late.
 *
 * <p>Made from the tables and from copies of the houses' hours, so nothing live waits for it. Who asks for cases that an entry
 * has changed waits for them, with others who ask; an hour's turn makes nobody wait.
 */
@ApplicationScoped
public class TrackRecords {

    @Inject
    BatchesOnRecord onRecord;

    @Inject
    Snapshots snapshots;

    /** Older than this the background has not made it, be it switched off or held up: then who asks waits. */
    private static final long HOURS_IN_USE = 2;

    private final ReentrantLock making = new ReentrantLock();
    private volatile Kept kept = new Kept(FactPosition.START, Long.MIN_VALUE, List.of(), Instant.EPOCH);

    private record Kept(FactPosition newestEntry, long hour, List<Case> cases, Instant asOf) {

        boolean isOf(FactPosition newest) {
            return hour != Long.MIN_VALUE && newestEntry.equals(newest);
        }
    }

    /** @param asOf when the cases were made */
    public record Cases(List<Case> cases, Instant asOf) {}

    public Cases cases() {
        FactPosition newest = onRecord.newestEntry();
        long hour = HourlySeries.hourOf(snapshots.now().asOf());
        Predicate<Kept> isGood = each -> each.isOf(newest) && each.hour >= hour - HOURS_IN_USE;
        Kept now = isGood.test(kept) ? kept : made(isGood);
        return new Cases(now.cases, now.asOf);
    }

    /** So that the first who looks need not wait. */
    @Scheduled(
            every = "${rootcast.track-record.make-every:60s}",
            delayed = "60s",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void byTheHour() {
        FactPosition newest = onRecord.newestEntry();
        long hour = HourlySeries.hourOf(snapshots.now().asOf());
        Predicate<Kept> isDone = each -> each.isOf(newest) && each.hour == hour;
        if (!isDone.test(kept)) {
            made(isDone);
        }
    }

    private Kept made(Predicate<Kept> isDone) {
        making.lock();
        try {
            if (!isDone.test(kept)) {
                FactPosition newest = onRecord.newestEntry();
                Snapshot now = snapshots.now();
                List<Case> cases = computed(now.part(ClimateSnapshot.class), onRecord.all());
                kept = new Kept(newest, HourlySeries.hourOf(now.asOf()), cases, now.asOf());
            }
            return kept;
        } finally {
            making.unlock();
        }
    }

    /** The cases of one crop, had each of its batches been foretold with the profile given for it. Nothing is kept. */
    public List<Case> under(String crop, Function<String, CropProfile> profileOf) {
        return computed(snapshots.now().part(ClimateSnapshot.class), onRecord.under(crop, profileOf));
    }

    /** While it stays, so does what entries say of {@link #calibration}. */
    public FactPosition newestEntry(String crop) {
        return onRecord.newestEntry(crop);
    }

    /**
     * What the record says of the ranges that a profile gives.
     *
     * @param profileOf by batch: one that has not learned from it
     */
    public Calibration calibration(String crop, Function<String, CropProfile> profileOf) {
        List<FinishedBatch> finished = onRecord.under(crop, profileOf);
        return CalibrationFit.of(Hindcast.of(finished, walk(snapshots.now().part(ClimateSnapshot.class), finished)));
    }

    private static List<Case> computed(ClimateSnapshot climate, List<FinishedBatch> finished) {
        return BackTest.of(finished, walk(climate, finished));
    }

    private static BackTest.PastHouses walk(ClimateSnapshot climate, List<FinishedBatch> finished) {
        Set<String> houses = finished.stream()
                .flatMap(batch -> batch.placements().stream())
                .map(BatchHistory.Placement::house)
                .collect(Collectors.toSet());
        return climate.walk(houses)::at;
    }
}
