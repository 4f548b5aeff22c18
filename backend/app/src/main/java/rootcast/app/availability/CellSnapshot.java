package rootcast.app.availability;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.FaultyBatch;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.SupplyLot;
import rootcast.site.Site;

/**
 * A cell with what bears on it.
 *
 * @param batches with plants alive
 * @param faulty  batches of the cell that could not be computed and offer nothing until they can
 */
public record CellSnapshot(Cell cell, List<BatchSnapshot> batches, List<FaultyBatch> faulty, CellSupply supply) {

    public CellSnapshot {
        batches = List.copyOf(batches);
        faulty = List.copyOf(faulty);
    }

    /** @param now from which "today" at the cell's site is told */
    public static CellSnapshot of(
            Cell cell,
            List<BatchSnapshot> batches,
            List<FaultyBatch> faulty,
            PromisesSnapshot promises,
            Site site,
            Instant now) {
        List<SupplyLot> lots = batches.stream()
                .map(BatchSnapshot::lot)
                .filter(Objects::nonNull)
                .toList();
        return new CellSnapshot(cell, batches, faulty, new CellSupply(lots, promises.of(cell), site.dayOf(now)));
    }

    /** Nothing alive, nothing promised, nothing set apart: no row of the board. */
    public boolean isEmpty() {
        return supply.lots().isEmpty() && supply.promises().isEmpty() && faulty.isEmpty();
    }
}
