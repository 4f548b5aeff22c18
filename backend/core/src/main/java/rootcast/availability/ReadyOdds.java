package rootcast.availability;

import java.time.LocalDate;
import java.util.Arrays;

/**
 * How likely a batch is ready by the start of a ship date. Never falls from one date to a later one.
 */
@FunctionalInterface
public interface ReadyOdds {

    /** Probability, 0 to 1, that the batch is ready by {@code date}. */
    double readyBy(LocalDate date);

    /** A batch that is ready on {@code fromInclusive} for certain, and not before. */
    static ReadyOdds certainFrom(LocalDate fromInclusive) {
        return date -> date.isBefore(fromInclusive) ? 0 : 1;
    }

    /**
     * Odds from a table with one row per day.
     *
     * @param first   day of the first row; before it the odds are 0
     * @param readyBy probability per day, never falling; after the last row they stay as they are there
     * @throws IllegalArgumentException if a row lies outside 0 to 1 or below the row before it
     */
    static ReadyOdds daily(LocalDate first, double[] readyBy) {
        double[] rows = readyBy.clone();
        double before = 0;
        for (int i = 0; i < rows.length; i++) {
            if (!(rows[i] >= before && rows[i] <= 1)) {
                throw new IllegalArgumentException("odds %s on %s must lie between %s, those of the day before, and 1"
                        .formatted(rows[i], first.plusDays(i), before));
            }
            before = rows[i];
        }
        if (rows.length == 0) {
            throw new IllegalArgumentException(
                    "a table of odds needs a row; %s is %s".formatted(first, Arrays.toString(rows)));
        }
        long firstDay = first.toEpochDay();
        return date -> {
            long row = date.toEpochDay() - firstDay;
            return row < 0 ? 0 : rows[(int) Math.min(row, rows.length - 1)];
        };
    }
}
