package rootcast.app.outlook;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.app.ledger.RecordedBatch;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.ledger.BatchFold;

/** Batches of which no plant is left, from the tables: nobody keeps them in memory. */
@ApplicationScoped
@Transactional
public class FinishedBatches {

    @Inject
    PanacheLedger ledger;

    /** @param site code, or null for all; the same for the variety */
    public List<BatchSnapshot> of(@Nullable String site, @Nullable String variety) {
        return folded(ledger.finished(site, variety));
    }

    public Optional<BatchSnapshot> batch(String id) {
        return folded(List.of(id)).stream().findFirst();
    }

    private List<BatchSnapshot> folded(Collection<String> ids) {
        return ledger.recorded(ids).stream()
                .filter(recorded -> recorded.entries() != null)
                .map(FinishedBatches::folded)
                .filter(snapshot -> snapshot.state().isFinished())
                .toList();
    }

    private static BatchSnapshot folded(RecordedBatch recorded) {
        return BatchSnapshot.finished(
                recorded.batch(),
                recorded.newest(),
                BatchFold.of(recorded.batch(), recorded.entries()).state());
    }
}
