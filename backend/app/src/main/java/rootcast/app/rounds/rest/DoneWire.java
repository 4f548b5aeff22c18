package rootcast.app.rounds.rest;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.app.rounds.Observed;
import rootcast.app.rounds.Pests;
import rootcast.ledger.Sample;
import rootcast.rounds.Task;

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
        @Nullable @Size(max = 2000) String note,
        @Nullable Boolean confirmed) {

    private static final int MOST_CELLS = 20_000_000;
    private static final int MOST_TRAPPED = 100_000;
    private static final double MOST_PPM = 1_000;

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
        if (nitrogenPpm != null && !(nitrogenPpm >= 0 && nitrogenPpm <= MOST_PPM)) {
            throw Problem.notAllowed("nitrogenPpm", nitrogenPpm, "must lie between 0 and " + MOST_PPM);
        }
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
                note);
    }

    private static Set<String> optionalFor(Task task) {
        return switch (task) {
            case LOOK_CALLUS, LOOK_ROOT, READY -> Set.of("stageReached");
            case FEED_STEP -> Set.of("nitrogenPpm");
            case SCOUTING -> Set.of("traps", "thrips", "aphids", "whiteflies", "mites", "otherPests");
            default -> Set.of();
        };
    }

    private void takes(Task task, List<String> needed, Set<String> optional) {
        List<Problem.FieldError> errors = new ArrayList<>();
        fields().forEach((name, value) -> {
            if (value == null && needed.contains(name)) {
                errors.add(new Problem.FieldError(name, "is missing; " + task.wireName() + " asks for it"));
            } else if (value != null && !needed.contains(name) && !optional.contains(name)) {
                errors.add(new Problem.FieldError(name, "does not belong to " + task.wireName()));
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
        return fields;
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
            throw Problem.notAllowed(field, asked, "must lie between " + least + " and " + most);
        }
    }
}
