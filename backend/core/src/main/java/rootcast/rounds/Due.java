package rootcast.rounds;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Saying;

/**
 * What a rule asks for, before it is known whether it was done.
 *
 * @param to of a move: houses that would do
 */
record Due(String id, @Nullable String batch, Task task, LocalDate dueOn, Saying why, List<String> to) {

    Due(String id, @Nullable String batch, Task task, LocalDate dueOn, Saying why) {
        this(id, batch, task, dueOn, why, List.of());
    }

    static Due of(Task task, BatchCare batch, String occurrence, LocalDate dueOn, Saying why) {
        return new Due(idOf(task, batch, occurrence), batch.id(), task, dueOn, why);
    }

    static Due move(BatchCare batch, String occurrence, LocalDate dueOn, BatchCare.MoveAdvice advice) {
        return new Due(idOf(Task.MOVE, batch, occurrence), batch.id(), Task.MOVE, dueOn, advice.why(), advice.to());
    }

    private static String idOf(Task task, BatchCare batch, String occurrence) {
        String id = task.wireName() + "." + batch.id();
        return occurrence.isEmpty() ? id : id + "." + occurrence;
    }
}
