package rootcast.app.lookback;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.app.board.BoardInTime;
import rootcast.app.board.BoardSnapshot;
import rootcast.app.board.BoardView;
import rootcast.app.board.CellFacts;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.ShownRow;
import rootcast.app.outlook.AsOf;
import rootcast.app.outlook.BatchInTime;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.site.LiveSites;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;
import rootcast.ledger.BatchState;
import rootcast.outlook.HouseCurves;

/** The whole board as it was. */
@ApplicationScoped
class BoardFromTables implements BoardInTime {

    @Inject
    PastFacts facts;

    @Inject
    LiveSites sites;

    @Inject
    LiveBoard rows;

    @Override
    public BoardSnapshot board(AsOf when, BoardView view) {
        List<BatchSnapshot> all = computed(facts.batches(when), when);
        PromisesSnapshot promises = facts.promises(when, all);
        Map<Cell, List<BatchSnapshot>> byCell =
                all.stream().collect(Collectors.groupingBy(BatchSnapshot::cell, TreeMap::new, Collectors.toList()));
        Set<Cell> cells = new TreeSet<>(byCell.keySet());
        cells.addAll(promises.cells());
        List<ShownRow> shown = cells.stream()
                .map(cell -> cell(cell, byCell.getOrDefault(cell, List.of()), promises, when))
                .flatMap(cell -> rows.row(cell, view).stream())
                .map(row -> new ShownRow(row, List.of()))
                .toList();
        return new BoardSnapshot(newest(all), when.happenedBy(), view, shown);
    }

    @Override
    public CellFacts cell(AsOf when, Cell cell) {
        List<BatchSnapshot> batches = computed(facts.batches(cell, when), when);
        PromisesSnapshot promises = facts.promises(when, batches);
        return new CellFacts(cell(cell, batches, promises, when), promises, newest(batches), when.happenedBy());
    }

    private CellSnapshot cell(Cell cell, List<BatchSnapshot> batches, PromisesSnapshot promises, AsOf when) {
        List<BatchSnapshot> unfinished =
                batches.stream().filter(batch -> !batch.state().isFinished()).toList();
        return CellSnapshot.of(cell, unfinished, List.of(), promises, sites.site(cell.site()), when.happenedBy());
    }

    private static FactPosition newest(List<BatchSnapshot> batches) {
        return batches.stream()
                .map(BatchSnapshot::position)
                .max(Comparator.naturalOrder())
                .orElse(FactPosition.START);
    }

    private List<BatchSnapshot> computed(List<PastFacts.PastBatch> there, AsOf when) {
        List<PastFacts.PastBatch> live = there.stream()
                .sorted(Comparator.comparing(past -> past.batch().id()))
                .toList();
        Set<String> houses = new HashSet<>();
        live.stream()
                .flatMap(past -> past.state().placements().stream())
                .map(BatchState.Placement::house)
                .forEach(houses::add);
        HouseCurves curves = facts.curves(houses, when);
        Map<String, BatchInTime.Version> profiles = new HashMap<>();
        return live.stream()
                .map(past -> {
                    if (past.state().isFinished()) {
                        return BatchSnapshot.finished(
                                past.batch(), past.newest().position(), past.state());
                    }
                    BatchInTime.Version profile = profiles.computeIfAbsent(
                            past.batch().variety() + " " + past.batch().site(),
                            any -> facts.profile(past.batch(), when.orderedBy()));
                    return facts.snapshot(past, facts.outlook(past, profile, curves));
                })
                .collect(Collectors.toList());
    }
}
