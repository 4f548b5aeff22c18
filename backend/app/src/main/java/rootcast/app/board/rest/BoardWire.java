package rootcast.app.board.rest;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Predicate;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.ShownRow;
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
            List<CellWire> cells) {

        public static RowWire of(BoardRow row) {
            var head = row.head();
            return new RowWire(
                    head.cell().variety(),
                    head.varietyName(),
                    head.crop(),
                    head.cropName(),
                    head.cell().trayFormat(),
                    head.cell().site(),
                    row.cells().stream().map(CellWire::of).toList());
        }
    }

    /**
     * @param date   the day the cell stands for
     * @param ready  usable on that day at the confidence, before promises
     * @param open   can still be promised for that day
     * @param likely open at even odds
     * @param atRisk trays promised in the week that can no longer be kept
     */
    public record CellWire(String week, LocalDate date, int ready, int promised, int open, int likely, int atRisk) {
        static CellWire of(BoardCell cell) {
            return new CellWire(
                    cell.week().toString(),
                    cell.date(),
                    cell.ready(),
                    cell.promised(),
                    cell.open(),
                    cell.likely(),
                    cell.atRisk());
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
        static Changed of(LiveBoard.BoardNews news) {
            return new Changed(
                    news.position().value(),
                    news.asOf(),
                    news.rows().stream().map(RowWire::of).toList());
        }
    }

    /** Rows that are gone. */
    public record Removed(long position, List<GoneWire> rows) {
        static Removed of(LiveBoard.BoardNews news) {
            return new Removed(
                    news.position().value(),
                    news.removed().stream().map(GoneWire::of).toList());
        }
    }

    public static BoardWire of(LiveBoard.Picture picture, Predicate<BoardRow> shown) {
        return new BoardWire(
                picture.asOf(),
                picture.position().value(),
                picture.view().confidence(),
                picture.view().columns().stream().map(WeekWire::of).toList(),
                picture.rows().stream()
                        .map(ShownRow::row)
                        .filter(shown)
                        .map(RowWire::of)
                        .toList());
    }
}
