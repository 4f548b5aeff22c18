package rootcast.saying;

import java.util.Map;

/** One of a closed list of things to be told; each list is an enum. */
public interface Sayable {

    /** The code: small letters with hyphens, stable. */
    String wireName();

    /** What must come with it, by name and in the order in which {@link Saying#of} takes it. */
    Map<String, ValueKind> takes();

    /** With {@code {name}} where a value stands. */
    String english();
}
