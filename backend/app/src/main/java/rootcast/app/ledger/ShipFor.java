package rootcast.app.ledger;

import rootcast.ledger.Batch;
import rootcast.ledger.What;

/** Whether trays may leave for the promise that an entry names; the ledger itself knows no orders. */
public interface ShipFor {

    /** Throws a problem if there is no such promise, if it is for other trays, or if fewer are still to ship. */
    void check(Batch batch, What.Ship ship);
}
