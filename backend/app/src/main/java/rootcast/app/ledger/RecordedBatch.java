package rootcast.app.ledger;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.Entry;

/**
 * A batch as it is recorded.
 *
 * @param newest  position of its newest entry
 * @param entries all of them, or null where they cannot be read
 * @param fault   why they cannot be read
 */
public record RecordedBatch(
        Batch batch,
        FactPosition newest,
        @Nullable List<Entry> entries,
        @Nullable String fault) {}
