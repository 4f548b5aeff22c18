package rootcast.app.problem;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.availability.MatchRules;
import rootcast.availability.NotEnoughOpen;
import rootcast.availability.Placing;
import rootcast.availability.WantedLine;
import rootcast.ledger.Refusal;

/** From what the core refuses to what the client is told: one line per refusal. */
public final class RefusalTable {

    private RefusalTable() {}

    public static Problem problemOf(Refusal refusal) {
        if (refusal instanceof Refusal.MoreThanAlive no) {
            return problem(ProblemType.MORE_THAN_ALIVE)
                    .say(
                            "%d plants were named, %d are alive at that moment. Name at most %d, or count the batch first.",
                            no.askedPlants(), no.alivePlants(), no.alivePlants())
                    .with("asked", no.askedPlants())
                    .with("alive", no.alivePlants());
        }
        if (refusal instanceof Refusal.MoreThanStuck no) {
            return problem(ProblemType.MORE_THAN_STUCK)
                    .say(
                            "%d plants were counted, but only %d were stuck and have not left.",
                            no.countedPlants(), no.mostPlants())
                    .with("asked", no.countedPlants())
                    .with("most", no.mostPlants());
        }
        if (refusal instanceof Refusal.MoreThanSaleable no) {
            return problem(ProblemType.MORE_THAN_SALEABLE)
                    .say(
                            "%d trays were named; %d living plants fill %d trays of %d.",
                            no.askedTrays(), no.alivePlants(), no.saleableTrays(), no.saleCount())
                    .with("asked", no.askedTrays())
                    .with("saleable", no.saleableTrays())
                    .with("alive", no.alivePlants());
        }
        if (refusal instanceof Refusal.PlantsDoNotFitTrays no) {
            return problem(ProblemType.PLANTS_DO_NOT_FIT_TRAYS)
                    .say(
                            "%d plants do not fit %d trays: between %d and %d can go with them.",
                            no.plants(), no.trays(), no.leastPlants(), no.mostPlants())
                    .with("asked", no.plants())
                    .with("least", no.leastPlants())
                    .with("most", no.mostPlants());
        }
        if (refusal instanceof Refusal.SampleBeyondBatch no) {
            return problem(ProblemType.SAMPLE_BEYOND_BATCH)
                    .say(
                            "%d cells in %d trays were named; the batch has %d trays of %d cells on the bench.",
                            no.sample().cells(), no.sample().trays(), no.benchTrays(), no.cellsPerTray())
                    .with("benchTrays", no.benchTrays())
                    .with("cellsPerTray", no.cellsPerTray());
        }
        if (refusal instanceof Refusal.StageGoesBack no) {
            return problem(ProblemType.STAGE_GOES_BACK)
                    .say(
                            "%s was named, but the batch had already reached %s. Reverse the earlier entry if it was wrong.",
                            no.asked(), no.current())
                    .with("asked", no.asked().name())
                    .with("current", no.current().name());
        }
        if (refusal instanceof Refusal.ShipBeforeRooted no) {
            return problem(ProblemType.SHIP_BEFORE_ROOTED)
                    .say(
                            "Trays may leave from stage ROOT on; the batch is at %s. Enter the stage first if it is rooted.",
                            no.current())
                    .with("current", no.current().name());
        }
        if (refusal instanceof Refusal.BeforeSticking no) {
            return problem(ProblemType.BEFORE_STICKING)
                    .say("%s is before the batch was stuck at %s.", no.happenedAt(), no.stuckAt())
                    .with("asked", no.happenedAt())
                    .with("stuckAt", no.stuckAt());
        }
        if (refusal instanceof Refusal.InTheFuture no) {
            return inTheFuture(no.happenedAt(), no.now());
        }
        if (refusal instanceof Refusal.AlreadyInHouse no) {
            return problem(ProblemType.ALREADY_THERE)
                    .say("The batch stood in house '%s' at that moment.", no.house())
                    .with("asked", no.house());
        }
        if (refusal instanceof Refusal.OutOfRange no) {
            return problem(ProblemType.OUT_OF_RANGE)
                    .say("%s is %d; it must lie between %d and %d.", no.field(), no.asked(), no.least(), no.most())
                    .with("field", no.field())
                    .with("asked", no.asked())
                    .with("least", no.least())
                    .with("most", no.most());
        }
        if (refusal instanceof Refusal.ContradictsLater no) {
            Problem because = problemOf(no.because());
            return problem(ProblemType.CONTRADICTS_LATER_ENTRY)
                    .say(
                            "The %s entry of %s could then not have happened: %s",
                            no.laterKind(), no.laterHappenedAt(), because.getMessage())
                    .with("entry", no.laterEntry())
                    .with("because", "/problems/" + because.code());
        }
        if (refusal instanceof Refusal.NoSuchEntry no) {
            return problem(ProblemType.NO_SUCH_ENTRY)
                    .say("The batch has no entry %s.", no.entry())
                    .with("asked", no.entry());
        }
        if (refusal instanceof Refusal.AlreadyReversed no) {
            return problem(ProblemType.ALREADY_REVERSED)
                    .say("Entry %s was reversed by %s.", no.entry(), no.by())
                    .with("asked", no.entry())
                    .with("by", no.by());
        }
        if (refusal instanceof Refusal.CannotBeReversed no) {
            return problem(ProblemType.CANNOT_BE_REVERSED)
                    .say("A %s is not reversed. Make the entry anew.", no.kind())
                    .with("asked", no.entry());
        }
        throw new IllegalStateException("no line for " + refusal);
    }

