package rootcast.app.board;

import java.time.Instant;
import java.util.Set;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;

/**
 * What a step from one position to the next has touched.
 *
 * @param cells   whose figures may differ
 * @param batches that have a new entry or another outlook
 * @param houses  with new readings
 */
public record BoardChanges(
        FactPosition position,
        Instant asOf,
        Set<Cell> cells,
        Set<String> batches,
        Set<String> houses,
        boolean orders,
        boolean setup) {

    public boolean isEmpty() {
        return cells.isEmpty() && batches.isEmpty() && houses.isEmpty() && !orders && !setup;
    }
}
