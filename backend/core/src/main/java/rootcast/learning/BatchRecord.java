package rootcast.learning;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.HouseCurves;

/**
 * What one batch can teach.
 *
 * @param id       tells records apart and puts them in one order, whatever order they come in
 * @param finished seen ready
 * @param stages   stages whose begin and end were both seen; sticking is always seen
 * @param looks    looks at cells of a stage whose begin was seen
 * @param lived    plants alive at the begin of a stage and of these at its end, by the books
 * @param passed   stages before the last one that was entered
 * @param entered  of these so many were entered
 */
public record BatchRecord(
        String id,
        String variety,
        String site,
        boolean finished,
        List<SeenStage> stages,
        List<SeenCells> looks,
        Map<Stage, Lived> lived,
        int passed,
        int entered) {

    private static final Stage[] ENDS_IN = {Stage.CALLUS, Stage.ROOT, Stage.READY};

    /** Temperature around a moment is that of the days since the look before, of two if there was none, of a week at most. */
    private static final double USUALLY_AROUND_DAYS = 2;

    private static final double MOST_AROUND_DAYS = 7;

    private static final double DAY_MILLIS = 86_400_000;

    /**
     * A stage from the moment its begin was seen to the moment its end was seen. Each had come about at most so long
     * before it was seen as there was no look; nobody may have looked for longer than people usually do, though.
     *
     * @param gained        between the two moments
     * @param aroundBegin   up to the first
     * @param aroundEnd     up to the second
     * @param beginLookDays from the last look that found the begin still to come; 0 for sticking, infinite without one
     * @param endLookDays   the same for the end
     */
    public record SeenStage(
            Stage stage,
            WarmDays gained,
            WarmDays aroundBegin,
            WarmDays aroundEnd,
            double beginLookDays,
            double endLookDays) {}

    /**
     * @param stage  the stage whose end was looked for
     * @param gained from its seen begin to the look
     */
    public record SeenCells(
            Stage stage, WarmDays gained, WarmDays aroundBegin, double beginLookDays, int cells, int reached) {}

    public record Lived(int begun, int survived) {
        public Lived {
            if (!(0 <= survived && survived <= begun)) {
                throw new IllegalArgumentException("%d of %d plants must rise from 0".formatted(survived, begun));
            }
        }
    }

    public BatchRecord {
        stages = List.copyOf(stages);
        looks = List.copyOf(looks);
        lived = Map.copyOf(lived);
    }

    /** From what the ledger says of the batch and the temperatures of its houses. */
    public static BatchRecord of(
            String id,
            String variety,
            String site,
            BatchHistory history,
            Map<Stage, Lived> lived,
            HouseCurves houses,
            double referenceC) {
        List<SeenStage> stages = new ArrayList<>();
        List<SeenCells> looks = new ArrayList<>();
        Instant begin = history.stuckAt();
        double beginLookDays = 0;
        for (int i = 0; i < ENDS_IN.length; i++) {
            Stage stage = Stage.GROWING.get(i);
            Span span = new Span(history, houses, referenceC, begin);
            WarmDays aroundBegin = i == 0 ? WarmDays.NONE : span.until(begin, begin.minus(around(beginLookDays)));
            for (BatchHistory.Look look : history.looks()) {
                if (look.stage() == ENDS_IN[i] && look.at().isAfter(begin)) {
                    looks.add(new SeenCells(
                            stage,
                            span.until(look.at(), begin),
                            aroundBegin,
                            beginLookDays,
                            look.cells(),
                            look.reached()));
                }
            }
            Instant end = history.reachedAt().get(ENDS_IN[i]);
            if (end == null) {
                break;
            }
            double endLookDays = daysSinceIncomplete(history, ENDS_IN[i], end);
            stages.add(new SeenStage(
                    stage,
                    span.until(end, begin),
                    aroundBegin,
                    span.until(end, end.minus(around(endLookDays))),
                    beginLookDays,
                    endLookDays));
            begin = end;
            beginLookDays = endLookDays;
        }
        boolean finished = history.reachedAt().containsKey(Stage.READY);
        int passed = 0;
        for (int i = 0; i < ENDS_IN.length; i++) {
            passed = history.reachedAt().containsKey(ENDS_IN[i]) ? i : passed;
        }
        int entered = Math.max(0, history.reachedAt().size() - 1);
        return new BatchRecord(id, variety, site, finished, stages, looks, lived, passed, entered);
    }

    private static Duration around(double lookDays) {
        double days = Double.isInfinite(lookDays)
                ? USUALLY_AROUND_DAYS
                : Math.max(USUALLY_AROUND_DAYS, Math.min(lookDays, MOST_AROUND_DAYS));
        return Duration.ofMillis(Math.round(days * DAY_MILLIS));
    }

    private static double daysSinceIncomplete(BatchHistory history, Stage reached, Instant seenAt) {
        double days = Double.POSITIVE_INFINITY;
        for (BatchHistory.Look look : history.looks()) {
            boolean incomplete = 10L * look.reached() < 9L * look.cells();
            if (look.stage() == reached && incomplete && look.at().isBefore(seenAt)) {
                days = Duration.between(look.at(), seenAt).toMillis() / DAY_MILLIS;
            }
        }
        return days;
    }

    private record Span(BatchHistory history, HouseCurves houses, double referenceC, Instant begin) {

        WarmDays until(Instant untilExclusive, Instant from) {
            Instant stuck = history.stuckAt();
            return WarmDays.between(
                    history.placements(), houses, referenceC, from.isBefore(stuck) ? stuck : from, untilExclusive);
        }
    }
}
