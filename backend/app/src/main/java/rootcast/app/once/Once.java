package rootcast.app.once;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.InstantSource;
import java.util.HexFormat;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;

/**
 * Carries out a write in one transaction, once per key, one after another.
 *
 * <p>Writers wait in a queue of this process first and for the head row second, so that sixty waiting writers hold no
 * database connection. The head row is what keeps several processes apart.
 */
@ApplicationScoped
public class Once {

    @Inject
    EntityManager database;

    @Inject
    FactHead head;

    @Inject
    InstantSource time;

    @Inject
    ObjectMapper json;

    @Inject
    Event<FactsRecorded> recorded;

    private final Semaphore turn = new Semaphore(1, true);

    /** Says that the facts up to now are committed. */
    public record FactsRecorded() {}

    /** What a write answers. */
    public record Answer(int status, String body) {}

    /** Whether a write was done under this key. */
    @Transactional
    public boolean knows(OnceKey key) {
        return database.find(WrittenOnceRow.class, key.value()) != null;
    }

    /** Reads a member of an answer's body; null if it is not there. */
    public @Nullable String member(Answer answer, String name) {
        try {
            JsonNode member = json.readTree(answer.body()).get(name);
            return member == null ? null : member.asText();
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /**
     * @param key  the sender's key; {@link OnceKey#none()} where the sender gave none
     * @param what method and path, so that one key cannot serve two different writes
     * @param body the request as read, or an empty string
     * @param work does the writing and gives the body of the answer; any exception rolls all of it back
     */
    public Answer write(OnceKey key, String what, Object body, int status, Supplier<?> work) {
        turn.acquireUninterruptibly();
        Answer answer;
        try {
            answer = QuarkusTransaction.requiringNew().call(() -> inTransaction(key, what, body, status, work));
        } finally {
            turn.release();
        }
        recorded.fire(new FactsRecorded());
        return answer;
    }

    private Answer inTransaction(OnceKey key, String what, Object body, int status, Supplier<?> work) {
        head.hold();
        String fingerprint = fingerprint(what + "\n" + toJson(body));
        if (key.isGiven()) {
            WrittenOnceRow before = database.find(WrittenOnceRow.class, key.value());
            if (before != null) {
                return again(before, fingerprint);
            }
        }
        Object result = work.get();
        Answer answer = new Answer(status, result == null ? "" : toJson(result));
        if (key.isGiven()) {
            remember(key, fingerprint, answer);
        }
        return answer;
    }

    private Answer again(WrittenOnceRow before, String fingerprint) {
        if (!before.fingerprint.equals(fingerprint)) {
            throw new Problem(
                    422,
                    "key-used-before",
                    "Idempotency-Key was used for something else",
                    "This key came with other content at %s. Make a new key for a new write."
                            .formatted(before.recordedAt));
        }
        return new Answer(before.status, before.body);
    }

    private void remember(OnceKey key, String fingerprint, Answer answer) {
        WrittenOnceRow row = new WrittenOnceRow();
        row.onceKey = key.value();
        row.fingerprint = fingerprint;
        row.status = answer.status();
        row.body = answer.body();
        row.recordedAt = time.instant();
        database.persist(row);
    }

    private String toJson(Object value) {
        try {
            return json.writeValueAsString(value);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static String fingerprint(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
