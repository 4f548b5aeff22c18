package rootcast.board;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import rootcast.availability.Allotment;
import rootcast.availability.CellSupply;
import rootcast.availability.KeptPromise;
import rootcast.availability.OpenAt;
import rootcast.availability.OpenTrays;
import rootcast.availability.Promise;
import rootcast.site.ShipWeek;

/**
 * Makes the figures of the board from lots and promises.
 *
 * <p>A cell stands for one day of its week, {@link #dayOf}; promises count in the week they were made for, overdue ones
 * too, although they take their trays from today.
 */
public final class BoardModel {

    /** Confidence of the likely figure. */
    public static final double EVEN_ODDS = 0.5;

    private BoardModel() {}

    /** The day a cell stands for: the ship day, in the running week never before today; past weeks keep theirs. */
    public static LocalDate dayOf(ShipWeek week, DayOfWeek shipDay, LocalDate today) {
        LocalDate day = week.day(shipDay);
        return day.isBefore(today) && !isPast(week, today) ? today : day;
    }

    public static BoardRow row(
            RowHead head, CellSupply supply, List<ShipWeek> weeks, double confidence, DayOfWeek shipDay) {
        LocalDate today = supply.today();
        List<LocalDate> asked = new ArrayList<>(weeks.size());
        for (ShipWeek week : weeks) {
            if (!isPast(week, today)) {
                asked.add(dayOf(week, shipDay, today));
            }
        }
        OpenTrays open = OpenTrays.of(supply, asked);
        OpenAt sure = open.at(confidence);
        OpenAt likely = open.at(likelyConfidence(confidence));
        List<KeptPromise> perhapsShort =
                open.everyPromiseFits() ? List.of() : Allotment.of(supply).promises();
        List<BoardCell> cells = new ArrayList<>(weeks.size());
        for (ShipWeek week : weeks) {
            LocalDate date = dayOf(week, shipDay, today);
            int promised = promisedIn(week, supply.promises());
            int atRisk = atRiskIn(week, perhapsShort);
            cells.add(
                    isPast(week, today)
                            ? new BoardCell(week, date, 0, promised, 0, 0, atRisk)
                            : new BoardCell(
                                    week,
                                    date,
                                    sure.ready(date),
                                    promised,
                                    sure.open(date),
                                    likely.open(date),
                                    atRisk));
        }
        return new BoardRow(head, cells);
    }

    /** Open never grows with the confidence, so at the lower of the two likely cannot fall short of open. */
    static double likelyConfidence(double confidence) {
        return Math.min(EVEN_ODDS, confidence);
    }

    static boolean isPast(ShipWeek week, LocalDate today) {
        return week.compareTo(ShipWeek.of(today)) < 0;
    }

    static boolean isIn(ShipWeek week, LocalDate date) {
        long days = date.toEpochDay() - week.monday().toEpochDay();
        return days >= 0 && days < 7;
    }

    private static int promisedIn(ShipWeek week, List<Promise> promises) {
        int sum = 0;
        for (Promise promise : promises) {
            sum = isIn(week, promise.shipOn()) ? Math.addExact(sum, promise.trays()) : sum;
        }
        return sum;
    }

    private static int atRiskIn(ShipWeek week, List<KeptPromise> promises) {
        int sum = 0;
        for (KeptPromise each : promises) {
            sum = isIn(week, each.promise().shipOn()) ? Math.addExact(sum, each.shortfallTrays()) : sum;
        }
        return sum;
    }
}
