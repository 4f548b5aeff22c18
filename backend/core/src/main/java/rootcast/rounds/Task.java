package rootcast.rounds;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A kind of care, and which fields somebody who has done it is asked for. */
public enum Task {
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
    /** Look for pests and read the traps; of a whole house. */
    SCOUTING("fungusGnats", "shoreFlies"),
    /** Broad-spectrum prevention in the first week; what and how much the label says. */
    PREVENTION,
    COUNT("plants"),
    /** Carry to a house whose climate suits. */
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
