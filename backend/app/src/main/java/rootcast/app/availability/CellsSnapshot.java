package rootcast.app.availability;

import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import rootcast.availability.Cell;

/**
 * Every cell with plants alive, trays promised or a batch set apart.
 *
 * @param byCell not changed any more by whoever gave it
 */
public record CellsSnapshot(Map<Cell, CellSnapshot> byCell) {

    public static final CellsSnapshot NONE = new CellsSnapshot(Map.of());

    public CellsSnapshot {
        byCell = Collections.unmodifiableMap(byCell);
    }

    /** With some cells as they are now; an empty one is gone. */
    public CellsSnapshot with(Map<Cell, CellSnapshot> now) {
        if (now.isEmpty()) {
            return this;
        }
        Map<Cell, CellSnapshot> next = new HashMap<>(byCell);
        now.forEach((cell, snapshot) -> {
            if (snapshot.isEmpty()) {
                next.remove(cell);
            } else {
                next.put(cell, snapshot);
            }
        });
        return new CellsSnapshot(next);
    }

    public Optional<CellSnapshot> cell(Cell cell) {
        return Optional.ofNullable(byCell.get(cell));
    }
}
