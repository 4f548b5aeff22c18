package rootcast.app.board;

import java.time.DayOfWeek;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.availability.CellSupply;
import rootcast.board.BoardModel;
import rootcast.board.BoardRow;
import rootcast.board.RowHead;
import rootcast.crop.Crop;
import rootcast.site.Site;

/**
 * The rows that one cell's snapshot makes under the views that people look through, each computed when first asked for
 * and kept as long as the cell stays as it is. For any number of threads.
 */
public final class CellRows {

    /** More views than this at once are somebody trying all of them. */
    private static final int MOST_VIEWS = 16;

    private final CellSnapshot cell;
    private final RowHead head;
    private final Site site;
    private final Map<BoardView, Optional<ShownRow>> byView = new ConcurrentHashMap<>(2);

    CellRows(CellSnapshot cell, RowHead head, Site site) {
        this.cell = cell;
        this.head = head;
        this.site = site;
    }

    public CellSnapshot cell() {
        return cell;
    }

    /** Whether the site and the names are still those that the rows are made with. */
    boolean isOf(Site siteNow, CatalogueSnapshot names) {
        return site.equals(siteNow) && head.equals(head(cell, names));
    }

    /** The row under a view; empty if nothing of the cell is alive, promised or set apart. */
    public Optional<ShownRow> row(BoardView view) {
        Optional<ShownRow> known = byView.get(view);
        if (known == null) {
            if (byView.size() >= MOST_VIEWS) {
                byView.clear();
            }
            known = cell.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new ShownRow(row(view, cell.supply(), head, site.shipDay()), cell.faulty()));
            byView.put(view, known);
        }
        return known;
    }

    static BoardRow row(BoardView view, CellSupply supply, RowHead head, DayOfWeek shipDay) {
        return new BoardModel(view.columns(), view.confidence(), shipDay, supply.today()).row(head, supply);
    }

    static RowHead head(CellSnapshot cell, CatalogueSnapshot names) {
        Crop crop = names.cropOf(cell.cell().variety());
        return new RowHead(
                cell.cell(), names.varieties().get(cell.cell().variety()).name(), crop.code(), crop.name());
    }
}
