package rootcast.app.outlook;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.ledger.RecordedBatch;
import rootcast.app.site.SitesSnapshot;
import rootcast.availability.Cell;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropProfile;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.HistoryOfBatch;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.Outlook;

/**
 * Takes entries into batches and keeps of each what time alone does not change, so that an hour more is cheap. Belongs to
 * the projector's thread; what it gives out in a {@link BatchesSnapshot} is nobody's.
 */
public final class BatchProjection {

    private static final Logger LOG = Logger.getLogger(BatchProjection.class);

    private final HouseCurves curves;
    private final Map<String, BatchSnapshot> live = new ConcurrentHashMap<>();
    private final Map<String, FaultyBatch> faulty = new ConcurrentHashMap<>();
    private final Map<String, Set<String>> byHouse = new HashMap<>();

    /** What a batch's entries say of it; kept while time alone passes. */
    private final Map<String, BatchOutlook> kept = new ConcurrentHashMap<>();

    private SitesSnapshot sites = new SitesSnapshot(Map.of());
    private CatalogueSnapshot catalogue = new CatalogueSnapshot(Map.of(), Map.of());
    private Map<Cell, List<String>> idsByCell = Map.of();
    private FactPosition newestEntry = FactPosition.START;
    private boolean cellsChanged;

    /** @param curves brought up to date by whoever calls this */
    public BatchProjection(HouseCurves curves) {
        this.curves = curves;
    }

    /**
     * Takes the sites and profiles as they are now, and that these houses have other plans; computes the batches that this
     * touches again and gives them.
     */
    public List<String> setup(SitesSnapshot sitesNow, CatalogueSnapshot now, Set<String> replannedHouses) {
        CatalogueSnapshot before = catalogue;
        SitesSnapshot sitesBefore = sites;
        catalogue = now;
        sites = sitesNow;
        Set<String> touched = in(replannedHouses);
        live.forEach((id, snapshot) -> {
            Batch batch = snapshot.batch();
            if (!profileOf(batch).equals(before.profile(batch.variety(), batch.site()))
                    || !sites.site(batch.site()).equals(sitesBefore.site(batch.site()))) {
                touched.add(id);
            }
        });
        kept.keySet().removeAll(touched);
        return refresh(touched);
    }

    private CropProfile profileOf(Batch batch) {
        return catalogue.profile(batch.variety(), batch.site());
    }

    /** Takes the batch with all of its entries. */
    public void take(RecordedBatch recorded) {
        Batch batch = recorded.batch();
        boolean wasLive = live.containsKey(batch.id());
        forget(batch.id());
        newestEntry = newestEntry.compareTo(recorded.newest()) < 0 ? recorded.newest() : newestEntry;
        if (recorded.entries() == null) {
            setApart(batch, recorded.newest(), recorded.fault());
        } else {
            apart(batch, recorded.newest(), () -> {
                BatchState state = BatchFold.of(batch, recorded.entries()).state();
                if (state.isLive()) {
                    live.put(batch.id(), snapshot(batch, recorded.newest(), state));
                    state.placements()
                            .forEach(placement -> byHouse.computeIfAbsent(placement.house(), any -> new HashSet<>())
                                    .add(batch.id()));
                }
            });
        }
        cellsChanged |= wasLive != live.containsKey(batch.id());
    }

    private void forget(String id) {
        kept.remove(id);
        faulty.remove(id);
        BatchSnapshot before = live.remove(id);
        if (before != null) {
            before.state()
                    .placements()
                    .forEach(placement -> byHouse.get(placement.house()).remove(id));
        }
    }

    /** Does something with one batch; if that breaks off, this batch is set apart and the others go on. */
    private void apart(Batch batch, FactPosition newest, Runnable work) {
        try {
            work.run();
        } catch (RuntimeException fault) {
            LOG.errorf(fault, "batch %s cannot be computed and is set apart", batch.id());
            setApart(
                    batch, newest, fault.getMessage() == null ? fault.getClass().getSimpleName() : fault.getMessage());
        }
    }

    private void setApart(Batch batch, FactPosition newest, @Nullable String fault) {
        kept.remove(batch.id());
        cellsChanged |= live.remove(batch.id()) != null;
        faulty.put(batch.id(), new FaultyBatch(batch, newest, fault == null ? "" : fault));
    }

    /** Computes the batches that stand or stood in these houses again and gives them. */
    public List<String> housesChanged(Map<String, Instant> fromWhen) {
        forgetKeptAfter(fromWhen);
        return refresh(in(fromWhen.keySet()));
    }

