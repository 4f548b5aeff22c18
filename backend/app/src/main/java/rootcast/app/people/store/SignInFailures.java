package rootcast.app.people.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Optional;

/** Counts of failed sign-ins. */
@ApplicationScoped
@Transactional
public class SignInFailures {

    @Inject
    Rows rows;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<SignInFailureRow, String> {}

    /** Failures of a name or an address. */
    public record Count(int failures, Instant firstFailedAt, Instant lockedUntil) {}

    /** Locked until the transaction ends. */
    public Optional<Count> held(String subject) {
        return Optional.ofNullable(rows.findById(subject, LockModeType.PESSIMISTIC_WRITE))
                .map(row -> new Count(row.failures, row.firstFailedAt, row.lockedUntil));
    }

    public void set(String subject, Count count) {
        SignInFailureRow row = rows.findById(subject);
        boolean isNew = row == null;
        if (isNew) {
            row = new SignInFailureRow();
            row.subject = subject;
        }
        row.failures = count.failures();
        row.firstFailedAt = count.firstFailedAt();
        row.lockedUntil = count.lockedUntil();
        if (isNew) {
            rows.persist(row);
        }
        rows.flush();
    }

    public void forget(String subject) {
        rows.deleteById(subject);
    }

    public void purge(Instant lockedBefore) {
        rows.delete("lockedUntil < ?1", lockedBefore);
    }
}
