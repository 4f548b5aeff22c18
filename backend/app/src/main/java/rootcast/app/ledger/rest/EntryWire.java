package rootcast.app.ledger.rest;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.FieldError;
import rootcast.app.problem.Problem;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.ledger.Cause;
import rootcast.ledger.EntryRules;
import rootcast.ledger.OrderLine;
import rootcast.ledger.Sample;
import rootcast.ledger.What;
import rootcast.saying.Fault;

/**
 * An entry as it is sent: {@code kind} says which of the other fields it takes.
 *
 * @param confirmed false: whoever sends it can be asked, and is, if it is hardly likely; true: was asked, and it is right;
 *                  left out by what cannot answer, such as an import
 */
record EntryWire(
        @NotNull String kind,
        @NotNull OffsetDateTime happenedAt,
        @Nullable Integer plants,
        @Nullable String cause,
        @Nullable @Size(max = 2000) String note,
        @Nullable Stage stage,
        @Nullable Integer cells,
        @Nullable Integer reached,
        @Nullable Integer sampledTrays,
        @Nullable Integer sampledCells,
        @Nullable Integer blanks,
        @Nullable String house,
        @Nullable Integer trays,
        @Nullable UUID order,
        @Nullable Integer line,
        @Nullable UUID entry,
        @Nullable @Size(max = 500) String reason,
        @Nullable Boolean confirmed) {

    private static final int MOST_PLANTS = EntryRules.MOST_TRAYS * 2_000;

    /** What the fields say, or a problem that names those that are missing or too many. */
    What what(TrayFormat format) {
        return switch (kind.toLowerCase(Locale.ROOT)) {
            case "loss" -> loss();
            case "count" -> plants != null ? count() : sampledCount();
            case "stage" -> stageReached();
            case "look" -> look();
            case "move" -> move();
            case "ship" -> ship(format);
            case "reversal" -> reversal();
            default ->
                throw Problem.malformed(
                        "kind", Fault.ONE_OF, List.of("loss", "count", "stage", "look", "move", "ship", "reversal"));
        };
    }

    private What loss() {
        takes("plants", "cause");
        Cause found = Cause.reported(cause)
                .orElseThrow(() -> Problem.notAllowed(
                        "cause",
                        cause,
                        Fault.ONE_OF,
                        Arrays.stream(Cause.values())
                                .filter(each -> each != Cause.COUNT_DIFFERENCE)
                                .map(Cause::wire)
                                .toList()));
        return new What.Loss(within("plants", plants, MOST_PLANTS), found);
    }

    private What count() {
        takes("plants");
        return new What.Count(within("plants", plants, MOST_PLANTS));
    }

    private What sampledCount() {
        takes("sampledTrays", "sampledCells", "blanks");
        return new What.SampledCount(new Sample(sampledTrays, sampledCells, blanks));
    }

    private What stageReached() {
        takes("stage");
        return new What.StageReached(stageToReach());
    }

    private What look() {
        takes("stage", "cells", "reached");
        return new What.Look(
                stageToReach(), within("cells", cells, MOST_PLANTS), within("reached", reached, MOST_PLANTS));
    }

    private Stage stageToReach() {
        if (stage == Stage.STICK || stage == Stage.SHIP) {
            throw Problem.notAllowed("stage", stage, Fault.ONE_OF, List.of(Stage.CALLUS, Stage.ROOT, Stage.READY));
        }
        return stage;
    }

    private What move() {
        takes("house");
        return new What.Move(house);
    }

    private What ship(TrayFormat format) {
        takesAlso(Set.of("plants", "order", "line"), "trays");
        if ((order == null) != (line == null)) {
            throw Problem.malformed(order == null ? "order" : "line", Fault.MISSING);
        }
        int shipped = within("trays", trays, EntryRules.MOST_TRAYS);
        return new What.Ship(
                shipped,
                plants == null ? shipped * format.saleCount() : within("plants", plants, MOST_PLANTS),
                order == null ? null : new OrderLine(order, line));
    }

    private What reversal() {
        takes("entry", "reason");
        if (reason.isBlank()) {
            throw Problem.malformed("reason", Fault.MISSING);
        }
        return new What.Reversal(entry, reason.strip());
    }

    private void takes(String... needed) {
        takesAlso(Set.of(), needed);
    }

    private void takesAlso(Set<String> optional, String... needed) {
        List<String> wanted = List.of(needed);
        List<FieldError> errors = new ArrayList<>();
        fields().forEach((name, value) -> {
            if (value == null && wanted.contains(name)) {
                errors.add(FieldError.of(name, Fault.MISSING));
            } else if (value != null && !wanted.contains(name) && !optional.contains(name)) {
                errors.add(FieldError.of(name, Fault.NOT_WANTED));
            }
        });
        if (!errors.isEmpty()) {
            throw Problem.malformed(errors);
        }
    }

    private Map<String, Object> fields() {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("plants", plants);
        fields.put("cause", cause);
        fields.put("stage", stage);
        fields.put("cells", cells);
        fields.put("reached", reached);
        fields.put("sampledTrays", sampledTrays);
        fields.put("sampledCells", sampledCells);
        fields.put("blanks", blanks);
        fields.put("house", house);
        fields.put("trays", trays);
        fields.put("order", order);
        fields.put("line", line);
        fields.put("entry", entry);
        fields.put("reason", reason);
        return fields;
    }

    /** Keeps products with cells per tray inside an int; the core then says what the batch allows. */
    private static int within(String field, int asked, int most) {
        if (asked < 0 || asked > most) {
            throw Problem.notAllowed(field, asked, Fault.BETWEEN, 0, most);
        }
        return asked;
    }

    /** What an entry answers; a repeat answers the same. */
    record Written(UUID id, long position, String kind, Stage stage, int alive, int trays) {}
}
