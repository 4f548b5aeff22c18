package rootcast.app.outlook;

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

    public static Cell cellOf(Batch batch) {
        return new Cell(batch.variety(), batch.trayFormat().code(), batch.site());
    }
}
