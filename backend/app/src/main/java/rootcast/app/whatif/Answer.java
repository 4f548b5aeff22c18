package rootcast.app.whatif;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;
import rootcast.site.ShipWeek;

/**
 * What would move: every batch that is touched, and every week of its rows.
 *
 * @param promises those alone that would fare otherwise
 */
public record Answer(
        Instant asOf,
        FactPosition position,
        List<MovedBatch> batches,
        List<MovedCell> cells,
        List<MovedPromise> promises) {

    /** @param houseAfter where it would stand in the end */
    public record MovedBatch(BatchSnapshot before, BatchSnapshot after, String houseAfter) {}

    /** @param date the day that the board's cell stands for */
    public record MovedCell(Cell cell, ShipWeek week, LocalDate date, int openBefore, int openAfter) {}
}
