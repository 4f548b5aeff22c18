package rootcast.rounds;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.ledger.BatchState;

/**
 * A plant protection product, growth regulator or the like that somebody applied. Nothing here proposes one.
 *
 * @param batch   null if the whole house was treated
 * @param product what was applied, as the label names it
 * @param reentry from application until people may go in again, as the label says; zero if it asks for none
 */
public record Treatment(
        UUID id,
        String house,
        @Nullable String batch,
        Purpose purpose,
        String product,
        Instant appliedAt,
        Duration reentry) {

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

    /** Whether it is this batch's prevention: for that purpose, and put on it since it was stuck. */
    public boolean prevents(BatchState treated) {
        return purpose == Purpose.PREVENTION
                && !appliedAt.isBefore(treated.batch().stuckAt())
                && wasPutOn(treated);
    }

    /** By name, or with all of the house in which the batch stood then. */
    private boolean wasPutOn(BatchState treated) {
        return batch == null
                ? house.equals(treated.houseAt(appliedAt))
                : batch.equals(treated.batch().id());
    }

    /**
     * What keeps people out of the house at {@code at}; empty if they may go in. Of several the one that ends last. Every
     * screen and every piece of advice asks this and nothing else.
     */
    public static Optional<Treatment> closing(Collection<Treatment> treatments, String house, Instant at) {
        return treatments.stream()
                .filter(treatment -> treatment.house().equals(house) && treatment.closesAt(at))
                .max(Comparator.comparing(Treatment::reentryAt).thenComparing(Treatment::id));
    }

    /** The houses that are closed at {@code at}, each with what {@link #closing} says of it. */
    public static Map<String, Treatment> closedHouses(Collection<Treatment> treatments, Instant at) {
        Map<String, Treatment> closed = new TreeMap<>();
        treatments.forEach(treatment ->
                closing(treatments, treatment.house(), at).ifPresent(closing -> closed.put(closing.house(), closing)));
        return closed;
    }
}
