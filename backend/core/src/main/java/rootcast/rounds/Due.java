package rootcast.rounds;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Saying;

/** What a rule asks for, before it is known whether it was done. */
record Due(String id, @Nullable String batch, Task task, LocalDate dueOn, Saying why) {

    static Due of(Task task, BatchCare batch, String occurrence, LocalDate dueOn, Saying why) {
        String id = task.wireName() + "." + batch.id();
        return new Due(occurrence.isEmpty() ? id : id + "." + occurrence, batch.id(), task, dueOn, why);
    }
}
