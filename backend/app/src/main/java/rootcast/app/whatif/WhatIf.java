package rootcast.app.whatif;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.availability.LiveSupply;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.app.board.BoardView;
import rootcast.app.board.LiveBoard;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.BatchesSnapshot;
import rootcast.app.site.SitesSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.availability.Cell;
import rootcast.board.BoardCell;
import rootcast.board.BoardRow;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.ledger.Batch;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.HistoryOfBatch;
import rootcast.outlook.HouseCurves;
import rootcast.site.ShipWeek;

/**
 * Computes outlooks and rows as if houses were set or batches stood otherwise from some moments on, or as if a crop had
 * another profile.
 *
 * <p>What was seen of a batch stays as it is, so only the hours to come are asked of the other curves.
 */
@ApplicationScoped
public class WhatIf {

    @Inject
    Snapshots snapshots;

    @Inject
    LiveBoard board;

    /** @param question of houses and batches that exist and moments to come */
    public Answer answer(Question question, BoardView view) {
        Snapshot now = snapshots.now();
        BatchesSnapshot batches = now.part(BatchesSnapshot.class);
        CatalogueSnapshot catalogue = now.part(CatalogueSnapshot.class);
        Set<String> touched = touched(question, batches, catalogue);
        HouseCurves curves = now.part(ClimateSnapshot.class).curves(houses(question, touched, batches));
        HouseCurves otherwise = curves.replanned(plans(question, curves));
        Map<String, List<Placement>> moves = moves(question);
        List<Answer.MovedBatch> moved = new ArrayList<>();
        Map<String, BatchSnapshot> instead = new HashMap<>();
        Set<Cell> cells = new TreeSet<>();
        for (String id : touched) {
            BatchSnapshot before = batches.batch(id).orElseThrow();
            Batch batch = before.batch();
            BatchOutlook asKnown = BatchOutlook.of(
                    HistoryOfBatch.of(before.state()), profile(question, batch, catalogue), batch.trayFormat(), curves);
            BatchOutlook after = asKnown.elsewhere(otherwise, moves.getOrDefault(id, List.of()));
            BatchSnapshot snapshot = BatchSnapshot.of(
                    batch,
                    before.position(),
                    before.state(),
                    after.now(),
                    now.part(SitesSnapshot.class).site(batch.site()));
            moved.add(new Answer.MovedBatch(before, snapshot, after.history().house()));
            instead.put(id, snapshot);
            cells.add(before.cell());
        }
        List<Answer.MovedCell> movedCells = new ArrayList<>();
        List<MovedPromise> promises = new ArrayList<>();
        for (Cell cell : cells) {
            CellSnapshot asItIs = LiveSupply.cellOf(now, cell);
            CellSnapshot wouldBe = otherwise(now, asItIs, instead);
            movedCells.addAll(movedCells(asItIs, wouldBe, view));
            promises.addAll(MovedPromise.between(asItIs, wouldBe, now.part(PromisesSnapshot.class)));
        }
        return new Answer(now.asOf(), now.position(), moved, movedCells, promises);
    }

    private static CropProfile profile(Question question, Batch batch, CatalogueSnapshot catalogue) {
        Crop other = question.crop();
        return other != null && isOf(other, batch, catalogue)
                ? other.profile().forBatch(batch.variety(), batch.site())
                : catalogue.profile(batch.variety(), batch.site());
    }

    private static boolean isOf(Crop crop, Batch batch, CatalogueSnapshot catalogue) {
        return catalogue.cropOf(batch.variety()).code().equals(crop.code());
    }

    /** Every house that a batch in question stood in, is in or would go to. */
    private static Set<String> houses(Question question, Set<String> touched, BatchesSnapshot batches) {
        Set<String> houses = new HashSet<>();
        question.setpoints().forEach(setpoint -> houses.add(setpoint.house()));
        question.moves().forEach(move -> houses.add(move.house()));
        touched.forEach(id -> batches.batch(id)
                .orElseThrow()
                .state()
                .placements()
                .forEach(placement -> houses.add(placement.house())));
        return houses;
    }

    private static Map<String, SetpointPlan> plans(Question question, HouseCurves curves) {
        Map<String, SetpointPlan> plans = new HashMap<>();
        for (Question.Setpoint setpoint : question.setpoints()) {
            SetpointPlan now = plans.getOrDefault(
                    setpoint.house(), curves.planOf(setpoint.house()).until(setpoint.from()));
            plans.put(setpoint.house(), now.with(new SetpointPlan.Change(setpoint.from(), setpoint.mediumC())));
        }
        return plans;
    }

    private static Map<String, List<Placement>> moves(Question question) {
        return question.moves().stream()
                .sorted(java.util.Comparator.comparing(Question.Move::from))
                .collect(Collectors.groupingBy(
                        Question.Move::batch,
                        Collectors.mapping(move -> new Placement(move.house(), move.from()), Collectors.toList())));
    }

    /** Live batches that stand in a house asked about, are moved or are of the crop asked about, in order of their ids. */
    private static Set<String> touched(Question question, BatchesSnapshot batches, CatalogueSnapshot catalogue) {
        Set<String> houses =
                question.setpoints().stream().map(Question.Setpoint::house).collect(Collectors.toSet());
        Set<String> touched = batches.all().stream()
                .filter(snapshot -> houses.contains(snapshot.state().house()) || snapshot.willStandIn(houses))
                .map(snapshot -> snapshot.batch().id())
                .collect(Collectors.toCollection(TreeSet::new));
        question.moves().stream().map(Question.Move::batch).forEach(touched::add);
        Crop crop = question.crop();
        if (crop != null) {
            batches.all().stream()
                    .map(BatchSnapshot::batch)
                    .filter(batch -> isOf(crop, batch, catalogue))
                    .forEach(batch -> touched.add(batch.id()));
        }
        return touched;
    }

    private static CellSnapshot otherwise(Snapshot now, CellSnapshot asItIs, Map<String, BatchSnapshot> instead) {
        return CellSnapshot.of(
                asItIs.cell(),
                asItIs.batches().stream()
                        .map(snapshot -> instead.getOrDefault(snapshot.batch().id(), snapshot))
                        .toList(),
                asItIs.faulty(),
                now.part(PromisesSnapshot.class),
                now.part(SitesSnapshot.class).site(asItIs.cell().site()),
                now.asOf());
    }

    private List<Answer.MovedCell> movedCells(CellSnapshot asItIs, CellSnapshot otherwise, BoardView view) {
        Map<ShipWeek, BoardCell> before = byWeek(board.row(asItIs, view));
        Map<ShipWeek, BoardCell> after = byWeek(board.row(otherwise, view));
        return new LinkedHashSet<>(view.columns())
                .stream()
                        .filter(week -> before.containsKey(week) || after.containsKey(week))
                        .map(week -> moved(asItIs.cell(), before.get(week), after.get(week)))
                        .toList();
    }

    /** At least one of them is there: a row that is in neither board has no cells. */
    private static Answer.MovedCell moved(Cell cell, @Nullable BoardCell before, @Nullable BoardCell after) {
        BoardCell either = Objects.requireNonNull(before == null ? after : before);
        return new Answer.MovedCell(
                cell,
                either.week(),
                either.date(),
                before == null ? 0 : before.open(),
                after == null ? 0 : after.open());
    }

    private static Map<ShipWeek, BoardCell> byWeek(Optional<BoardRow> row) {
        return row.map(BoardRow::cells).orElse(List.of()).stream()
                .collect(Collectors.toMap(BoardCell::week, Function.identity()));
    }
}
