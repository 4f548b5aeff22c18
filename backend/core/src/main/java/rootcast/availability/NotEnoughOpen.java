package rootcast.availability;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Why a wanted line cannot be kept.
 *
 * @param wanted  the line, with the trays asked for
 * @param open    trays open on its date after the lines before it in the same order; 0 if that date is past
 * @param nearest the nearest date with enough, null if there is none within {@link MatchRules#SEARCH_WEEKS} weeks
 */
public record NotEnoughOpen(
        WantedLine wanted, int open, @Nullable Nearest nearest) {

    /**
     * @param open trays open on the date, at least those asked for
     */
    public record Nearest(LocalDate date, int open) {}
}
