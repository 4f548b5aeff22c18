package rootcast.ledger;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Why plants were lost, as the trade names it. */
public enum Cause {
    DRY_DOWN("dry-down"),
    ROT("rot"),
    BOTRYTIS("botrytis"),
    DAMPING_OFF("damping-off"),
    NO_ROOT("no-root"),
    PEST("pest"),
    DAMAGE("damage"),
    OTHER("other"),
    /** Found missing (or found again, then negative) by a count; only a count posts it. */
    COUNT_DIFFERENCE("count-difference");

    private final String wire;

    Cause(String wire) {
        this.wire = wire;
    }

    /** As it is written outside: lower case with hyphens. */
    public String wire() {
        return wire;
    }

    /** Reads a cause that a person may report; capitals, blanks and underscores do not matter. */
    public static Optional<Cause> reported(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT).replace(' ', '-').replace('_', '-');
        return Arrays.stream(values())
                .filter(cause -> cause != COUNT_DIFFERENCE && cause.wire.equals(wanted))
                .findFirst();
    }
}
