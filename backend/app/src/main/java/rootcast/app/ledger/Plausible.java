package rootcast.app.ledger;

import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rootcast.app.problem.Problem;
import rootcast.ledger.Batch;

/** Whether entries are worth a question before they are believed; the ledger itself expects nothing of a batch. */
public interface Plausible {

    /**
     * Throws a problem that a second try with a confirmation passes, if one of these entries is hardly possible. Called
     * after they were written, so that what the rules refuse is refused first; the problem rolls them back.
     *
     * @param written entries of the batch that this command wrote
     */
    default void ask(Batch batch, Set<UUID> written) {
        doubtOf(batch, written).ifPresent(doubt -> {
            throw doubt;
        });
    }

    /** The same as an answer, for what shows its doubts before it writes. */
    Optional<Problem> doubtOf(Batch batch, Set<UUID> written);
}
