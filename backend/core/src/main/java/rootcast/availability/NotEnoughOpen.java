package rootcast.availability;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * Why a wanted line cannot be kept.
 *
 * @param wanted  the line, with the trays asked for
 * @param open    trays open on its date after the lines before it in the same order; 0 if that date is past
 * @param earlier the last date before it with enough, null if there is none within {@link MatchRules#SEARCH_WEEKS} weeks
 * @param later   the first date after it with enough, likewise
 */
public record NotEnoughOpen(
        WantedLine wanted,
        int open,
        @Nullable Nearest earlier,
        @Nullable Nearest later) {

    /**
     * @param open trays open on the date, at least those asked for
     */
    public record Nearest(LocalDate date, int open) {}

    /** By days the nearer of the two dates, the later one if both are as near; null if there is neither. */
    public @Nullable Nearest nearest() {
        if (earlier == null || later == null) {
            return earlier == null ? later : earlier;
        }
        long before = ChronoUnit.DAYS.between(earlier.date(), wanted.shipOn());
        long after = ChronoUnit.DAYS.between(wanted.shipOn(), later.date());
        return before < after ? earlier : later;
    }
}
