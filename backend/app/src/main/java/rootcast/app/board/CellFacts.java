package rootcast.app.board;

import java.time.Instant;
import java.util.List;
import rootcast.app.availability.LivePromises;
import rootcast.app.outlook.BatchPicture;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.facts.FactPosition;

/**
 * A cell of the board with what its figures come from, now or as of an instant.
 *
 * @param pictures of every batch of the cell, finished ones too
 * @param position of the newest fact in it
 */
public record CellFacts(
        Cell cell,
        CellSupply supply,
        List<BatchPicture> pictures,
        LivePromises promises,
        FactPosition position,
        Instant asOf) {

    public CellFacts {
        pictures = List.copyOf(pictures);
    }
}
