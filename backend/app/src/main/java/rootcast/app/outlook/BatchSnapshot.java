package rootcast.app.outlook;

import java.time.LocalDate;
import java.util.Collection;
import org.jspecify.annotations.Nullable;
import rootcast.availability.Cell;
import rootcast.availability.Confidence;
import rootcast.availability.LotOfBatch;
import rootcast.availability.SupplyLot;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchState;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.Outlook;
import rootcast.site.Site;

/**
 * A batch as its entries and its houses' readings make it.
 *
 * @param position of the batch's newest entry
 * @param outlook  null once no plant is left
 * @param lot      what it offers sales; null without an outlook, or if it never gets ready
 */
public record BatchSnapshot(
        Batch batch,
        FactPosition position,
        BatchState state,
        @Nullable Outlook outlook,
        @Nullable SupplyLot lot) {

    public static BatchSnapshot of(Batch batch, FactPosition position, BatchState state, Outlook outlook, Site site) {
        SupplyLot lot = LotOfBatch.of(batch.id(), outlook, site).orElse(null);
        return new BatchSnapshot(batch, position, state, outlook, lot);
    }

    /** Of a batch without a plant left. */
    public static BatchSnapshot finished(Batch batch, FactPosition position, BatchState state) {
        return new BatchSnapshot(batch, position, state, null, null);
    }

    /** Last day on which it offers a tray at the usual confidence; null if it offers none. */
    public @Nullable LocalDate usableUntil() {
        return lot == null ? null : lot.usableUntilInclusive(Confidence.USUAL);
    }

    public Cell cell() {
        return cellOf(batch);
    }

    /** Whether it is expected to be carried to one of these houses. */
    public boolean willStandIn(Collection<String> houses) {
        if (outlook != null) {
            for (BatchHistory.Placement move : outlook.moves()) {
                if (houses.contains(move.house())) {
                    return true;
                }
            }
        }
        return false;
    }

    public boolean standsOrWillStandIn(Collection<String> houses) {
        return willStandIn(houses)
                || state.placements().stream().anyMatch(placement -> houses.contains(placement.house()));
    }

    public static Cell cellOf(Batch batch) {
        return new Cell(batch.variety(), batch.trayFormat().code(), batch.site());
    }
}
