package rootcast.app.flow;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jboss.logging.Logger;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.availability.LiveSupply;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.app.availability.SupplyAtHead;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.climate.store.Readings;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.ledger.RecordedBatch;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.once.FactHead;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.BatchesSnapshot;
import rootcast.app.site.SitesSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.HistoryOfBatch;
import rootcast.outlook.HouseCurves;

/**
 * The cells of one order as they are at the head: the snapshot's, with the facts between it and the head taken in for
 * these cells alone. Waits for nobody; the projector may be far behind and the promise is decided all the same.
 */
@ApplicationScoped
class CellsAtHead implements SupplyAtHead {

    private static final Logger LOG = Logger.getLogger(CellsAtHead.class);

    @Inject
    Snapshots snapshots;

    @Inject
    FactHead head;

    @Inject
    FactReader facts;

    @Inject
    PanacheLedger ledger;

    @Inject
    InstantSource time;

    @Override
    public Map<Cell, CellSupply> of(Collection<Cell> cells, Instant today) {
        Instant now = time.instant();
        Snapshot snapshot = snapshots.now();
        FactHead.Last last = head.last();
        Map<Cell, CellSupply> supplies = new TreeMap<>();
        if (last.position().equals(snapshot.position()) && isSameHour(now, snapshot.asOf())) {
            SitesSnapshot sites = snapshot.part(SitesSnapshot.class);
            for (Cell cell : cells) {
                CellSupply supply = LiveSupply.cellOf(snapshot, cell).supply();
                supplies.put(
                        cell,
                        new CellSupply(
                                supply.lots(),
                                supply.promises(),
                                sites.site(cell.site()).dayOf(today)));
            }
            return supplies;
        }
        boolean setupChanged = last.setup().compareTo(snapshot.position()) > 0;
        Map<Cell, Set<String>> ids = new TreeMap<>();
        cells.forEach(cell -> ids.put(cell, new HashSet<>(ledger.idsOf(cell))));
        Facts since = facts.between(
                snapshot.position(),
                last.position(),
                setupChanged,
                now,
                ids.values().stream().flatMap(Set::stream).toList());
        Ahead ahead = new Ahead(snapshot, since, today);
        ids.forEach((cell, of) -> supplies.put(cell, ahead.cell(cell, of).supply()));
        return supplies;
    }

    private static boolean isSameHour(Instant a, Instant b) {
        return HourlySeries.hourOf(a) == HourlySeries.hourOf(b);
    }

    /** A snapshot with what has come since. */
    private static final class Ahead {
        private final Snapshot snapshot;
        private final Facts since;
        private final Instant today;
        private final SitesSnapshot sites;
        private final CatalogueSnapshot catalogue;
        private final ClimateSnapshot climate;
        private final PromisesSnapshot promises;
        private final Map<String, RecordedBatch> recorded = new HashMap<>();
        private final Set<String> housesChanged = new HashSet<>();

        Ahead(Snapshot snapshot, Facts since, Instant today) {
            this.today = today;
            this.snapshot = snapshot;
            this.since = since;
            Facts.Setup setup = since.setup();
            ClimateSnapshot before = snapshot.part(ClimateSnapshot.class);
            sites = setup == null ? snapshot.part(SitesSnapshot.class) : setup.sites();
            catalogue = setup == null ? snapshot.part(CatalogueSnapshot.class) : setup.catalogue();
            climate = setup == null ? before : before.with(setup.houses(), setup.plans());
            promises = snapshot.part(PromisesSnapshot.class).with(since.orders(), since.shipped());
            since.batches().forEach(batch -> recorded.put(batch.batch().id(), batch));
            since.hours().stream()
                    .filter(hour -> hour.quantity() == Quantity.MEDIUM_TEMPERATURE)
                    .filter(hour -> HourlySeries.hourOf(hour.hourStart()) < HourlySeries.hourOf(since.now()))
                    .map(Readings.Hour::house)
                    .forEach(housesChanged::add);
        }

        CellSnapshot cell(Cell cell, Set<String> ids) {
            BatchesSnapshot known = snapshot.part(BatchesSnapshot.class);
            List<BatchSnapshot> batches =
                    ids.stream().sorted().flatMap(id -> batch(known, id)).toList();
            return CellSnapshot.of(cell, batches, List.of(), promises, sites.site(cell.site()), today);
        }

        /** Nothing of a batch that is finished, or that cannot be computed: it offers nothing. */
        private Stream<BatchSnapshot> batch(BatchesSnapshot known, String id) {
            RecordedBatch newer = recorded.get(id);
            BatchSnapshot before = known.live().get(id);
            try {
                if (newer != null) {
                    if (newer.entries() == null) {
                        return Stream.of();
                    }
                    BatchState state =
                            BatchFold.of(newer.batch(), newer.entries()).state();
                    return state.isLive() ? Stream.of(computed(newer.batch(), newer.newest(), state)) : Stream.of();
                }
                return before == null
                        ? Stream.of()
                        : Stream.of(
                                isUntouched(before)
                                        ? before
                                        : computed(before.batch(), before.position(), before.state()));
            } catch (RuntimeException fault) {
                LOG.errorf(fault, "batch %s cannot be computed and offers nothing", id);
                return Stream.of();
            }
        }

        private boolean isUntouched(BatchSnapshot before) {
            return since.setup() == null
                    && isSameHour(since.now(), snapshot.asOf())
                    && !before.standsOrWillStandIn(housesChanged);
        }

        private BatchSnapshot computed(Batch batch, FactPosition newest, BatchState state) {
            List<String> houses = state.placements().stream()
                    .map(BatchState.Placement::house)
                    .distinct()
                    .toList();
            HouseCurves curves = climate.curvesWith(houses, since.now(), since.hours());
            BatchOutlook outlook = BatchOutlook.of(
                    HistoryOfBatch.of(state),
                    catalogue.profile(batch.variety(), batch.site()),
                    batch.trayFormat(),
                    curves);
            return BatchSnapshot.of(batch, newest, state, outlook.now(), sites.site(batch.site()));
        }
    }
}
