package rootcast.board;

import java.util.List;
import rootcast.site.ShipWeek;

/**
 * The whole table at one confidence.
 *
 * @param weeks the columns
 * @param rows  one per cell of supply, each with those columns
 */
public record Board(double confidence, List<ShipWeek> weeks, List<BoardRow> rows) {

    public Board {
        weeks = List.copyOf(weeks);
        rows = List.copyOf(rows);
    }
}
