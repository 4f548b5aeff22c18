package rootcast.rounds;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A plant protection product, growth regulator or the like that somebody applied. Nothing here proposes one.
 *
 * @param batch   null if the whole house was treated
 * @param reentry from application until people may go in again, as the label says; zero if it asks for none
 */
public record Treatment(
        UUID id, String house, @Nullable String batch, Purpose purpose, Instant appliedAt, Duration reentry) {

    public enum Purpose {
        PREVENTION,
        CONTROL,
        GROWTH_REGULATION,
        OTHER
    }

    public Treatment {
        if (reentry.isNegative()) {
            throw new IllegalArgumentException("re-entry interval %s must not be negative".formatted(reentry));
        }
    }

    /** The first instant at which the house may be entered again, as far as this treatment goes. */
    public Instant reentryAt() {
        return appliedAt.plus(reentry);
    }

    boolean closesAt(Instant at) {
        return !at.isBefore(appliedAt) && at.isBefore(reentryAt());
    }

    /** Whether it was put on this batch: by name, or with all of the house in which the batch stood then. */
    boolean wasPutOn(String wantedBatch, String houseThen) {
        return batch == null ? house.equals(houseThen) : batch.equals(wantedBatch);
    }

    /** Until when the house must not be entered, seen from {@code at}; empty if it may be. The longest one counts. */
    public static Optional<Instant> closedUntil(Collection<Treatment> treatments, String house, Instant at) {
        return treatments.stream()
                .filter(treatment -> treatment.house().equals(house) && treatment.closesAt(at))
                .map(Treatment::reentryAt)
                .max(Instant::compareTo);
    }
}
