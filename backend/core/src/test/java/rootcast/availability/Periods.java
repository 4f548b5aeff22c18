package rootcast.availability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Textbook tables number their periods; here period n is the n-th day of 2026, and a promise is made in table order. */
final class Periods {

    static final LocalDate TODAY = period(1);

    private final List<SupplyLot> lots = new ArrayList<>();
    private final List<Promise> promises = new ArrayList<>();

    static LocalDate period(int number) {
        return LocalDate.of(2025, 12, 31).plusDays(number);
    }

    static List<LocalDate> periods(int from, int toInclusive) {
        List<LocalDate> all = new ArrayList<>();
        for (int number = from; number <= toInclusive; number++) {
            all.add(period(number));
        }
        return all;
    }

    static double[] certain(int trays) {
        double[] tail = new double[trays + 1];
        Arrays.fill(tail, 1);
        return tail;
    }

    Periods lot(String batch, int from, int untilInclusive, int trays) {
        lots.add(TableLot.product(batch, period(from), new double[] {1}, certain(trays), period(untilInclusive)));
        return this;
    }

    Periods lot(String batch, double[] readyBy, double[] tail, int untilInclusive) {
        lots.add(TableLot.product(batch, period(1), readyBy, tail, period(untilInclusive)));
        return this;
    }

    /** From period 1 on, {@code atLeast[day][n]} being the odds of at least n trays. */
    Periods lot(String batch, double[][] atLeast) {
        lots.add(TableLot.of(batch, period(1), atLeast));
        return this;
    }

    /** So many trays for certain on each period from 1 on. */
    Periods offering(String batch, int... trays) {
        double[][] atLeast = new double[trays.length][Arrays.stream(trays).max().orElse(0) + 1];
        for (int day = 0; day < trays.length; day++) {
            Arrays.fill(atLeast[day], 0, trays[day] + 1, 1);
        }
        return lot(batch, atLeast);
    }

    /** A receipt that never expires, as in the tables for durable goods. */
    Periods receipt(int period, int trays) {
        return lot("receipt-" + period + "-" + lots.size(), period, 400, trays);
    }

    Periods order(int period, int trays) {
        return order(period, trays, 0.9);
    }

    Periods order(int period, int trays, double confidence) {
        promises.add(
                new Promise("o" + (promises.size() + 1), 1, period(period), trays, confidence, promises.size() + 1));
        return this;
    }

    CellSupply supply() {
        return new CellSupply(lots, promises, TODAY);
    }

    List<Integer> open(int from, int toInclusive) {
        return open(from, toInclusive, 0.9);
    }

    List<Integer> open(int from, int toInclusive, double confidence) {
        List<LocalDate> dates = periods(from, toInclusive);
        OpenAt figures = OpenTrays.of(supply(), dates).at(confidence);
        return dates.stream().map(figures::open).toList();
    }
}
