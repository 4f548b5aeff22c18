package rootcast.app.availability;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import rootcast.app.outlook.BatchesSnapshot;
import rootcast.app.site.SitesSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.availability.Cell;

/** Cells and promises as they are in the snapshot of now. */
@ApplicationScoped
public class LiveSupply {

    @Inject
    Snapshots snapshots;

    /** A cell of a known site; without lots and promises where there are none. */
    public CellSnapshot cell(Cell cell) {
        return cellOf(snapshots.now(), cell);
    }

    public PromisesSnapshot promises() {
        return snapshots.now().part(PromisesSnapshot.class);
    }

    /** A cell of a known site in a snapshot. */
    public static CellSnapshot cellOf(Snapshot now, Cell cell) {
        return now.part(CellsSnapshot.class)
                .cell(cell)
                .orElseGet(() -> CellSnapshot.of(
                        cell,
                        now.part(BatchesSnapshot.class).of(cell),
                        List.of(),
                        now.part(PromisesSnapshot.class),
                        now.part(SitesSnapshot.class).site(cell.site()),
                        now.asOf()));
    }
}
