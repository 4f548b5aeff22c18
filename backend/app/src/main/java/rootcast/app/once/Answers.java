package rootcast.app.once;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.InstantSource;
import java.util.HexFormat;
import java.util.Optional;
import org.jboss.logging.Logger;
import rootcast.app.people.Who;
import rootcast.app.problem.NothingWritten;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;
import rootcast.facts.FactPosition;

/** The answers that writes gave, by sender and key. */
@ApplicationScoped
class Answers {

    private static final Logger LOG = Logger.getLogger(Answers.class);

    /** A device that was away for a month sends its entries again as new ones. Stated in docs/guide. */
    static final Duration KEPT = Duration.ofDays(30);

    private static final int PURGED_AT_ONCE = 500;

    /** How often, and how long apart, a database that went away in the middle of a commit is asked what became of it. */
    private static final int ASKED_TIMES = 10;

    private static final Duration ASKED_APART = Duration.ofSeconds(1);

    @Inject
    EntityManager database;

    @Inject
    FactHead head;

    @Inject
    InstantSource time;

    @Inject
    Pause pause;

    /** An answer with what it was the answer to. */
    record Kept(String fingerprint, java.time.Instant recordedAt, Once.Answer answer) {

        Once.Answer again(String asked) {
            if (!fingerprint.equals(asked)) {
                throw new Problem(
                                ProblemType.KEY_USED_BEFORE,
                                "This key came with other content at %s. Make a new key for a new write."
                                        .formatted(recordedAt))
                        .with("usedAt", recordedAt);
            }
            return answer;
        }
    }

    @Transactional
    Optional<Kept> of(Who who, OnceKey key) {
        return Optional.ofNullable(database.find(WriteAnswerRow.class, new WriteAnswerRow.Id(who.name(), key.value())))
                .map(row -> new Kept(
                        row.fingerprint,
                        row.recordedAt,
                        new Once.Answer(row.status, row.body, new FactPosition(row.positionNo))));
    }

    void keep(Once.Command command, String fingerprint, Once.Answer answer) {
        WriteAnswerRow row = new WriteAnswerRow();
        row.id = new WriteAnswerRow.Id(command.who().name(), command.key().value());
        row.fingerprint = fingerprint;
        row.status = answer.status();
        row.body = answer.body();
        row.positionNo = answer.position().value();
        row.recordedAt = time.instant();
        database.persist(row);
    }

    /**
     * What a write whose commit broke off has come to. The head row is held while looking: whatever of the broken
     * transaction the database still works on ends first.
     */
    Once.Answer afterBrokenCommit(Once.Command command, RuntimeException fault) {
        for (int time = 0; time < ASKED_TIMES; time++) {
            try {
                Optional<Kept> kept = QuarkusTransaction.requiringNew().call(() -> {
                    head.hold();
                    return of(command.who(), command.key());
                });
                return kept.orElseThrow(() -> new NothingWritten(fault)).answer();
            } catch (NothingWritten known) {
                throw known;
            } catch (RuntimeException away) {
                LOG.warnf("the database cannot be asked what became of %s: %s", command.what(), away.getMessage());
                pause.of(ASKED_APART);
            }
        }
        throw Problem.outcomeUnknown();
    }

    /** Old keys go in small transactions; any node may do it, twice does no harm. */
    @Scheduled(every = "1h", delayed = "10m", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void purgeOldKeys() {
        while (purgeSome() == PURGED_AT_ONCE) {
            // the next few
        }
    }

    int purgeSome() {
        return QuarkusTransaction.requiringNew().call(() -> {
            var old = database.createQuery(
                            "select a.id from WriteAnswerRow a where a.recordedAt < ?1", WriteAnswerRow.Id.class)
                    .setParameter(1, time.instant().minus(KEPT))
                    .setMaxResults(PURGED_AT_ONCE)
                    .getResultList();
            old.forEach(id -> database.createQuery("delete from WriteAnswerRow a where a.id = ?1")
                    .setParameter(1, id)
                    .executeUpdate());
            return old.size();
        });
    }

    static String fingerprint(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
