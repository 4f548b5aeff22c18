package rootcast.board;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rootcast.availability.Cell;

/**
 * What turns one snapshot of the board into a later one.
 *
 * @param rows    whole rows that are new or differ, as they are now
 * @param removed rows that are gone
 */
public record BoardChange(List<BoardRow> rows, List<Cell> removed) {

    public BoardChange {
        rows = List.copyOf(rows);
        removed = List.copyOf(removed);
    }

    /**
     * @throws IllegalArgumentException if the snapshots differ in weeks or confidence: then every row does, send the board
     */
    public static BoardChange between(Board before, Board after) {
        if (before.confidence() != after.confidence() || !before.weeks().equals(after.weeks())) {
            throw new IllegalArgumentException("snapshots of %s at %s and of %s at %s have no change in common"
                    .formatted(before.weeks(), before.confidence(), after.weeks(), after.confidence()));
        }
        Map<Cell, BoardRow> gone = new HashMap<>();
        before.rows().forEach(row -> gone.put(row.head().cell(), row));
        List<BoardRow> rows = new ArrayList<>();
        for (BoardRow row : after.rows()) {
            if (!row.equals(gone.remove(row.head().cell()))) {
                rows.add(row);
            }
        }
        return new BoardChange(rows, gone.keySet().stream().sorted().toList());
    }

    public boolean isEmpty() {
        return rows.isEmpty() && removed.isEmpty();
    }
}
