package rootcast.rounds;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Saying;

/**
 * One thing to do, or done, on a round.
 *
 * @param id           the same for the same thing however often it is computed
 * @param batch        null where the whole house is meant
 * @param dueOn        the day it fell due, by the site's calendar
 * @param why          null once it is closed
 * @param to           of a move that is open: houses that would do
 * @param blockedBy    what keeps people out of the house; null if nothing does
 */
public record RoundItem(
        String id,
        String house,
        @Nullable String batch,
        Task task,
        LocalDate dueOn,
        State state,
        @Nullable Saying why,
        List<String> to,
        @Nullable Treatment blockedBy) {

    public enum State {
        DUE,
        /** Fell due on an earlier day. */
        CARRIED_OVER,
        /** Due, but the house is closed after a treatment. */
        BLOCKED,
        DONE,
        SKIPPED;

        public String wireName() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
