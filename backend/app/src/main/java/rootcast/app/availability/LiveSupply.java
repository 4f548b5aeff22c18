package rootcast.app.availability;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import rootcast.app.outlook.BatchPicture;
import rootcast.app.outlook.LiveBatches;
import rootcast.app.outlook.LotOfBatch;
import rootcast.app.site.LiveSites;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.SupplyLot;
import rootcast.ledger.OrderLine;
import rootcast.site.Site;

/** Lots and promises of a cell as they are now in memory. */
@ApplicationScoped
public class LiveSupply {

    @Inject
    LiveBatches batches;

    @Inject
    LivePromises promises;

    @Inject
    LiveSites sites;

    @Inject
    InstantSource time;

    public CellSupply of(Cell cell) {
        return of(cell, time.instant());
    }

    /** @param now from which "today" at the cell's site is told */
    public CellSupply of(Cell cell, Instant now) {
        return of(cell, batches.of(cell), promises, now);
    }

    /**
     * Lots of other pictures than the live ones, with the promises of then.
     *
     * @param pictures of every batch of the cell, finished ones too
     */
    public CellSupply of(Cell cell, List<BatchPicture> pictures, LivePromises promises, Instant now) {
        Site site = sites.site(cell.site());
        List<SupplyLot> lots = pictures.stream()
                .flatMap(picture -> LotOfBatch.of(picture, site).stream())
                .toList();
        return new CellSupply(lots, promises.of(cell, line -> shippedFor(line, pictures)), site.dayOf(now));
    }

    /** The live cell with other pictures in the place of some. */
    public CellSupply with(Cell cell, Map<String, BatchPicture> instead) {
        List<BatchPicture> pictures = batches.of(cell).stream()
                .map(picture -> instead.getOrDefault(picture.batch().id(), picture))
                .toList();
        return of(cell, pictures, promises, time.instant());
    }

    /** Trays that have left for a promise; only batches of the promise's own cell can serve it. */
    public int shippedFor(OrderLine line, Cell cell) {
        return shippedFor(line, batches.of(cell));
    }

    /** @param pictures of the batches of the promise's cell */
    public static int shippedFor(OrderLine line, List<BatchPicture> pictures) {
        int shipped = 0;
        for (BatchPicture picture : pictures) {
            shipped += picture.state().shippedTo().getOrDefault(line, 0);
        }
        return shipped;
    }

    /** Cells with plants alive or trays promised. */
    public Set<Cell> cells() {
        Set<Cell> cells = new TreeSet<>();
        for (BatchPicture picture : batches.pictures()) {
            if (!picture.state().isFinished()) {
                cells.add(picture.cell());
            }
        }
        for (Cell cell : promises.cells()) {
            if (!cells.contains(cell) && !of(cell).promises().isEmpty()) {
                cells.add(cell);
            }
        }
        return cells;
    }
}
