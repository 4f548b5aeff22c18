package rootcast.availability;

import java.util.Comparator;

/**
 * What competes for the same trays: one variety in one tray format at one site.
 *
 * @param variety    code
 * @param trayFormat code
 * @param site       code
 */
public record Cell(String variety, String trayFormat, String site) implements Comparable<Cell> {

    private static final Comparator<Cell> BY_CODES =
            Comparator.comparing(Cell::variety).thenComparing(Cell::trayFormat).thenComparing(Cell::site);

    @Override
    public int compareTo(Cell other) {
        return BY_CODES.compare(this, other);
    }
}
