package rootcast.app.demo;

import java.util.List;
import rootcast.app.crop.SeedTable;
import rootcast.rounds.Task;

/**
 * One line of seed/demo/rounds.csv: what of the rounds went another way than usual.
 *
 * @param days  so many days ago at the latest
 * @param found what a measurement of then showed, in the unit of its task; empty if the task was left undone: in the
 *              whole house, or for the batch there that came to need it last
 * @param why   why that was so
 */
record RoundStory(Task task, String house, int days, String found, String why) {

    static List<RoundStory> all(List<SeedTable.Row> rows) {
        return rows.stream()
                .map(row -> new RoundStory(
                        Task.ofWireName(row.text("task")).orElseThrow(),
                        row.text("house"),
                        row.number("days"),
                        row.text("found"),
                        row.text("why")))
                .toList();
    }

    boolean isLeftUndone() {
        return found.isEmpty();
    }
}