    /** Names for each line what was asked, what is open then, and the nearest date with enough. */
    public static Problem problemOf(Placing.Refused refused) {
        List<Map<String, Object>> lines = new ArrayList<>();
        StringBuilder detail = new StringBuilder();
        for (NotEnoughOpen no : refused.lines()) {
            WantedLine wanted = no.wanted();
            NotEnoughOpen.Nearest nearest = no.nearest();
            Map<String, Object> line = new LinkedHashMap<>();
            line.put("line", wanted.line());
            line.put("variety", wanted.cell().variety());
            line.put("trayFormat", wanted.cell().trayFormat());
            line.put("site", wanted.cell().site());
            line.put("shipOn", wanted.shipOn());
            line.put("asked", wanted.trays());
            line.put("open", no.open());
            line.put("nearestDate", nearest == null ? null : nearest.date());
            line.put("nearestOpen", nearest == null ? null : nearest.open());
            put(line, "earlier", no.earlier());
            put(line, "later", no.later());
            lines.add(line);
            detail.append("Line %d asks for %d trays on %s; %d are open then, %s. "
                    .formatted(
                            wanted.line(),
                            wanted.trays(),
                            wanted.shipOn(),
                            no.open(),
                            nearest == null
                                    ? "and no date within " + MatchRules.SEARCH_WEEKS + " weeks has enough"
                                    : "the nearest date with enough is " + nearest.date()));
        }
        return new Problem(
                        ProblemType.NOT_ENOUGH_OPEN,
                        detail.append("Nothing was promised.").toString())
                .with("lines", lines);
    }

    private static void put(Map<String, Object> line, String which, NotEnoughOpen.@Nullable Nearest date) {
        line.put(which + "Date", date == null ? null : date.date());
        line.put(which + "Open", date == null ? null : date.open());
    }

    /** The same words for every fact that names a time still to come. */
    public static Problem inTheFuture(java.time.Instant asked, java.time.Instant now) {
        return problem(ProblemType.IN_THE_FUTURE)
                .say("%s is still to come; it is %s here. Check the clock of the device.", asked, now)
                .with("asked", asked)
                .with("now", now);
    }

    private static Line problem(ProblemType type) {
        return new Line(type);
    }

    private record Line(ProblemType type) {
        Problem say(String detail, Object... numbers) {
            return new Problem(type, detail.formatted(numbers));
        }
    }
}
