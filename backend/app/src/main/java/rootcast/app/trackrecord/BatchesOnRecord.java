package rootcast.app.trackrecord;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.site.LiveSites;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.Variety;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.ledger.Cause;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.HistoryOfBatch;
import rootcast.trackrecord.FinishedBatch;

/** Every batch that was seen ready, with what its entries said at any moment before. */
@ApplicationScoped
@Transactional
class BatchesOnRecord {

    /** Somebody will have come by since an older look, and seen nothing to enter. Common practice, no source. */
    private static final Duration LOOK_OF_LATE = Duration.ofDays(4);

    @Inject
    PanacheLedger ledger;

    @Inject
    Catalogue catalogue;

    @Inject
    LiveSites sites;

    /** While it stays, so does what entries say of {@link #all}. */
    FactPosition newestEntry() {
        return ledger.newestOfReady();
    }

    /** The same of one crop. */
    FactPosition newestEntry(String crop) {
        List<String> varieties = varietiesOf(crop);
        return varieties.isEmpty() ? FactPosition.START : ledger.newestOfReady(varieties);
    }

    private List<String> varietiesOf(String crop) {
        return catalogue.varieties().stream()
                .filter(variety -> variety.crop().equals(crop))
                .map(Variety::code)
                .toList();
    }

    List<FinishedBatch> all() {
        Map<String, String> cropOf =
                catalogue.varieties().stream().collect(Collectors.toMap(Variety::code, Variety::crop));
        Map<String, NavigableMap<Instant, CropProfile>> profiles = new HashMap<>();
        return ledger.foldsOf(cropOf.keySet()).stream()
                .flatMap(fold -> {
                    String crop = cropOf.get(fold.state().batch().variety());
                    return finished(fold, crop, profiles.computeIfAbsent(crop, catalogue::history)).stream();
                })
                .toList();
    }

    /** Of one crop, each as if the profile given for it had always been in force. */
    List<FinishedBatch> under(String crop, Function<String, CropProfile> profileOf) {
        return ledger.foldsOf(varietiesOf(crop)).stream()
                .flatMap(fold -> {
                    CropProfile always = profileOf.apply(fold.state().batch().id());
                    return finished(fold, crop, new TreeMap<>(Map.of(Instant.MIN, always))).stream();
                })
                .toList();
    }

    private Optional<FinishedBatch> finished(BatchFold fold, String crop, NavigableMap<Instant, CropProfile> profiles) {
        BatchState now = fold.state();
        Instant seenReadyAt = now.reachedAt().get(Stage.READY);
        Batch batch = now.batch();
        if (seenReadyAt == null || !batch.stuckAt().isBefore(seenReadyAt)) {
            return Optional.empty();
        }
        BatchHistory history = HistoryOfBatch.of(now);
        return Optional.of(new FinishedBatch(
                batch.id(),
                crop,
                sites.site(batch.site()),
                batch.trayFormat(),
                batch.stuckAt(),
                notReadyAt(history, seenReadyAt),
                seenReadyAt,
                history.placements().stream()
                        .filter(placement -> placement.fromInclusive().isBefore(seenReadyAt))
                        .toList(),
                new ByItsEntries(fold, profiles)));
    }

    private static Instant notReadyAt(BatchHistory history, Instant seenReadyAt) {
        return history.looks().stream()
                .filter(look -> look.stage() == Stage.READY && !look.isComplete())
                .map(BatchHistory.Look::at)
                .filter(at -> at.isBefore(seenReadyAt) && !at.isBefore(seenReadyAt.minus(LOOK_OF_LATE)))
                .max(Instant::compareTo)
                .orElse(seenReadyAt);
    }

    private record ByItsEntries(BatchFold fold, NavigableMap<Instant, CropProfile> profiles)
            implements FinishedBatch.Then {

        @Override
        public BatchHistory historyAt(Instant at) {
            return HistoryOfBatch.of(stateAt(at));
        }

        @Override
        public CropProfile profileAt(Instant at) {
            Batch batch = fold.state().batch();
            return profiles.floorEntry(at).getValue().forBatch(batch.variety(), batch.site());
        }

        /** Plants that a later count found missing were missing before anybody counted. */
        @Override
        public int plantsThereAt(Instant at) {
            BatchState then = stateAt(at);
            int missedLater = Math.max(0, missing(fold.state()) - missing(then));
            return then.alivePlants() + then.shippedPlants() - missedLater;
        }

        private BatchState stateAt(Instant at) {
            return fold.stateAt(at).orElseThrow();
        }

        private static int missing(BatchState state) {
            return state.lost().getOrDefault(Cause.COUNT_DIFFERENCE, 0);
        }
    }
}
