package rootcast.saying;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;

/** What a named value is, so that a screen knows how to write it. */
public enum ValueKind {
    COUNT(value -> value instanceof Integer || value instanceof Long),
    /** In the unit of the field that is spoken of. */
    MEASURE(value -> value instanceof Number),
    /** °C */
    CELSIUS(value -> value instanceof Number),
    /** 0 to 1 */
    PROBABILITY(value -> value instanceof Number),
    INSTANT(value -> value instanceof Instant),
    DATE(value -> value instanceof LocalDate),
    /** A code, a name or what somebody typed: written as it is. */
    TEXT(value -> value instanceof String || value instanceof UUID || value instanceof Number),
    TEXTS(value -> value instanceof List),
    /** A field as it is sent; a screen names it by its label. */
    FIELD(value -> value instanceof String),
    /** A word of a closed list, which a screen has in its reader's language. */
    THING(value -> value instanceof String),
    STAGE(value -> value instanceof String),
    PHASE(value -> value instanceof String),
    QUANTITIES(value -> value instanceof List),
    /** Lines of a table that a screen lays out itself. */
    LINES(value -> value instanceof List);

    private final Predicate<Object> holds;

    ValueKind(Predicate<Object> holds) {
        this.holds = holds;
    }

    public boolean holds(Object value) {
        return holds.test(value);
    }
}