    /** The batches that stand or stood in these houses, or are expected to be carried there. */
    private Set<String> in(Collection<String> houses) {
        Set<String> batches = new HashSet<>();
        if (houses.isEmpty()) {
            return batches; // most steps take entries only, and a look at every batch would cost more than the rest of
            // them
        }
        houses.forEach(house -> batches.addAll(byHouse.getOrDefault(house, Set.of())));
        live.forEach((id, snapshot) -> {
            if (snapshot.willStandIn(houses)) {
                batches.add(id);
            }
        });
        return batches;
    }

    /** How far a batch was when its plants were last counted, lost or shipped may have changed with a late reading. */
    private void forgetKeptAfter(Map<String, Instant> fromWhen) {
        fromWhen.forEach((house, from) -> {
            for (String id : byHouse.getOrDefault(house, Set.of())) {
                BatchOutlook of = kept.get(id);
                if (of != null && !of.history().newestFactAt().isBefore(from)) {
                    kept.remove(id);
                }
            }
        });
    }

    /** Computes every outlook for the time that the curves now stand at, with what changed in these houses before. */
    public List<String> timePassed(Map<String, Instant> housesChangedFrom) {
        forgetKeptAfter(housesChangedFrom);
        return refresh(live.keySet());
    }

    /**
     * Once every curve is made, batches only read them and share the cores: in an hour in which people record, hundreds have to be
     * computed from their entries again with each report. House by house, because batches that stand together read the same curves.
     */
    private List<String> refresh(Collection<String> ids) {
        List<String> ordered = ids.stream()
                .map(live::get)
                .sorted(Comparator.comparing(snapshot -> snapshot.state().house()))
                .map(snapshot -> snapshot.batch().id())
                .toList();
        ordered.stream().filter(id -> !kept.containsKey(id)).forEach(this::prepareOne);
        curves.bringUpToDate();
        ordered.parallelStream().forEach(this::refreshOne);
        return ordered;
    }

    private void prepareOne(String id) {
        BatchSnapshot of = live.get(id);
        apart(
                of.batch(),
                of.position(),
                () -> BatchOutlook.prepare(HistoryOfBatch.of(of.state()), profileOf(of.batch()), curves));
    }

    private void refreshOne(String id) {
        BatchSnapshot before = live.get(id);
        if (before == null) {
            return; // set apart a moment ago
        }
        apart(
                before.batch(),
                before.position(),
                () -> live.put(id, snapshot(before.batch(), before.position(), before.state())));
    }

    private BatchSnapshot snapshot(Batch batch, FactPosition newest, BatchState state) {
        return BatchSnapshot.of(batch, newest, state, outlook(batch, state), sites.site(batch.site()));
    }

    private Outlook outlook(Batch batch, BatchState state) {
        BatchOutlook of = kept.get(batch.id());
        if (of == null) {
            of = BatchOutlook.of(HistoryOfBatch.of(state), profileOf(batch), batch.trayFormat(), curves);
            if (isOver(of.history())) {
                kept.put(batch.id(), of);
            }
        }
        return of.now();
    }

    /** Development up to a fact of the running hour rests on a forecast until that hour has ended. */
    private boolean isOver(BatchHistory history) {
        return history.newestFactAt().isBefore(HourlySeries.startOf(HourlySeries.hourOf(curves.asOf())));
    }

    /** The cell of a batch that is known; empty for one that is finished. */
    public Optional<Cell> cellOf(String id) {
        return Optional.ofNullable(live.get(id))
                .map(BatchSnapshot::batch)
                .or(() -> Optional.ofNullable(faulty.get(id)).map(FaultyBatch::batch))
                .map(BatchSnapshot::cellOf);
    }

    /** The site of a batch that is known. */
    public String siteOf(String id) {
        return cellOf(id).orElseThrow().site();
    }

    public BatchesSnapshot snapshot() {
        if (cellsChanged) {
            Map<Cell, List<String>> byCell = new HashMap<>();
            new TreeMap<>(live)
                    .forEach((id, snapshot) -> byCell.computeIfAbsent(snapshot.cell(), any -> new ArrayList<>(2))
                            .add(id));
            idsByCell = Map.copyOf(byCell);
            cellsChanged = false;
        }
        return new BatchesSnapshot(new HashMap<>(live), Map.copyOf(faulty), idsByCell, newestEntry);
    }
}
