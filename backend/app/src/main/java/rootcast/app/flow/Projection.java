package rootcast.app.flow;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.availability.CellsSnapshot;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.app.board.RowsSnapshot;
import rootcast.app.climate.ClimateProjection;
import rootcast.app.climate.store.Readings;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.live.Changes;
import rootcast.app.outlook.BatchProjection;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.BatchesSnapshot;
import rootcast.app.site.SitesSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.availability.Cell;
import rootcast.climate.HourlySeries;
import rootcast.site.Site;

/**
 * Folds facts into snapshots, one after another: the main path from an entry or a reading to a row of the board. Keeps
 * what makes the next step cheap; a step that breaks off leaves it unusable, and another is made from all facts.
 */
final class Projection {

    private final ClimateProjection climate = new ClimateProjection();
    private final BatchProjection batches = new BatchProjection(climate.curves());
    private SitesSnapshot sites = new SitesSnapshot(Map.of());
    private CatalogueSnapshot catalogue = new CatalogueSnapshot(Map.of(), Map.of());
    private PromisesSnapshot promises = PromisesSnapshot.NONE;
    private Map<String, LocalDate> today = Map.of();
    private CellsSnapshot cells = CellsSnapshot.NONE;
    private RowsSnapshot rows = RowsSnapshot.NONE;

    /** A snapshot and what in it differs from the one before. */
    record Step(Snapshot snapshot, Changes changes) {}

    /**
     * The first step: from every fact there is.
     *
     * @param read reads the facts, giving the hours one by one
     */
    Step begin(Function<Consumer<Readings.Hour>, Facts> read) {
        Facts all = read.apply(climate::restore);
        setUp(all.setup());
        climate.curves().advanceTo(all.now());
        promises = promises.with(all.orders(), all.shipped());
        all.batches().forEach(batches::take);
        Step step = step(all, null, Set.of());
        return new Step(
                step.snapshot(),
                new Changes(all.to(), all.now(), cells.byCell().keySet(), Map.of(), Set.of(), true, true));
    }

    Step next(Facts facts) {
        Map<String, String> changed = new HashMap<>();
        Set<Cell> touched = cellsOf(facts);
        if (facts.setup() != null) {
            setUp(facts.setup()).forEach(id -> changed.put(id, batches.siteOf(id)));
            touched.addAll(rows.cellsUnlike(sites, catalogue));
        }
        Map<String, Instant> warmerOrCooler = climate.add(facts.hours());
        if (hourHasPassed(facts.now())) {
            climate.curves().advanceTo(facts.now());
            batches.timePassed(warmerOrCooler).forEach(id -> changed.put(id, batches.siteOf(id)));
        } else {
            batches.housesChanged(warmerOrCooler).forEach(id -> changed.put(id, batches.siteOf(id)));
        }
        promises = promises.with(facts.orders(), facts.shipped());
        facts.batches().forEach(recorded -> {
            batches.take(recorded);
            changed.put(recorded.batch().id(), recorded.batch().site());
        });
        return step(facts, changed, touched);
    }

    /** Gives the batches that are computed by another profile or plan than before. */
    private List<String> setUp(Facts.Setup setup) {
        sites = setup.sites();
        catalogue = setup.catalogue();
        Set<String> replanned = climate.houses(setup.houses(), setup.plans());
        return batches.setup(sites, catalogue, replanned);
    }

    private boolean hourHasPassed(Instant now) {
        return HourlySeries.hourOf(now) != HourlySeries.hourOf(climate.curves().asOf());
    }

    /** Cells of orders and of batches that may now be finished and no longer known. */
    private static Set<Cell> cellsOf(Facts facts) {
        Set<Cell> cells = new HashSet<>();
        facts.orders().forEach(order -> order.lines().forEach(line -> cells.add(line.cell())));
        facts.batches().forEach(recorded -> cells.add(BatchSnapshot.cellOf(recorded.batch())));
        return cells;
    }

    /** @param changed batches whose cells are computed, with their sites; null for all */
    private Step step(Facts facts, @Nullable Map<String, String> changed, Set<Cell> touched) {
        BatchesSnapshot batchesNow = batches.snapshot();
        Set<Cell> again = new HashSet<>(touched);
        boolean dayHasPassed = dayHasPassed(facts.now()); // asked every time: it remembers the days of new sites too
        if (changed == null || dayHasPassed) {
            again.addAll(batchesNow.cells());
            again.addAll(promises.cells());
            again.addAll(rows.byCell().keySet());
            batchesNow.faulty().values().forEach(each -> again.add(BatchSnapshot.cellOf(each.batch())));
        } else {
            changed.keySet().forEach(id -> batches.cellOf(id).ifPresent(again::add));
        }
        compute(again, batchesNow, facts.now());
        Map<Class<?>, Object> parts = new HashMap<>();
        for (Object part :
                List.of(sites, catalogue, climate.snapshot(facts.now()), batchesNow, promises, cells, rows)) {
            parts.put(part.getClass(), part);
        }
        Changes changes = new Changes(
                facts.to(),
                facts.now(),
                again,
                changed == null ? Map.of() : changed,
                facts.measuredHouses(),
                !facts.orders().isEmpty(),
                facts.setup() != null);
        return new Step(new Snapshot(facts.to(), facts.now(), parts), changes);
    }

    private void compute(Set<Cell> touched, BatchesSnapshot batchesNow, Instant now) {
        Map<Cell, CellSnapshot> computed = touched.parallelStream()
                .map(cell -> CellSnapshot.of(
                        cell, batchesNow.of(cell), batchesNow.faultyOf(cell), promises, sites.site(cell.site()), now))
                .collect(Collectors.toMap(CellSnapshot::cell, Function.identity()));
        cells = cells.with(computed);
        rows = rows.with(computed, sites, catalogue);
    }

    /** At any site that was there before. */
    private boolean dayHasPassed(Instant now) {
        Map<String, LocalDate> days =
                sites.byCode().values().stream().collect(Collectors.toMap(Site::code, site -> site.dayOf(now)));
        boolean passed =
                today.entrySet().stream().anyMatch(site -> !site.getValue().equals(days.get(site.getKey())));
        today = days;
        return passed;
    }
}
