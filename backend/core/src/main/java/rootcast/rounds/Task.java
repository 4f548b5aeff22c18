package rootcast.rounds;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A kind of care, and which fields somebody who has done it is asked for. */
public enum Task {
    /** How the cuttings came: condition, and if known how warm the box was and how long it stood by. */
    ARRIVAL_CHECK("condition"),
    /** Over the leaves on the first day, as the label says. */
    WETTING_AGENT,
    /** See that no moving air dries the fresh cuttings; of a whole house. */
    DRAUGHT_LOOK,
    /** See whether the cuttings have callused. */
    LOOK_CALLUS("cells", "reached"),
    LOOK_ROOT("cells", "reached"),
    /** Make the pauses between mist longer. */
    WEAN_MIST,
    NIGHT_MIST_OFF,
    MIST_OFF,
    /** Go to the nitrogen of the phase. */
    FEED_STEP,
    MOISTURE_CHECK("level"),
    /** Measure the salts of the medium where no sensor does; of a whole house. */
    EC_CHECK("ecMsPerCm"),
    /** Look for pests and read the traps; of a whole house. */
    SCOUTING("fungusGnats", "shoreFlies"),
    /** Broad-spectrum prevention in the first week; what and how much the label says. */
    PREVENTION,
    COUNT("plants"),
    /** Carry to the house where its house's batches go on to, or to one whose climate suits. */
    MOVE("house"),
    TONE,
    /** See whether the liners may leave. */
    READY("cells", "reached");

    private final List<String> asks;

    Task(String... asks) {
        this.asks = List.of(asks);
    }

    public List<String> asks() {
        return asks;
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Task> ofWireName(String wireName) {
        return Arrays.stream(values())
                .filter(task -> task.wireName().equals(wireName))
                .findFirst();
    }
}
