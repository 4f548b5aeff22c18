package rootcast.availability;

import java.time.LocalDate;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** How likely so many trays of one batch can leave on a ship date. Nothing is asked for days before the first. */
public interface TrayOdds {

    /** Days, both included. */
    record Days(LocalDate first, LocalDate last) {

        public Days {
            if (last.isBefore(first)) {
                throw new IllegalArgumentException("days from %s to %s".formatted(first, last));
            }
        }
    }

    /** Outside of these days not one tray has the probability; null if it has it on no day. */
    @Nullable
    Days daysWith(double probability);

    /** More trays than these have not the probability on any day. */
    int mostWith(double probability);

    /** P(at least n trays can leave on the day), by n from 1 on; never rising with n. */
    IntToDoubleFunction on(LocalDate day);
}
