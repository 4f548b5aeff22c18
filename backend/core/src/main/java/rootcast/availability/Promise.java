package rootcast.availability;

import java.time.LocalDate;

/**
 * Trays reserved for an order line and a ship date.
 *
 * @param order      id of the order
 * @param line       number of the line in it
 * @param shipOn     date it was promised for
 * @param trays      trays still to ship
 * @param confidence at which it was made, over 0 and at most 1
 * @param position   when it was made: a smaller position is older
 */
public record Promise(String order, int line, LocalDate shipOn, int trays, double confidence, long position) {

    public Promise {
        Confidence.checked(confidence);
        if (trays < 0) {
            throw new IllegalArgumentException(
                    "order %s line %d: %d trays still to ship".formatted(order, line, trays));
        }
    }

    /** The date it takes trays from: its own, or {@code today} once that is past, because the customer still waits. */
    public LocalDate dueOn(LocalDate today) {
        return shipOn.isBefore(today) ? today : shipOn;
    }
}
