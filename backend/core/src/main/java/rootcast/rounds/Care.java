package rootcast.rounds;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A round item that was closed.
 *
 * @param item  id of the item
 * @param batch null where the whole house was meant
 * @param done  false if it was skipped
 * @param at    when it was done or skipped
 * @param level     moisture level seen, 1 to 5; null where none was asked for
 * @param ecMsPerCm salts of the medium as measured; null where they were not asked for
 */
public record Care(
        String item,
        Task task,
        String house,
        @Nullable String batch,
        LocalDate dueOn,
        boolean done,
        Instant at,
        @Nullable Integer level,
        @Nullable Double ecMsPerCm) {

    /** One that asks for no measurement. */
    public Care(
            String item,
            Task task,
            String house,
            @Nullable String batch,
            LocalDate dueOn,
            boolean done,
            Instant at,
            @Nullable Integer level) {
        this(item, task, house, batch, dueOn, done, at, level, null);
    }

    boolean isOf(Task wanted, String wantedBatch) {
        return task == wanted && wantedBatch.equals(batch);
    }
}
