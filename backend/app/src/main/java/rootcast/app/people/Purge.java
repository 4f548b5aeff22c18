package rootcast.app.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import rootcast.app.people.store.AuditLines;
import rootcast.app.people.store.SessionStore;
import rootcast.app.people.store.SignInFailures;

/** Removes sessions that are over, failures long past, and old lines of the audit list. Any node may do it, also twice. */
@ApplicationScoped
class Purge {

    private static final Duration FAILURES_KEPT = Duration.ofDays(1);

    @Inject
    SessionStore sessions;

    @Inject
    SignInFailures failures;

    @Inject
    AuditLines lines;

    @Inject
    PeopleConfig config;

    @Inject
    InstantSource time;

    @Scheduled(every = "1h", delayed = "10m", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void purge() {
        Instant now = time.instant();
        QuarkusTransaction.requiringNew().run(() -> {
            sessions.purge(now.minus(config.idle()), now.minus(config.longest()));
            failures.purge(now.minus(FAILURES_KEPT));
            lines.purge(now.minus(config.auditKept()));
        });
    }
}
