package rootcast.app.board.rest;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Predicate;
import rootcast.app.board.BoardSnapshot;
import rootcast.app.board.ShownRow;
import rootcast.app.outlook.FaultyBatch;
import rootcast.app.snapshot.Snapshot;
import rootcast.availability.Cell;
import rootcast.board.BoardCell;
import rootcast.board.BoardRow;
import rootcast.site.ShipWeek;

/** The board as it is sent. Figures are trays. */
public record BoardWire(Instant asOf, long position, double confidence, List<WeekWire> weeks, List<RowWire> rows) {

    public record WeekWire(String week, LocalDate monday) {
        static WeekWire of(ShipWeek week) {
            return new WeekWire(week.toString(), week.monday());
        }
    }

    public record RowWire(
            String variety,
            String varietyName,
            String crop,
            String cropName,
            String trayFormat,
            String site,
            List<CellWire> cells,
            List<FaultyWire> faulty) {

        public static RowWire of(ShownRow shown) {
            BoardRow row = shown.row();
            var head = row.head();
            return new RowWire(
                    head.cell().variety(),
                    head.varietyName(),
                    head.crop(),
                    head.cropName(),
                    head.cell().trayFormat(),
                    head.cell().site(),
                    row.cells().stream().map(CellWire::of).toList(),
                    shown.faulty().stream().map(FaultyWire::of).toList());
        }
    }

    /** A batch that could not be computed: what it holds is in no figure of the row. */
    public record FaultyWire(String batch, String fault) {
        static FaultyWire of(FaultyBatch faulty) {
            return new FaultyWire(faulty.batch().id(), faulty.fault());
        }
    }

    /**
     * @param date   the day the cell stands for
     * @param ready  usable on that day at the confidence, before promises
     * @param open   can still be promised for that day
     * @param likely open at even odds
     * @param atRisk trays promised in the week that can no longer be kept
     * @param lessSure trays promised in the week at a lower confidence than is asked for
     */
    public record CellWire(
            String week, LocalDate date, int ready, int promised, int open, int likely, int atRisk, int lessSure) {
        static CellWire of(BoardCell cell) {
            return new CellWire(
                    cell.week().toString(),
                    cell.date(),
                    cell.ready(),
                    cell.promised(),
                    cell.open(),
                    cell.likely(),
                    cell.atRisk(),
                    cell.lessSure());
        }
    }

    /** A row that is gone. */
    public record GoneWire(String variety, String trayFormat, String site) {
        static GoneWire of(Cell cell) {
            return new GoneWire(cell.variety(), cell.trayFormat(), cell.site());
        }
    }

    /** Rows that changed, whole. */
    public record Changed(long position, Instant asOf, List<RowWire> rows) {
        public static Changed of(Snapshot now, List<ShownRow> rows) {
            return new Changed(
                    now.position().value(),
                    now.asOf(),
                    rows.stream().map(RowWire::of).toList());
        }
    }

    /** Rows that are gone. */
    public record Removed(long position, List<GoneWire> rows) {
        public static Removed of(Snapshot now, List<Cell> cells) {
            return new Removed(
                    now.position().value(), cells.stream().map(GoneWire::of).toList());
        }
    }

    public static BoardWire of(BoardSnapshot board, Predicate<BoardRow> shown) {
        return new BoardWire(
                board.asOf(),
                board.position().value(),
                board.view().confidence(),
                board.view().columns().stream().map(WeekWire::of).toList(),
                board.rows().stream()
                        .filter(row -> shown.test(row.row()))
                        .map(RowWire::of)
                        .toList());
    }
}
