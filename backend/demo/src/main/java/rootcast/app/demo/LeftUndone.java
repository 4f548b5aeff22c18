package rootcast.app.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import rootcast.rounds.Task;

/** Takes out of rounds that were walked in full what the lines of seed/demo/rounds.csv say was left undone. */
final class LeftUndone {

    /** After one of them an earlier one is not asked for any more. */
    private static final Set<Task> MIST = EnumSet.of(Task.WEAN_MIST, Task.NIGHT_MIST_OFF, Task.MIST_OFF);

    private final DemoSetup setup;
    private final Instant startAt;
    private final BiPredicate<String, String> standsIn;
    private final List<DemoCare> cares;

    /** @param standsIn whether a batch stands alive in a house when the demo starts */
    LeftUndone(DemoSetup setup, Instant startAt, List<DemoCare> walked, BiPredicate<String, String> standsIn) {
        this.setup = setup;
        this.startAt = startAt;
        this.standsIn = standsIn;
        cares = new ArrayList<>(walked);
    }

    void tell(RoundStory story) {
        Predicate<DemoCare> itsTask = care -> care.task() == story.task();
        Predicate<DemoCare> itsHouse = itsTask.and(care -> care.house().equals(story.house()));
        LocalDate before = startDay(story.house()).minusDays(story.days());
        if (!story.isLeftUndone()) {
            latest(itsHouse.and(care -> !care.dueOn().isAfter(before))).ifPresent(care -> {
                double found = Double.parseDouble(story.found());
                cares.set(cares.indexOf(care), care.finding(DemoCare.Found.ec(found, story.why())));
            });
        } else if (cares.stream().anyMatch(itsHouse.and(care -> care.batch() == null))) {
            cares.removeIf(itsHouse.and(care -> !dayOf(care).isBefore(before)));
        } else {
            latest(itsTask.and(care -> !care.dueOn().isAfter(before))
                            .and(care -> standsIn.test(care.batch(), story.house()))
                            .and(care -> !isOvertaken(care)))
                    .ifPresent(last ->
                            cares.removeIf(itsTask.and(care -> last.batch().equals(care.batch()))));
        }
    }

    List<DemoCare> told() {
        return cares;
    }

    private boolean isOvertaken(DemoCare care) {
        return MIST.contains(care.task())
                && cares.stream()
                        .anyMatch(later -> MIST.contains(later.task())
                                && later.task().compareTo(care.task()) > 0
                                && later.batch().equals(care.batch()));
    }

    private Optional<DemoCare> latest(Predicate<DemoCare> which) {
        return cares.stream()
                .filter(which)
                .max(Comparator.comparing(DemoCare::dueOn).thenComparing(DemoCare::at));
    }

    private LocalDate startDay(String house) {
        return setup.site(setup.house(house).site()).site().dayOf(startAt);
    }

    private LocalDate dayOf(DemoCare care) {
        return setup.site(care.site()).site().dayOf(care.at());
    }
}
