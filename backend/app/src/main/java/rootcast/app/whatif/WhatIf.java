package rootcast.app.whatif;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import rootcast.app.availability.LiveSupply;
import rootcast.app.board.BoardRows;
import rootcast.app.board.BoardView;
import rootcast.app.climate.LiveClimate;
import rootcast.app.climate.LiveLock;
import rootcast.app.outlook.BatchPicture;
import rootcast.app.outlook.LiveBatches;
import rootcast.availability.Cell;
import rootcast.board.BoardCell;
import rootcast.board.BoardRow;
import rootcast.climate.SetpointPlan;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.HouseCurves;
import rootcast.site.ShipWeek;

/**
 * Reckons outlooks and rows anew as if houses were set or batches stood otherwise from some moments on.
 *
 * <p>What was seen of a batch stays as it is, so only the hours to come are asked of the other curves.
 */
@ApplicationScoped
public class WhatIf {

    @Inject
    LiveBatches batches;

    @Inject
    LiveClimate climate;

    @Inject
    LiveSupply supply;

    @Inject
    BoardRows rows;

    @Inject
    LiveLock live;

    /** @param question of houses and batches that exist and moments to come */
    public Answer answer(Question question, BoardView view) {
        return live.holding(() -> {
            HouseCurves otherwise = climate.curves().replanned(plans(question));
            Map<String, List<Placement>> moves = moves(question);
            List<Answer.MovedBatch> moved = new ArrayList<>();
            Map<String, BatchPicture> instead = new HashMap<>();
            Set<Cell> cells = new TreeSet<>();
            for (String id : touched(question)) {
                BatchPicture before = batches.picture(id).orElseThrow();
                List<Placement> further = moves.getOrDefault(id, List.of());
                BatchOutlook after = batches.made(before).elsewhere(otherwise, further);
                BatchPicture picture = new BatchPicture(before.batch(), before.position(), before.state(), after.now());
                moved.add(new Answer.MovedBatch(before, picture, after.history().house()));
                instead.put(id, picture);
                cells.add(before.cell());
            }
            return new Answer(climate.curves().asOf(), batches.takenIn(), moved, movedCells(cells, instead, view));
        });
    }

    private Map<String, SetpointPlan> plans(Question question) {
        Map<String, SetpointPlan> plans = new HashMap<>();
        for (Question.Setpoint setpoint : question.setpoints()) {
            SetpointPlan now = plans.getOrDefault(
                    setpoint.house(), climate.curves().planOf(setpoint.house()).until(setpoint.from()));
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

    /** Live batches that stand in a house asked about or are moved, in order of their ids. */
    private Set<String> touched(Question question) {
        Set<String> houses =
                question.setpoints().stream().map(Question.Setpoint::house).collect(Collectors.toSet());
        Set<String> touched = batches.pictures().stream()
                .filter(picture -> !picture.state().isFinished())
                .filter(picture -> houses.contains(picture.state().house()))
                .map(picture -> picture.batch().id())
                .collect(Collectors.toCollection(TreeSet::new));
        question.moves().stream().map(Question.Move::batch).forEach(touched::add);
        return touched;
    }

    private List<Answer.MovedCell> movedCells(Set<Cell> cells, Map<String, BatchPicture> instead, BoardView view) {
        List<Answer.MovedCell> moved = new ArrayList<>();
        for (Cell cell : cells) {
            Map<ShipWeek, Integer> before = open(rows.row(cell, view, supply.with(cell, Map.of())));
            Map<ShipWeek, Integer> after = open(rows.row(cell, view, supply.with(cell, instead)));
            for (ShipWeek week : new LinkedHashSet<>(view.columns())) {
                moved.add(new Answer.MovedCell(cell, week, before.getOrDefault(week, 0), after.getOrDefault(week, 0)));
            }
        }
        return moved;
    }

    private static Map<ShipWeek, Integer> open(Optional<BoardRow> row) {
        return row.map(BoardRow::cells).orElse(List.of()).stream()
                .collect(Collectors.toMap(BoardCell::week, BoardCell::open));
    }
}
