package rootcast.app.board;

import java.util.ArrayList;
import java.util.List;
import rootcast.availability.Confidence;
import rootcast.site.ShipWeek;

/** What a screen looks at: which weeks, and how sure. */
public record BoardView(ShipWeek from, int weeks, double confidence) {

    public static final int MOST_WEEKS = 53;
    public static final int USUAL_WEEKS = 8;

    /** What a screen looks at if it does not say. */
    static BoardView usual(ShipWeek from) {
        return new BoardView(from, USUAL_WEEKS, Confidence.USUAL);
    }

    public List<ShipWeek> columns() {
        List<ShipWeek> columns = new ArrayList<>(weeks);
        for (int week = 0; week < weeks; week++) {
            columns.add(from.plusWeeks(week));
        }
        return columns;
    }
}
