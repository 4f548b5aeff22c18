package rootcast.app.live;

import java.time.Instant;
import java.util.Map;
import java.util.Set;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;

/**
 * What a step from one snapshot to the next has touched.
 *
 * @param cells   whose figures may differ
 * @param batches that have a new entry or another outlook, with their sites
 * @param houses  with new readings
 */
public record Changes(
        FactPosition position,
        Instant asOf,
        Set<Cell> cells,
        Map<String, String> batches,
        Set<String> houses,
        boolean orders,
        boolean setup) {

    public Changes {
        cells = Set.copyOf(cells);
        batches = Map.copyOf(batches);
        houses = Set.copyOf(houses);
    }

    public boolean isEmpty() {
        return cells.isEmpty() && batches.isEmpty() && houses.isEmpty() && !orders && !setup;
    }
}
