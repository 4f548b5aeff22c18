package rootcast.app.board;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.site.SitesSnapshot;
import rootcast.availability.Cell;

/**
 * The rows of the board, one per cell, in order of variety, tray format and site.
 *
 * @param byCell every cell with something alive, promised or set apart
 */
public record RowsSnapshot(SortedMap<Cell, CellRows> byCell) {

    public static final RowsSnapshot NONE = new RowsSnapshot(Collections.emptySortedMap());

    /** With some cells as they are now; an empty one is gone. */
    public RowsSnapshot with(Map<Cell, CellSnapshot> now, SitesSnapshot sites, CatalogueSnapshot names) {
        if (now.isEmpty()) {
            return this;
        }
        SortedMap<Cell, CellRows> next = new TreeMap<>(byCell);
        now.forEach((cell, snapshot) -> {
            if (snapshot.isEmpty()) {
                next.remove(cell);
            } else {
                next.put(cell, new CellRows(snapshot, CellRows.head(snapshot, names), sites.site(cell.site())));
            }
        });
        return new RowsSnapshot(Collections.unmodifiableSortedMap(next));
    }

    /** Cells whose site or names are others now than those that their rows were made with. */
    public List<Cell> cellsUnlike(SitesSnapshot sites, CatalogueSnapshot names) {
        return byCell.entrySet().stream()
                .filter(each -> !each.getValue().isOf(sites.site(each.getKey().site()), names))
                .map(Map.Entry::getKey)
                .toList();
    }

    public Optional<ShownRow> row(Cell cell, BoardView view) {
        return Optional.ofNullable(byCell.get(cell)).flatMap(rows -> rows.row(view));
    }

    /** Computes the rows under a view that are not there yet, one after another: whoever asks for them meanwhile goes first. */
    void computeAhead(BoardView view) {
        byCell.values().forEach(rows -> rows.row(view));
    }

    /** All rows under a view; those not looked at before are computed on all cores. */
    public List<ShownRow> rows(BoardView view) {
        return byCell.values().parallelStream()
                .flatMap(rows -> rows.row(view).stream())
                .toList();
    }
}
