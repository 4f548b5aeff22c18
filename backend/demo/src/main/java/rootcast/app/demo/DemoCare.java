package rootcast.app.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.rounds.Arrival;
import rootcast.rounds.Task;

/**
 * A round item that people of the demo closed.
 *
 * @param batch      key of the batch; null for a whole house
 * @param occurrence last part of the item's id; empty where a task comes once
 * @param skippedFor why they skipped it; null if they did it
 */
public record DemoCare(
        Task task,
        String site,
        String house,
        @Nullable String batch,
        String occurrence,
        LocalDate dueOn,
        Instant at,
        String by,
        @Nullable String skippedFor,
        Found found) {

    /**
     * What they wrote down of it; null where the task asks for no such thing.
     *
     * @param gnats fungus gnats on the traps
     * @param count id of the entry that a count became
     */
    public record Found(
            @Nullable Integer level,
            @Nullable Double ecMsPerCm,
            @Nullable Arrival arrival,
            @Nullable Integer gnats,
            @Nullable UUID count,
            @Nullable String note) {

        static final Found NOTHING = new Found(null, null, null, null, null, null);

        static Found level(int level) {
            return new Found(level, null, null, null, null, null);
        }

        static Found ec(double msPerCm, @Nullable String note) {
            return new Found(null, msPerCm, null, null, null, note);
        }

        static Found arrived(Arrival arrival) {
            return new Found(null, null, arrival, null, null, null);
        }

        static Found trapped(int gnats) {
            return new Found(null, null, null, gnats, null, null);
        }

        static Found counted(UUID entry) {
            return new Found(null, null, null, null, entry, null);
        }
    }

    DemoCare finding(Found other) {
        return new DemoCare(task, site, house, batch, occurrence, dueOn, at, by, skippedFor, other);
    }
}
