package rootcast.board;

import java.util.List;

/**
 * One variety in one tray format at one site, week by week.
 *
 * @param cells one per week asked for, in that order
 */
public record BoardRow(RowHead head, List<BoardCell> cells) {

    public BoardRow {
        cells = List.copyOf(cells);
    }
}
