package rootcast.availability;

import java.time.LocalDate;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Lots whose odds are written down day by day. */
public final class TableLot implements TrayOdds {

    private final LocalDate first;
    private final double[][] atLeast;

    private TableLot(LocalDate first, double[][] atLeast) {
        this.first = first;
        this.atLeast = atLeast;
    }

    /**
     * @param atLeast by day from the first on, by trays: {@code atLeast[day][n]} for n trays, index 0 unused
     */
    public static SupplyLot of(String batch, LocalDate first, double[][] atLeast) {
        return lot(batch, date -> 0, new TableLot(first, atLeast));
    }

    /**
     * All trays of the lot become ready together and end together.
     *
     * @param readyBy odds of being ready by day from the first on
     * @param tail    odds of at least so many trays
     */
    public static SupplyLot product(
            String batch, LocalDate first, double[] readyBy, double[] tail, LocalDate untilInclusive) {
        int days = (int) Math.max(0, untilInclusive.toEpochDay() - first.toEpochDay() + 1);
        double[][] atLeast = new double[days][tail.length];
        for (int day = 0; day < days; day++) {
            for (int n = 0; n < tail.length; n++) {
                atLeast[day][n] = readyBy[Math.min(day, readyBy.length - 1)] * tail[n];
            }
        }
        ReadyOdds ready = date -> {
            long day = date.toEpochDay() - first.toEpochDay();
            return day < 0 ? 0 : readyBy[(int) Math.min(day, readyBy.length - 1)];
        };
        return lot(batch, ready, new TableLot(first, atLeast));
    }

    /** World by world it comes out the better the higher the number of the world, on every day alike and for every lot alike. */
    public static SupplyLot lot(String batch, ReadyOdds ready, TrayOdds odds) {
        return new SupplyLot(
                batch,
                ready,
                odds,
                crop -> (world, days) -> days.stream()
                        .mapToInt(day -> most(odds, day, 1 - (world.number() + 0.5) / KeptTogether.WORLDS))
                        .toArray());
    }

    private static int most(TrayOdds odds, LocalDate day, double probability) {
        IntToDoubleFunction atLeast = odds.on(day);
        int trays = 0;
        while (trays < odds.mostWith(probability) && atLeast.applyAsDouble(trays + 1) >= probability) {
            trays++;
        }
        return trays;
    }

    @Override
    public @Nullable Days daysWith(double probability) {
        return atLeast.length == 0 ? null : new Days(first, first.plusDays(atLeast.length - 1L));
    }

    @Override
    public int mostWith(double probability) {
        return atLeast.length == 0 ? 0 : atLeast[0].length - 1;
    }

    @Override
    public IntToDoubleFunction on(LocalDate day) {
        long row = day.toEpochDay() - first.toEpochDay();
        return n -> row < 0 || row >= atLeast.length || n >= atLeast[0].length ? 0 : atLeast[(int) row][n];
    }
}
