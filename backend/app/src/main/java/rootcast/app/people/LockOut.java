package rootcast.app.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.PersistenceException;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Supplier;
import rootcast.app.people.store.SignInFailures;
import rootcast.app.people.store.SignInFailures.Count;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;

/**
 * Makes whoever guesses wait: a name longer and longer, an address for the rest of a quarter of an hour.
 *
 * <p>An attempt counts as failed before the password is looked at, and is taken back if it was right: guesses sent
 * together are all counted. Kept in the database, so that every node counts.
 */
@ApplicationScoped
class LockOut {

    private static final int FREE = 5;
    private static final Duration LONGEST = Duration.ofMinutes(15);

    /** Many people sit behind one address; nobody mistypes that often. */
    private static final int FREE_PER_ADDRESS = 50;

    private static final int TRIES = 3;
    private static final int MOST_SUBJECT = 200;

    @Inject
    SignInFailures failures;

    /** Counts an attempt, or refuses it while the name or the address is locked. */
    void begin(String name, String address, Instant now) {
        String ofAddress = ofAddress(address);
        String ofName = ofName(name);
        retrying(() -> {
            // Always the address before the name, so that two attempts cannot wait for each other.
            Count atAddress = failures.held(ofAddress)
                    .filter(count -> now.isBefore(count.firstFailedAt().plus(LONGEST)))
                    .orElse(new Count(0, now, now));
            Count atName = failures.held(ofName).orElse(new Count(0, now, now));
            refuseLocked(atAddress, now);
            refuseLocked(atName, now);
            int wrongHere = atAddress.failures() + 1;
            failures.set(
                    ofAddress,
                    new Count(
                            wrongHere,
                            atAddress.firstFailedAt(),
                            wrongHere < FREE_PER_ADDRESS
                                    ? now
                                    : atAddress.firstFailedAt().plus(LONGEST)));
            int wrong = atName.failures() + 1;
            failures.set(ofName, new Count(wrong, atName.firstFailedAt(), now.plus(waitAfter(wrong))));
            return null;
        });
    }

    /** The attempt was right: the name starts again, and the address has one less. */
    void wasRight(String name, String address) {
        retrying(() -> {
            failures.held(ofAddress(address))
                    .ifPresent(count -> failures.set(
                            ofAddress(address),
                            new Count(
                                    Math.max(0, count.failures() - 1), count.firstFailedAt(), count.firstFailedAt())));
            failures.held(ofName(name)).ifPresent(any -> failures.forget(ofName(name)));
            return null;
        });
    }

    /** 1 s after the fifth failure in a row, then twice as long each time. */
    static Duration waitAfter(int failuresInARow) {
        if (failuresInARow < FREE) {
            return Duration.ZERO;
        }
        int doublings = Math.min(failuresInARow - FREE, 10);
        Duration wait = Duration.ofSeconds(1L << doublings);
        return wait.compareTo(LONGEST) > 0 ? LONGEST : wait;
    }

    private static void refuseLocked(Count count, Instant now) {
        if (now.isBefore(count.lockedUntil())) {
            long seconds = (Duration.between(now, count.lockedUntil()).toMillis() + 999) / 1_000;
            throw new Problem(
                            ProblemType.LOCKED_OUT,
                            "Wait %d s, then try again. An owner can set a new password.".formatted(seconds))
                    .with("retryAfterSeconds", seconds);
        }
    }

    private static String ofName(String name) {
        return cut("name " + Person.key(name));
    }

    private static String ofAddress(String address) {
        return cut("address " + address);
    }

    private static String cut(String subject) {
        return subject.length() > MOST_SUBJECT ? subject.substring(0, MOST_SUBJECT) : subject;
    }

    /** Two first failures at the same moment both want to insert the row; the second finds it when it tries again. */
    private static <T> void retrying(Supplier<T> work) {
        for (int attempt = 1; ; attempt++) {
            try {
                QuarkusTransaction.requiringNew().call(work::get);
                return;
            } catch (PersistenceException cameSecond) {
                if (attempt == TRIES) {
                    throw cameSecond;
                }
            }
        }
    }
}
