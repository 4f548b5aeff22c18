package rootcast.board;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import rootcast.availability.CellSupply;
import rootcast.availability.Confidence;
import rootcast.availability.OpenAt;
import rootcast.availability.OpenTrays;
import rootcast.availability.Promise;
import rootcast.availability.Shortfall;
import rootcast.site.ShipWeek;

/**
 * Makes the rows of one site from lots and promises, for given weeks at a given confidence.
 *
 * <p>A cell stands for one day of its week, {@link #dayOf}; promises count in the week they were made for, overdue ones
 * too, although they take their trays from today.
 */
public final class BoardModel {

    private final List<ShipWeek> weeks;
    private final double confidence;
    private final LocalDate today;

    /** Per week: the day it stands for, its Monday as epoch day, whether it is over. */
    private final LocalDate[] days;

    private final long[] mondays;
    private final boolean[] past;
    private final List<LocalDate> asked;

    /**
     * @param shipDay of the site
     * @param today   the date at the site
     */
    public BoardModel(List<ShipWeek> weeks, double confidence, DayOfWeek shipDay, LocalDate today) {
        this.weeks = List.copyOf(weeks);
        this.confidence = confidence;
        this.today = today;
        days = new LocalDate[weeks.size()];
        mondays = new long[days.length];
        past = new boolean[days.length];
        List<LocalDate> current = new ArrayList<>();
        for (int i = 0; i < days.length; i++) {
            days[i] = dayOf(weeks.get(i), shipDay, today);
            mondays[i] = weeks.get(i).monday().toEpochDay();
            past[i] = isPast(weeks.get(i), today);
            if (!past[i]) {
                current.add(days[i]);
            }
        }
        asked = List.copyOf(current);
    }

    /** The day a cell stands for: the ship day, in the running week never before today; past weeks keep theirs. */
    public static LocalDate dayOf(ShipWeek week, DayOfWeek shipDay, LocalDate today) {
        LocalDate day = week.day(shipDay);
        return day.isBefore(today) && !isPast(week, today) ? today : day;
    }

    /**
     * @throws IllegalArgumentException if the supply is of another day than this model
     */
    public BoardRow row(RowHead head, CellSupply supply) {
        if (!supply.today().equals(today)) {
            throw new IllegalArgumentException("supply of %s on a board of %s".formatted(supply.today(), today));
        }
        OpenTrays open = OpenTrays.of(supply, asked);
        OpenAt sure = open.at(confidence);
        OpenAt likely = open.at(likelyConfidence());
        int[] promised = promisedByWeek(supply.promises());
        int[] lessSure = promisedByWeek(supply.promises().stream()
                .filter(promise -> promise.confidence() < confidence)
                .toList());
        int[] atRisk = open.everyPromiseFits() ? new int[days.length] : atRiskByWeek(Shortfall.of(supply));
        List<BoardCell> cells = new ArrayList<>(days.length);
        for (int i = 0; i < days.length; i++) {
            int ready = past[i] ? 0 : sure.ready(days[i]);
            int openTrays = past[i] ? 0 : sure.open(days[i]);
            int likelyTrays = past[i] ? 0 : likely.open(days[i]);
            cells.add(new BoardCell(
                    weeks.get(i), days[i], ready, promised[i], openTrays, likelyTrays, atRisk[i], lessSure[i]));
        }
        return new BoardRow(head, cells);
    }

    /** Open never grows with the confidence, so at the lower of the two likely cannot fall short of open. */
    private double likelyConfidence() {
        return Math.min(Confidence.EVEN_ODDS, confidence);
    }

    static boolean isPast(ShipWeek week, LocalDate today) {
        return week.compareTo(ShipWeek.of(today)) < 0;
    }

    static boolean isIn(ShipWeek week, LocalDate date) {
        return isIn(week.monday().toEpochDay(), date.toEpochDay());
    }

    private static boolean isIn(long monday, long day) {
        return day >= monday && day < monday + 7;
    }

    private int[] promisedByWeek(List<Promise> promises) {
        int[] sums = new int[days.length];
        for (Promise promise : promises) {
            add(sums, promise, promise.trays());
        }
        return sums;
    }

    private int[] atRiskByWeek(List<Shortfall> shortfalls) {
        int[] sums = new int[days.length];
        for (Shortfall shortfall : shortfalls) {
            add(sums, shortfall.promise(), shortfall.trays());
        }
        return sums;
    }

    private void add(int[] sums, Promise promise, int trays) {
        long day = promise.shipOn().toEpochDay();
        for (int i = 0; i < sums.length; i++) {
            if (isIn(mondays[i], day)) {
                sums[i] = Math.addExact(sums[i], trays);
            }
        }
    }
}
