package rootcast.app.board;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.DayOfWeek;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.availability.LiveSupply;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.site.SitesSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.availability.Cell;
import rootcast.board.BoardRow;
import rootcast.board.CellExplanation;
import rootcast.facts.FactPosition;
import rootcast.site.ShipWeek;
import rootcast.site.Site;

/** The board as it is in the snapshot of now. */
@ApplicationScoped
public class LiveBoard {

    @Inject
    Snapshots snapshots;

    public BoardSnapshot board(BoardView view) {
        return boardIn(snapshots.now(), view);
    }

    public static BoardSnapshot boardIn(Snapshot now, BoardView view) {
        return new BoardSnapshot(
                now.position(), now.asOf(), view, now.part(RowsSnapshot.class).rows(view));
    }

    /** One cell with all that its figures come from. */
    public CellFacts cell(Cell cell) {
        Snapshot now = snapshots.now();
        return new CellFacts(
                LiveSupply.cellOf(now, cell), now.part(PromisesSnapshot.class), now.position(), now.asOf());
    }

    /** The row that a cell makes that is not, or not so, in the snapshot of now; empty if it is none. */
    public Optional<BoardRow> row(CellSnapshot cell, BoardView view) {
        if (cell.isEmpty()) {
            return Optional.empty();
        }
        Snapshot now = snapshots.now();
        return Optional.of(CellRows.row(
                view,
                cell.supply(),
                CellRows.head(cell, now.part(CatalogueSnapshot.class)),
                shipDay(now, cell.cell())));
    }

    public CellExplanation explain(CellFacts facts, ShipWeek week, double confidence) {
        Snapshot now = snapshots.now();
        return CellExplanation.of(
                CellRows.head(facts.cell(), now.part(CatalogueSnapshot.class)),
                facts.cell().supply(),
                week,
                confidence,
                shipDay(now, facts.cell().cell()));
    }

    /**
     * The ship week that it is at a site; without one, at the site where the day is youngest, so that no site's current
     * week is missing.
     */
    public ShipWeek currentWeek(@Nullable String site, java.time.Instant at) {
        return snapshots.now().part(SitesSnapshot.class).byCode().values().stream()
                .filter(each -> site == null || each.code().equals(site))
                .map(each -> ShipWeek.of(each.dayOf(at)))
                .min(java.util.Comparator.comparing(ShipWeek::monday))
                .orElseGet(() -> ShipWeek.of(java.time.LocalDate.ofInstant(at, java.time.ZoneOffset.UTC)));
    }

    public FactPosition position() {
        return snapshots.now().position();
    }

    private static DayOfWeek shipDay(Snapshot now, Cell cell) {
        Site site = now.part(SitesSnapshot.class).site(cell.site());
        return site.shipDay();
    }
}
