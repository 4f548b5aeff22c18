package rootcast.app.outlook;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import rootcast.app.snapshot.Snapshots;

/** Batches as they are in the snapshot of now. */
@ApplicationScoped
public class LiveBatches {

    @Inject
    Snapshots snapshots;

    public BatchesSnapshot now() {
        return snapshots.now().part(BatchesSnapshot.class);
    }
}
