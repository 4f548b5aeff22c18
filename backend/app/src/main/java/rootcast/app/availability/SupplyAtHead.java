package rootcast.app.availability;

import rootcast.availability.Cell;
import rootcast.availability.CellSupply;

/**
 * Lots and promises that take in every fact up to the head. Asked by whoever holds the head, so nothing can be added
 * between the answer and the promise made from it.
 */
public interface SupplyAtHead {

    CellSupply of(Cell cell);
}
