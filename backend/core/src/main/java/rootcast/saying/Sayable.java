package rootcast.saying;

import java.util.Locale;
import java.util.Map;

/** One of a closed list of things to be told; each list is an enum. */
public interface Sayable {

    /** The constant's. */
    String name();

    Sentence sentence();

    /** The code: small letters with hyphens, stable. */
    default String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** What must come with it, by name and in the order in which {@link Saying#of} takes it. */
    default Map<String, ValueKind> takes() {
        return sentence().takes();
    }

    /** With {@code {name}} where a value stands. */
    default String english() {
        return sentence().english();
    }
}
