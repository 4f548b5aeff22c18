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
        return new SupplyLot(batch, date -> 0, new TableLot(first, atLeast));
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
        return new SupplyLot(batch, ready, new TableLot(first, atLeast));
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
