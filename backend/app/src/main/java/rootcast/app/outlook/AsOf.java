package rootcast.app.outlook;

import java.time.Instant;
import java.time.InstantSource;
import java.time.format.DateTimeParseException;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.saying.Fault;

/**
 * A look back: only what had happened by one instant and was recorded by another counts.
 *
 * @param happenedBy entries by when they happened, readings by when they were measured
 * @param recordedBy what was recorded later is not known
 */
public record AsOf(Instant happenedBy, Instant recordedBy) {

    /** Orders and plans happen when they are recorded. */
    public Instant orderedBy() {
        return happenedBy.isBefore(recordedBy) ? happenedBy : recordedBy;
    }

    public static AsOf now(InstantSource time) {
        Instant now = time.instant();
        return new AsOf(now, now);
    }

    /** From an address; what is not given is now. */
    public static AsOf of(@Nullable String asOf, @Nullable String knownAt, InstantSource time) {
        Instant now = time.instant();
        return new AsOf(past("asOf", asOf, now), past("knownAt", knownAt, now));
    }

    private static Instant past(String field, @Nullable String text, Instant now) {
        if (text == null || text.isBlank()) {
            return now;
        }
        Instant instant = instant(field, text);
        if (instant.isAfter(now)) {
            throw Problem.notAllowed(field, text, Fault.IN_THE_FUTURE, now);
        }
        return instant;
    }

    private static Instant instant(String field, String text) {
        try {
            // A plus that was not escaped arrives as a space.
            return java.time.OffsetDateTime.parse(text.strip().replace(' ', '+'))
                    .toInstant();
        } catch (DateTimeParseException notAnInstant) {
            throw Problem.malformed(field, Fault.NOT_AN_INSTANT);
        }
    }
}
