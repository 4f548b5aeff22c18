package rootcast.app.outlook;

import java.util.Collection;
import org.jspecify.annotations.Nullable;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchState;
import rootcast.outlook.Outlook;

/**
 * A batch as its entries and its houses' readings make it.
 *
 * @param position of the batch's newest entry
 * @param outlook  null once no plant is left
 */
public record BatchSnapshot(
        Batch batch,
        FactPosition position,
        BatchState state,
        @Nullable Outlook outlook) {

    public Cell cell() {
        return cellOf(batch);
    }

    /** Whether it is expected to be carried to one of these houses. */
    public boolean willStandIn(Collection<String> houses) {
        return outlook != null && outlook.moves().stream().anyMatch(move -> houses.contains(move.house()));
    }

    public boolean standsOrWillStandIn(Collection<String> houses) {
        return willStandIn(houses)
                || state.placements().stream().anyMatch(placement -> houses.contains(placement.house()));
    }

    public static Cell cellOf(Batch batch) {
        return new Cell(batch.variety(), batch.trayFormat().code(), batch.site());
    }
}
