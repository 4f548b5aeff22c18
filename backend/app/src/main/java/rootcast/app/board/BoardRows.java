package rootcast.app.board;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Optional;
import rootcast.app.availability.LiveSupply;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.site.LiveSites;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.board.BoardModel;
import rootcast.board.BoardRow;
import rootcast.board.CellExplanation;
import rootcast.board.RowHead;
import rootcast.crop.Crop;
import rootcast.site.ShipWeek;

/** Rows of the board from what is live. */
@ApplicationScoped
public class BoardRows {

    @Inject
    LiveSupply supply;

    @Inject
    LiveCatalogue names;

    @Inject
    LiveSites sites;

    /** The row as it is now; empty if nothing of it is alive or promised. */
    Optional<BoardRow> row(Cell cell, BoardView view) {
        return row(cell, view, supply.of(cell));
    }

    /** The row that this supply makes; empty if it is none. */
    public Optional<BoardRow> row(Cell cell, BoardView view, CellSupply now) {
        if (now.lots().isEmpty() && now.promises().isEmpty()) {
            return Optional.empty();
        }
        var model = new BoardModel(
                view.columns(), view.confidence(), sites.site(cell.site()).shipDay(), now.today());
        return Optional.of(model.row(head(cell), now));
    }

    public CellExplanation explain(CellFacts facts, ShipWeek week, double confidence) {
        Cell cell = facts.cell();
        return CellExplanation.of(
                head(cell),
                facts.supply(),
                week,
                confidence,
                sites.site(cell.site()).shipDay());
    }

    private RowHead head(Cell cell) {
        Crop crop = names.cropOf(cell.variety());
        return new RowHead(cell, names.variety(cell.variety()).name(), crop.code(), crop.name());
    }
}
