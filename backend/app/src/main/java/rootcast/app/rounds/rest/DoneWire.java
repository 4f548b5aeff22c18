package rootcast.app.rounds.rest;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.FieldError;
import rootcast.app.problem.Problem;
import rootcast.app.rounds.Observed;
import rootcast.app.rounds.Pests;
import rootcast.ledger.Sample;
import rootcast.rounds.Arrival;
import rootcast.rounds.Task;
import rootcast.saying.Fault;

/**
 * That an item was done, with what its task asks for.
 *
 * @param confirmed as for an entry: false asks if what was seen is hardly likely, true says that it is right
 */
record DoneWire(
        @NotNull OffsetDateTime happenedAt,
        @Nullable Integer cells,
        @Nullable Integer reached,
        @Nullable Boolean stageReached,
        @Nullable Integer plants,
        @Nullable Integer sampledTrays,
        @Nullable Integer sampledCells,
        @Nullable Integer blanks,
        @Nullable String house,
        @Nullable Integer level,
        @Nullable Integer fungusGnats,
        @Nullable Integer shoreFlies,
        @Nullable Integer traps,
        @Nullable Integer thrips,
        @Nullable Integer aphids,
        @Nullable Integer whiteflies,
        @Nullable Integer mites,
        @Nullable Integer otherPests,
        @Nullable Double nitrogenPpm,
        @Nullable Double ecMsPerCm,
        @Nullable String condition,
        @Nullable Double boxC,
        @Nullable Double standbyHours,
        @Nullable @Size(max = 2000) String note,
        @Nullable Boolean confirmed) {

    private static final int MOST_CELLS = 20_000_000;
    private static final int MOST_TRAPPED = 100_000;
    private static final double MOST_PPM = 1_000;
    private static final double MOST_MS_PER_CM = 20;
    private static final double COLDEST_BOX_C = -30;
    private static final double WARMEST_BOX_C = 60;
    private static final double MOST_STANDBY_HOURS = 30 * 24;

    private static final List<String> SAMPLE = List.of("sampledTrays", "sampledCells", "blanks");

    /** The observation, or a problem that names the fields that are missing, too many or out of range. */
    Observed observed(Task task) {
        boolean sampled = task == Task.COUNT && plants == null;
        List<String> needed = sampled ? SAMPLE : task.asks();
        takes(task, needed, optionalFor(task));
        within("cells", cells, 1, MOST_CELLS);
        within("reached", reached, 0, MOST_CELLS);
        within("plants", plants, 0, MOST_CELLS);
        within("level", level, 1, 5);
        pests().forEach((name, found) -> within(name, found, 0, MOST_TRAPPED));
        within("nitrogenPpm", nitrogenPpm, 0, MOST_PPM);
        within("ecMsPerCm", ecMsPerCm, 0, MOST_MS_PER_CM);
        within("boxC", boxC, COLDEST_BOX_C, WARMEST_BOX_C);
        within("standbyHours", standbyHours, 0, MOST_STANDBY_HOURS);
        return new Observed(
                cells,
                reached,
                stageReached,
                plants,
                sampled ? new Sample(sampledTrays, sampledCells, blanks) : null,
                house,
                level,
                new Pests(traps, fungusGnats, shoreFlies, thrips, aphids, whiteflies, mites, otherPests),
                nitrogenPpm,
                ecMsPerCm,
                condition == null ? null : new Arrival(conditionOf(condition), boxC, standbyHours),
                note);
    }

    private static Arrival.Condition conditionOf(String text) {
        return Arrival.Condition.ofWireName(text)
                .orElseThrow(() -> Problem.notAllowed(
                        "condition",
                        text,
                        Fault.ONE_OF,
                        Arrays.stream(Arrival.Condition.values())
                                .map(Arrival.Condition::wireName)
                                .toList()));
    }

    private static Set<String> optionalFor(Task task) {
        return switch (task) {
            case LOOK_CALLUS, LOOK_ROOT, READY -> Set.of("stageReached");
            case FEED_STEP -> Set.of("nitrogenPpm");
            case ARRIVAL_CHECK -> Set.of("boxC", "standbyHours");
            case SCOUTING -> Set.of("traps", "thrips", "aphids", "whiteflies", "mites", "otherPests");
            default -> Set.of();
        };
    }

    private void takes(Task task, List<String> needed, Set<String> optional) {
        List<FieldError> errors = new ArrayList<>();
        fields().forEach((name, value) -> {
            if (value == null && needed.contains(name)) {
                errors.add(FieldError.of(name, Fault.MISSING));
            } else if (value != null && !needed.contains(name) && !optional.contains(name)) {
                errors.add(FieldError.of(name, Fault.NOT_WANTED));
            }
        });
        if (!errors.isEmpty()) {
            throw Problem.malformed(errors);
        }
    }

    private Map<String, Object> fields() {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("cells", cells);
        fields.put("reached", reached);
        fields.put("stageReached", stageReached);
        fields.put("plants", plants);
        fields.put("sampledTrays", sampledTrays);
        fields.put("sampledCells", sampledCells);
        fields.put("blanks", blanks);
        fields.put("house", house);
        fields.put("level", level);
        fields.putAll(pests());
        fields.put("nitrogenPpm", nitrogenPpm);
        fields.put("ecMsPerCm", ecMsPerCm);
        fields.put("condition", condition);
        fields.put("boxC", boxC);
        fields.put("standbyHours", standbyHours);
        return fields;
    }

    private static void within(String field, @Nullable Double asked, double least, double most) {
        if (asked != null && !(asked >= least && asked <= most)) {
            throw Problem.notAllowed(field, asked, Fault.BETWEEN, least, most);
        }
    }

    private Map<String, @Nullable Integer> pests() {
        Map<String, @Nullable Integer> pests = new LinkedHashMap<>();
        pests.put("fungusGnats", fungusGnats);
        pests.put("shoreFlies", shoreFlies);
        pests.put("traps", traps);
        pests.put("thrips", thrips);
        pests.put("aphids", aphids);
        pests.put("whiteflies", whiteflies);
        pests.put("mites", mites);
        pests.put("otherPests", otherPests);
        return pests;
    }

    private static void within(String field, @Nullable Integer asked, int least, int most) {
        if (asked != null && (asked < least || asked > most)) {
            throw Problem.notAllowed(field, asked, Fault.BETWEEN, least, most);
        }
    }
}
