package rootcast.app.availability;

import java.time.Instant;
import java.util.Collection;
import java.util.Map;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;

/**
 * Lots and promises that take in every fact up to the head. Asked by whoever holds the head, so nothing can be added
 * between the answer and the promise made from it.
 */
public interface SupplyAtHead {

    /** @param today at which the promise is made: nothing can ship before its day at the site */
    Map<Cell, CellSupply> of(Collection<Cell> cells, Instant today);
}
