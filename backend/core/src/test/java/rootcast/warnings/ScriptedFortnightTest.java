package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.warnings.ScriptedHouse.at;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.rounds.OneHouse.Story;
import rootcast.rounds.Task;
import rootcast.warnings.WarningLog.Change;
import rootcast.warnings.WarningLog.Logged;

/**
 * Two weeks in three houses, hour by hour as they would pass, with ten faults planted in calm weather. Each is warned of
 * once and in time; nothing else is warned of.
 */
class ScriptedFortnightTest {

    private static final int DAYS = 14;
    private static final long SEED = 20260302;

    /** Fresh cuttings under mist, stuck at the start; callus is not seen before the fortnight is over. */
    private static ScriptedHouse cuttings() {
        return ScriptedHouse.calm(SEED, 87, 83, 4, DAYS)
                .with(Story.of("A", at(0, 8)))
                .did(Task.PREVENTION, "A", 2, 8)
                .did(Task.SCOUTING, null, 1, 8)
                .did(Task.SCOUTING, null, 8, 8)
                // mist failure: humidity falls on the third day
                .fault(Measured.HUMIDITY_PERCENT, 2, 11, 6, 55)
                // probe off
                .silent(Measured.MEDIUM_C, 6, 2, 9)
                // mist valve stays open
                .fault(Measured.HUMIDITY_PERCENT, 9, 18, 20, 95);
    }

    /** Callused on the fourth day, roots on their way. */
    private static ScriptedHouse rooting() {
        return ScriptedHouse.calm(SEED + 1, 82, 70, 3.6, DAYS)
                .with(Story.of("B", at(-6, 8)).reached(Stage.CALLUS, at(3, 9)))
                .did(Task.PREVENTION, "B", -4, 8)
                .did(Task.SCOUTING, null, -5, 8)
                .did(Task.SCOUTING, null, 0, 8)
                .did(Task.FEED_STEP, "B", 3, 15)
                // heating fails over a night
                .fault(Measured.MEDIUM_C, 5, 22, 10, 18.5)
                // mist not weaned: recorded four days after callus
                .did(Task.NIGHT_MIST_OFF, "B", 7, 9)
                // shading stays open over noon
                .fault(Measured.LIGHT_UMOL, 9, 11, 4, 520)
                // scouting due on the eighth day is done on the twelfth
                .did(Task.SCOUTING, null, 11, 9);
    }

    /** Rooted on the fifth day. */
    private static ScriptedHouse filling() {
        return ScriptedHouse.calm(SEED + 2, 80, 65, 3.4, DAYS)
                .with(Story.of("C", at(-14, 8)).reached(Stage.CALLUS, at(-6, 9)).reached(Stage.ROOT, at(4, 9)))
                .did(Task.PREVENTION, "C", -12, 8)
                .did(Task.NIGHT_MIST_OFF, "C", -6, 12)
                .did(Task.SCOUTING, null, -13, 8)
                .did(Task.SCOUTING, null, -7, 8)
                .did(Task.SCOUTING, null, -1, 8)
                .did(Task.SCOUTING, null, 6, 8)
                .did(Task.SCOUTING, null, 13, 8)
                // fed only six days after roots
                .did(Task.FEED_STEP, "C", 10, 9)
                // a blocked drain: free water in the trays for 30 hours
                .fault(Measured.MOISTURE_LEVEL, 8, 9, 30, 5)
                // mist runs on through a night
                .fault(Measured.HUMIDITY_PERCENT, 10, 20, 10, 97);
    }

    /** @param latest by when it must have been told */
    private record Planted(String house, WarningKind kind, Instant begins, Instant latest) {
        static Planted fault(String house, WarningKind kind, Instant begins, int withinHours) {
            return new Planted(house, kind, begins, begins.plus(Duration.ofHours(withinHours)));
        }
    }

