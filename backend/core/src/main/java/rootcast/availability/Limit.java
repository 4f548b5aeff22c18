package rootcast.availability;

import java.time.LocalDate;
import java.util.List;

/**
 * Why an open figure is what it is: the ship dates that together leave the least slack.
 *
 * @param confidence at which capacity is counted; below the one asked for where a less certain promise is what limits
 * @param dates      the set, rising; it contains the date asked about and need not be contiguous
 * @param capacity   trays usable on some date of the set
 * @param promised   trays promised on the dates of the set at {@code confidence} or more, overdue ones on today
 */
public record Limit(double confidence, List<LocalDate> dates, int capacity, int promised) {

    /** Negative if the promises of the set cannot all be kept. */
    public int slack() {
        return capacity - promised;
    }
}
