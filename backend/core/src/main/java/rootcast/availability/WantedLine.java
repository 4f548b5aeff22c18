package rootcast.availability;

import java.time.LocalDate;

/**
 * A line of an order that is not promised yet.
 *
 * @param line number of the line in its order
 */
public record WantedLine(int line, Cell cell, LocalDate shipOn, int trays) {

    public WantedLine {
        if (trays < 1) {
            throw new IllegalArgumentException("line %d asks for %d trays".formatted(line, trays));
        }
    }
}