    private static final List<Planted> FAULTS = List.of(
            Planted.fault("cuttings", WarningKind.DRY_DOWN, at(2, 11), 3),
            Planted.fault("cuttings", WarningKind.NO_READINGS, at(6, 2), 3),
            Planted.fault("cuttings", WarningKind.OVER_MISTING, at(9, 18), 12),
            Planted.fault("rooting", WarningKind.MEDIUM_COLD, at(5, 22), 3),
            Planted.fault("rooting", WarningKind.MIST_NOT_WEANED, at(5, 9), 1),
            Planted.fault("rooting", WarningKind.LIGHT_HIGH, at(9, 11), 2),
            Planted.fault("rooting", WarningKind.SCOUTING_MISSED, at(9, 8), 1),
            Planted.fault("filling", WarningKind.NO_FEED, at(7, 9), 1),
            Planted.fault("filling", WarningKind.MEDIUM_SATURATED, at(8, 9), 6),
            Planted.fault("filling", WarningKind.NIGHT_MIST_ON, at(10, 20), 6));

    private static Map<String, ScriptedHouse> houses() {
        Map<String, ScriptedHouse> houses = new LinkedHashMap<>();
        houses.put("cuttings", cuttings());
        houses.put("rooting", rooting());
        houses.put("filling", filling());
        return houses;
    }

    @Test
    void eachPlantedFaultIsWarnedOfOnceAndInTimeAndNothingElseIs() {
        List<Planted> told = new ArrayList<>();
        houses().forEach((name, house) -> told.addAll(livedThrough(name, house)));

        assertThat(told)
                .as("seed %d", SEED)
                .extracting(warning -> warning.house() + " " + warning.kind())
                .containsExactlyInAnyOrderElementsOf(FAULTS.stream()
                        .map(fault -> fault.house() + " " + fault.kind())
                        .toList());
        for (Planted fault : FAULTS) {
            Planted warned = told.stream()
                    .filter(each -> each.house().equals(fault.house()) && each.kind() == fault.kind())
                    .findFirst()
                    .orElseThrow();
            assertThat(warned.begins()).as("%s begins", fault).isEqualTo(fault.begins());
            assertThat(warned.latest()).as("%s told", fault).isBetween(fault.begins(), fault.latest());
        }
    }

    @Test
    void everyFaultThatWasMendedIsOverAtTheEnd() {
        assertThat(houses().values().stream().flatMap(house -> house.warningsUntil(DAYS, 0).stream()))
                .isNotEmpty()
                .allSatisfy(
                        warning -> assertThat(warning.until()).as("%s", warning).isNotNull());
    }

    @Test
    void theSameFortnightWithoutFaultsIsSilent() {
        for (ScriptedHouse house : List.of(
                ScriptedHouse.calm(SEED, 87, 83, 4, DAYS)
                        .with(Story.of("A", at(0, 8)))
                        .did(Task.PREVENTION, "A", 2, 8)
                        .did(Task.SCOUTING, null, 1, 8)
                        .did(Task.SCOUTING, null, 8, 8),
                ScriptedHouse.calm(SEED + 1, 82, 70, 3.6, DAYS)
                        .with(Story.of("B", at(-6, 8)).reached(Stage.CALLUS, at(3, 9)))
                        .did(Task.PREVENTION, "B", -4, 8)
                        .did(Task.SCOUTING, null, -5, 8)
                        .did(Task.NIGHT_MIST_OFF, "B", 3, 15)
                        .did(Task.SCOUTING, null, 0, 8)
                        .did(Task.SCOUTING, null, 7, 8))) {
            assertThat(house.warningsUntil(DAYS, 0)).isEmpty();
        }
    }

    /** What was told hour by hour: when the trouble began, and the hour at whose end it was first known. */
    private static List<Planted> livedThrough(String name, ScriptedHouse house) {
        List<Logged> log = new ArrayList<>();
        List<Planted> told = new ArrayList<>();
        for (int hour = 1; hour <= DAYS * 24; hour++) {
            Instant now = at(0, hour);
            for (Change change : WarningLog.changes(log, house.warningsUntil(0, hour), now, Duration.ofDays(1))) {
                if (change.isNew()) {
                    log.add(new Logged(new UUID(1, told.size()), change.warning()));
                    told.add(new Planted(
                            name, change.warning().kind(), change.warning().since(), now));
                } else {
                    log.replaceAll(
                            each -> each.id().equals(change.id()) ? new Logged(each.id(), change.warning()) : each);
                }
            }
        }
        told.sort(Comparator.comparing(Planted::begins));
        return told;
    }
}
