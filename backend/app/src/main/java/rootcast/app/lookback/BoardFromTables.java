package rootcast.app.lookback;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import rootcast.app.availability.LivePromises;
import rootcast.app.availability.LiveSupply;
import rootcast.app.board.BoardInTime;
import rootcast.app.board.BoardRows;
import rootcast.app.board.BoardView;
import rootcast.app.board.CellFacts;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.ShownRow;
import rootcast.app.outlook.AsOf;
import rootcast.app.outlook.BatchInTime;
import rootcast.app.outlook.BatchPicture;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchState;
import rootcast.outlook.HouseCurves;

/** The whole board as it was. */
@ApplicationScoped
class BoardFromTables implements BoardInTime {

    @Inject
    PastFacts facts;

    @Inject
    LiveSupply supply;

    @Inject
    BoardRows rows;

    @Override
    public LiveBoard.Picture board(AsOf when, BoardView view) {
        Map<Cell, List<BatchPicture>> pictures = new TreeMap<>();
        FactPosition newest = FactPosition.START;
        for (BatchPicture picture : pictures(when, any -> true)) {
            pictures.computeIfAbsent(picture.cell(), any -> new ArrayList<>()).add(picture);
            newest = newest.compareTo(picture.position()) < 0 ? picture.position() : newest;
        }
        LivePromises promises = facts.promises(when);
        Set<Cell> cells = new TreeSet<>(pictures.keySet());
        cells.addAll(promises.cells());
        List<ShownRow> shown = cells.stream()
                .flatMap(cell -> rows
                        .row(
                                cell,
                                view,
                                supply.of(cell, pictures.getOrDefault(cell, List.of()), promises, when.happenedBy()))
                        .stream())
                .map(ShownRow::new)
                .toList();
        return new LiveBoard.Picture(newest, when.happenedBy(), view, shown);
    }

    @Override
    public CellFacts cell(AsOf when, Cell cell) {
        List<BatchPicture> pictures =
                pictures(when, batch -> BatchPicture.cellOf(batch).equals(cell));
        LivePromises promises = facts.promises(when);
        FactPosition newest = pictures.stream()
                .map(BatchPicture::position)
                .max(Comparator.naturalOrder())
                .orElse(FactPosition.START);
        CellSupply then = supply.of(cell, pictures, promises, when.happenedBy());
        return new CellFacts(cell, then, pictures, promises, newest, when.happenedBy());
    }

    private List<BatchPicture> pictures(AsOf when, Predicate<Batch> wanted) {
        List<PastFacts.PastBatch> live = facts.batches(when).stream()
                .filter(past -> wanted.test(past.batch()))
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
                        return new BatchPicture(past.batch(), past.newest().position(), past.state(), null);
                    }
                    BatchInTime.Version profile = profiles.computeIfAbsent(
                            past.batch().variety() + " " + past.batch().site(),
                            any -> facts.profile(past.batch(), when.orderedBy()));
                    return facts.picture(past, facts.outlook(past, profile, curves));
                })
                .collect(Collectors.toList());
    }
}
