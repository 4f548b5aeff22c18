package rootcast.app.once;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.Caller;
import rootcast.app.people.Who;
import rootcast.app.problem.NothingWritten;
import rootcast.app.problem.Problem;
import rootcast.facts.FactPosition;

/**
 * Carries out a command: in one transaction, once per sender and key, one after another.
 *
 * <p>Writers wait in a queue of this process first and for the head row second, so that sixty waiting writers hold no
 * database connection. The head row is what keeps several processes apart. Locks are always taken in this order: the
 * turn, the head row, other rows; nothing waits for a reader or for the projector while it holds one.
 *
 * <p>The answer depends on the commit alone. Where the commit itself breaks off, the answer that was kept under the key
 * tells whether it happened; what nobody can tell is said to be unknown.
 */
@ApplicationScoped
public class Once {

    private static final Logger LOG = Logger.getLogger(Once.class);

    @Inject
    FactHead head;

    @Inject
    Answers answers;

    @Inject
    ObjectMapper json;

    @Inject
    Caller caller;

    @Inject
    WriteFollowUp followUp;

    private final Turn turn = new Turn();

    /**
     * What a write answers.
     *
     * @param position of the newest fact when it was committed
     */
    public record Answer(int status, String body, FactPosition position) {}

    /** Whether a write was done under this key by whoever asks. */
    public boolean knows(OnceKey key) {
        return answers.of(caller.who(), key).isPresent();
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
        return carryOut(new Command(caller.who(), key.orMade(), what, body, status), Turn.Kind.SHORT, work);
    }

    /** The same for what writes much at once, such as thousands of readings: it lets waiting people go first. */
    public Answer writeBulk(OnceKey key, String what, Object body, int status, Supplier<?> work) {
        return carryOut(new Command(caller.who(), key.orMade(), what, body, status), Turn.Kind.BULK, work);
    }

    /** Carries what was found out of the transaction that it rolls back. */
    private static final class TakenBack extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final transient Object found;

        TakenBack(Object found) {
            super("taken back", null, false, false);
            this.found = found;
        }
    }

    /**
     * What {@code work} finds when it does all of its writing; then everything is taken back. A preview that is made so
     * cannot promise anything else than what then happens.
     */
    @SuppressWarnings("unchecked") // it is what this method put there
    public <T> T tried(String what, Supplier<T> work) {
        try {
            writeBulk(OnceKey.none(), what, "", 200, () -> {
                throw new TakenBack(work.get());
            });
            throw new IllegalStateException("what was only tried was written: " + what);
        } catch (NothingWritten rolledBack) {
            if (rolledBack.getCause() instanceof TakenBack tried) {
                return (T) tried.found;
            }
            throw rolledBack;
        }
    }

    /** A write as asked. */
    record Command(Who who, OnceKey key, String what, Object body, int status) {}

    private Answer carryOut(Command command, Turn.Kind kind, Supplier<?> work) {
        Answer answer = turn.taken(kind, () -> committed(command, work));
        followUp.committed(answer.position());
        return answer;
    }

    private Answer committed(Command command, Supplier<?> work) {
        String fingerprint = Answers.fingerprint(command.what() + "\n" + toJson(command.body()));
        AtomicBoolean workDone = new AtomicBoolean();
        try {
            return QuarkusTransaction.requiringNew().call(() -> {
                Answer answer = inTransaction(command, fingerprint, work);
                workDone.set(true);
                return answer;
            });
        } catch (RuntimeException fault) {
            if (!workDone.get()) {
                throw fault instanceof Problem ? fault : new NothingWritten(fault);
            }
            LOG.warnf(fault, "the commit of %s broke off; looking for its answer", command.what());
            return answers.afterBrokenCommit(command, fault);
        }
    }

    private Answer inTransaction(Command command, String fingerprint, Supplier<?> work) {
        head.hold();
        var before = answers.of(command.who(), command.key());
        if (before.isPresent()) {
            return before.get().again(fingerprint);
        }
        Object result = work.get();
        Answer answer = new Answer(command.status(), result == null ? "" : toJson(result), head.held());
        answers.keep(command, fingerprint, answer);
        followUp.tellOtherNodes(answer.position());
        return answer;
    }

    private String toJson(Object value) {
        try {
            return json.writeValueAsString(value);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
