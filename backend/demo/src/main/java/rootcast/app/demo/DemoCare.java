package rootcast.app.demo;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rootcast.rounds.Task;

/**
 * A round item that people of the demo did.
 *
 * @param batch      key of the batch; null for a whole house
 * @param occurrence last part of the item's id; empty where a task comes once
 */
public record DemoCare(
        Task task,
        String site,
        String house,
        @Nullable String batch,
        String occurrence,
        LocalDate dueOn,
        Instant at,
        @Nullable Integer level) {}
