package rootcast.app.board;

import java.time.Instant;
import java.util.Set;
import rootcast.availability.Cell;
import rootcast.ledger.LedgerPosition;

/**
 * What a step from one position to the next has touched.
 *
 * @param cells   whose figures may differ
 * @param batches that have a new entry or another outlook
 */
public record BoardChanges(
        LedgerPosition position, Instant asOf, Set<Cell> cells, Set<String> batches, boolean orders, boolean setup) {

    public boolean isEmpty() {
        return cells.isEmpty() && batches.isEmpty() && !orders && !setup;
    }
}
