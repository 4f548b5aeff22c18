package rootcast.app.outlook;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.LiveClimate;
import rootcast.availability.Cell;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropProfile;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.ledger.Entry;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.Outlook;

/**
 * Every batch with its standing and outlook. Changed only by {@code flow}, one thread at a time; read by anyone, since
 * what it gives out does not change.
 */
@ApplicationScoped
public class LiveBatches {

    @Inject
    LiveClimate climate;

    private final Map<String, BatchPicture> pictures = new ConcurrentHashMap<>();
    private final Map<Cell, Set<String>> byCell = new ConcurrentHashMap<>();
    private final Map<String, Set<String>> byHouse = new HashMap<>();

    /** What a batch's entries say of it; kept while time alone passes. */
    private final Map<String, BatchOutlook> settled = new ConcurrentHashMap<>();

    private Map<String, CropProfile> profileOfVariety = Map.of();
    private volatile FactPosition takenIn = FactPosition.START;
    private volatile Instant asOf = Instant.EPOCH;

    /** Every fact up to here is in the pictures. */
    public FactPosition takenIn() {
        return takenIn;
    }

    public Instant asOf() {
        return asOf;
    }

    public void takenIn(FactPosition upTo, Instant now) {
        takenIn = upTo;
        asOf = now;
    }

    public Optional<BatchPicture> picture(String id) {
        return Optional.ofNullable(pictures.get(id));
    }

    public Collection<BatchPicture> pictures() {
        return pictures.values();
    }

    public Set<Cell> cells() {
        return byCell.keySet();
    }

    public List<BatchPicture> of(Cell cell) {
        return byCell.getOrDefault(cell, Set.of()).stream()
                .map(pictures::get)
                .sorted(Comparator.comparing(picture -> picture.batch().id()))
                .toList();
    }

    /**
     * Takes the profiles as they are now, and that these houses have other plans; the caller refreshes what that touches.
     */
    public void setup(Map<String, CropProfile> profileOfVariety, Set<String> replannedHouses) {
        this.profileOfVariety = profileOfVariety;
        settled.values()
                .removeIf(kept -> kept.history().placements().stream()
                        .anyMatch(placement -> replannedHouses.contains(placement.house())));
        settled.entrySet()
                .removeIf(kept -> !kept.getValue()
                        .profile()
                        .equals(profileOf(pictures.get(kept.getKey()).batch())));
    }

    private CropProfile profileOf(Batch batch) {
        return profileOfVariety.get(batch.variety()).forBatch(batch.variety(), batch.site());
    }

    /** Takes the batch with all of its entries. */
    public BatchPicture take(Batch batch, List<Entry> entries) {
        BatchState state = BatchFold.of(batch, entries).state();
        settled.remove(batch.id());
        var newest = entries.get(entries.size() - 1).position();
        BatchPicture picture = new BatchPicture(batch, newest, state, outlook(batch, state));
        pictures.put(batch.id(), picture);
        byCell.computeIfAbsent(picture.cell(), any -> ConcurrentHashMap.newKeySet())
                .add(batch.id());
        state.placements()
                .forEach(placement -> byHouse.computeIfAbsent(placement.house(), any -> ConcurrentHashMap.newKeySet())
                        .add(batch.id()));
        return picture;
    }

    /** Makes the outlooks of the batches that stand or stood in these houses anew and gives those batches. */
    public List<String> housesChanged(Map<String, Instant> fromWhen) {
        forgetSettledAfter(fromWhen);
        return refresh(fromWhen.keySet().stream()
                .flatMap(house -> byHouse.getOrDefault(house, Set.of()).stream())
                .collect(Collectors.toSet()));
    }

    /** How far a batch was when its plants were last counted, lost or shipped may have changed with a late reading. */
    private void forgetSettledAfter(Map<String, Instant> fromWhen) {
        fromWhen.forEach((house, from) -> {
            for (String id : byHouse.getOrDefault(house, Set.of())) {
                if (settled.containsKey(id)) {
                    BatchState state = pictures.get(id).state();
                    if (!HistoryOfBatch.of(state).newestFactAt().isBefore(from)) {
                        settled.remove(id);
                    }
                }
            }
        });
    }

    /** Makes every outlook anew for the time that the curves now stand at, with what changed in these houses before. */
    public List<String> timePassed(Map<String, Instant> housesChangedFrom) {
        forgetSettledAfter(housesChangedFrom);
        return refresh(pictures.keySet());
    }

    public void clear() {
        pictures.clear();
        byCell.clear();
        byHouse.clear();
        settled.clear();
    }

    /**
     * Those that are kept only read the curves, so they share the cores; what has to be made anew adds curves. House by
     * house, because batches that stand together read the same curves.
     */
    private List<String> refresh(Collection<String> ids) {
        climate.curves().settle();
        List<String> live = ids.stream()
                .map(pictures::get)
                .filter(picture -> !picture.state().isFinished())
                .sorted(Comparator.comparing(picture -> picture.state().house()))
                .map(picture -> picture.batch().id())
                .toList();
        live.stream().filter(id -> !settled.containsKey(id)).forEach(this::refreshOne);
        live.parallelStream().filter(settled::containsKey).forEach(this::refreshOne);
        return live;
    }

    private void refreshOne(String id) {
        BatchPicture before = pictures.get(id);
        pictures.put(
                id,
                new BatchPicture(
                        before.batch(), before.position(), before.state(), outlook(before.batch(), before.state())));
    }

    private @Nullable Outlook outlook(Batch batch, BatchState state) {
        return state.isFinished() ? null : outlookOf(batch, state).now();
    }

    /** What the batch's entries say of it. To be asked holding the live lock. */
    public BatchOutlook made(BatchPicture picture) {
        return outlookOf(picture.batch(), picture.state());
    }

    private BatchOutlook outlookOf(Batch batch, BatchState state) {
        BatchOutlook kept = settled.get(batch.id());
        if (kept != null) {
            return kept;
        }
        BatchOutlook made =
                BatchOutlook.of(HistoryOfBatch.of(state), profileOf(batch), batch.trayFormat(), climate.curves());
        if (hasSettled(made.history())) {
            settled.put(batch.id(), made);
        }
        return made;
    }

    /** Development up to a fact of the running hour rests on a forecast until that hour has ended. */
    private boolean hasSettled(BatchHistory history) {
        Instant thisHour =
                HourlySeries.startOf(HourlySeries.hourOf(climate.curves().asOf()));
        return history.newestFactAt().isBefore(thisHour);
    }
}
