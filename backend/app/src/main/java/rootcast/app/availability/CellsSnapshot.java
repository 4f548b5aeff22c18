package rootcast.app.availability;

import java.util.Map;
import java.util.Optional;
import rootcast.availability.Cell;

/** Every cell with plants alive, trays promised or a batch set apart. */
public record CellsSnapshot(Map<Cell, CellSnapshot> byCell) {

    public CellsSnapshot {
        byCell = Map.copyOf(byCell);
    }

    public Optional<CellSnapshot> cell(Cell cell) {
        return Optional.ofNullable(byCell.get(cell));
    }
}
