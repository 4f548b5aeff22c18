package rootcast.climate;

import java.util.Arrays;
import java.util.Optional;

/** What is odd about a reading. A flag never changes or removes the reading; it may keep it out of the house's hour. */
public enum FlagKind {
    /** Outside the span that the quantity can have. */
    RANGE("range"),
    /** Far from the readings right before and right after it. */
    SPIKE("spike"),
    /** A sudden change from the reading before. */
    STEP("step"),
    /** The same value for half a day. */
    FLAT_LINE("flat-line"),
    /** Not what the other sensors of the house say. */
    DISAGREEMENT("disagreement"),
    /** Came long after it was measured. */
    LATE("late"),
    /** Another value came before for the same sensor and moment. */
    DUPLICATE("duplicate"),
    /** Stamped with a time that was still to come when it arrived. */
    CLOCK_SKEW("clock-skew");

    private final String wireName;

    FlagKind(String wireName) {
        this.wireName = wireName;
    }

    public String wireName() {
        return wireName;
    }

    public static Optional<FlagKind> ofWireName(String wireName) {
        return Arrays.stream(values())
                .filter(kind -> kind.wireName.equals(wireName))
                .findFirst();
    }
}
