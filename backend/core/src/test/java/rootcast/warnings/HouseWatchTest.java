package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rootcast.rounds.OneHouse;
import rootcast.rounds.OneHouse.Story;
import rootcast.rounds.Task;
import rootcast.rounds.Treatment;

/** Warnings that are kept are those that a fresh look would find. */
class HouseWatchTest {

    private static final Instant NOW = ScriptedHouse.at(9, 10).plus(Duration.ofMinutes(14));

    private final HouseWatch watch = new HouseWatch();
    private final ScriptedHouse house = ScriptedHouse.calm(7, 87, 83, 4, 12)
            .with(Story.of("A", ScriptedHouse.at(0, 8)))
            .fault(Measured.MEDIUM_C, 8, 0, 30, 18.5);

    @Test
    void whileNothingChangesTheSameListIsGiven() {
        List<Warning> first = house.warningsAt(watch, NOW);

        assertThat(first).extracting(Warning::kind).contains(WarningKind.MEDIUM_COLD, WarningKind.SCOUTING_MISSED);
        assertThat(house.warningsAt(watch, NOW.plus(Duration.ofMinutes(30)))).isSameAs(first);
    }

    @ParameterizedTest
    @MethodSource("changes")
    void whateverItRestsOnMayChange(String what, Consumer<ScriptedHouse> change) {
        List<Warning> before = house.warningsAt(watch, NOW);

        change.accept(house);

        assertThat(house.warningsAt(watch, NOW))
                .as(what)
                .isEqualTo(house.warningsAt(NOW))
                .isNotEqualTo(before);
    }

    static List<Arguments> changes() {
        return List.of(
                change("care of the house", house -> house.did(Task.SCOUTING, null, NOW.minusSeconds(60), null)),
                change("care of a batch", house -> house.did(Task.PREVENTION, "A", NOW.minusSeconds(60), null)),
                change("late readings", house -> house.fault(Measured.MEDIUM_C, 8, 3, 2, 17)),
                change("readings that fail", house -> house.silent(Measured.AIR_C, 9, 1, 9)),
                change("a batch", house -> house.with(Story.of("B", ScriptedHouse.at(1, 8)))),
                change(
                        "a treatment",
                        house -> house.with(new Treatment(
                                new UUID(0, 1),
                                OneHouse.HOUSE,
                                "A",
                                Treatment.Purpose.PREVENTION,
                                "as its label says",
                                NOW.minusSeconds(60),
                                Duration.ZERO))));
    }

    private static Arguments change(String what, Consumer<ScriptedHouse> change) {
        return Arguments.of(what, change);
    }

    @Test
    void theNextHourIsLookedAt() {
        house.warningsAt(watch, NOW);
        Instant later = ScriptedHouse.at(9, 13);

        assertThat(house.warningsAt(watch, later)).isEqualTo(house.warningsAt(later));
    }

    /** The span is two weeks: from 10:00 of the fifth day before the start, in which three cold hours make a warning. */
    @Test
    void theFirstHourOfTheSpanIsLookedAt() {
        ScriptedHouse coldAtFirst = ScriptedHouse.calm(7, 87, 83, 4, 12)
                .with(Story.of("A", ScriptedHouse.at(-10, 8)))
                .fault(Measured.MEDIUM_C, -5, 10, 3, 18);

        assertThat(coldAtFirst.warningsAt(watch, NOW))
                .filteredOn(warning -> warning.kind() == WarningKind.MEDIUM_COLD)
                .extracting(Warning::since)
                .containsExactly(ScriptedHouse.at(-5, 10));
    }
}
