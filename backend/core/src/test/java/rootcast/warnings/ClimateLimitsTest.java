package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.warnings.ScriptedHouse.at;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.crop.Stage;
import rootcast.rounds.OneHouse.Story;
import rootcast.rounds.Task;

/**
 * When each warning of the climate comes and goes, against the table of docs/models/recipes.md; limits are those of common
 * practice (CP, no source).
 */
class ClimateLimitsTest {

    private static final int DAYS = 12;

    /** Fresh cuttings, at the start of the second of 12 days. */
    private static ScriptedHouse cuttings() {
        return ScriptedHouse.calm(7, 87, 83, 4, DAYS)
                .with(Story.of("A", at(0, 8)))
                .did(Task.PREVENTION, "A", 1, 8)
                .did(Task.SCOUTING, null, 1, 8)
                .did(Task.SCOUTING, null, 8, 8);
    }

    /** Callused before the start, and weaned as it should be. */
    private static ScriptedHouse rooting() {
        return ScriptedHouse.calm(7, 82, 70, 3.5, DAYS)
                .with(Story.of("R", at(-10, 8)).reached(Stage.CALLUS, at(-2, 8)))
                .did(Task.NIGHT_MIST_OFF, "R", -2, 9)
                .did(Task.PREVENTION, "R", -8, 9)
                .did(Task.SCOUTING, null, -9, 8)
                .did(Task.SCOUTING, null, -1, 8)
                .did(Task.SCOUTING, null, 6, 8);
    }

    /** Rooted before the start: no mist at any hour. */
    private static ScriptedHouse filling() {
        return ScriptedHouse.calm(7, 80, 65, 3.5, DAYS)
                .with(Story.of("F", at(-20, 8))
                        .reached(Stage.CALLUS, at(-12, 8))
                        .reached(Stage.ROOT, at(-3, 8)))
                .did(Task.NIGHT_MIST_OFF, "F", -12, 9)
                .did(Task.FEED_STEP, "F", -2, 9)
                .did(Task.SCOUTING, null, -1, 8)
                .did(Task.SCOUTING, null, 6, 8);
    }

    private static ScriptedHouse house(String which) {
        return switch (which) {
            case "cuttings" -> cuttings();
            case "no air" -> cuttings().without(Measured.AIR_C);
            case "rooting" -> rooting();
            default -> filling();
        };
    }

    private static List<Warning> of(WarningKind kind, List<Warning> warnings) {
        return warnings.stream().filter(warning -> warning.kind() == kind).toList();
    }

    @ParameterizedTest(name = "{0} in a house of {1}: {6} bad hours, not one fewer")
    @CsvSource({
        "DRY_DOWN,         no air,   HUMIDITY_PERCENT, 1, 10, 70,   3",
        "MEDIUM_DRY,       cuttings, MOISTURE_LEVEL,   1, 10, 3.2,  4",
        "OVER_MISTING,     cuttings, HUMIDITY_PERCENT, 1, 6,  95,   12",
        "OVER_MISTING,     cuttings, MOISTURE_LEVEL,   1, 6,  4.8,  12",
        "MEDIUM_SATURATED, rooting,  MOISTURE_LEVEL,   1, 6,  4.8,  6",
        "MEDIUM_SATURATED, filling,  MOISTURE_LEVEL,   1, 6,  4.8,  6",
        "MEDIUM_COLD,      cuttings, MEDIUM_C,         1, 10, 18,   3",
        "AIR_COLD,         cuttings, AIR_C,            1, 20, 18,   3",
        "AIR_COLD,         cuttings, AIR_C,            2, 0,  18,   3",
        "LIGHT_HIGH,       cuttings, LIGHT_UMOL,       1, 11, 500,  2",
        "NIGHT_MIST_ON,    rooting,  HUMIDITY_PERCENT, 1, 20, 97,   6",
        "AIR_WET,          rooting,  HUMIDITY_PERCENT, 1, 10, 98,   24",
        "AIR_WET,          filling,  HUMIDITY_PERCENT, 1, 10, 98,   24",
    })
    void isRaisedAtTheEndOfItsLastBadHour(
            WarningKind kind, String which, Measured measured, int day, int hour, double value, int hours) {
        List<Warning> tooShort =
                house(which).fault(measured, day, hour, hours - 1, value).warningsUntil(day, hour + hours - 1);
        List<Warning> longEnough =
                house(which).fault(measured, day, hour, hours, value).warningsUntil(day, hour + hours);

        assertThat(of(kind, tooShort)).isEmpty();
        assertThat(of(kind, longEnough)).singleElement().satisfies(warning -> {
            assertThat(warning.since()).isEqualTo(at(day, hour));
            assertThat(warning.raisedAt()).isEqualTo(at(day, hour + hours));
            assertThat(warning.worst()).isEqualTo(value);
            assertThat(warning.until()).isNull();
        });
    }

    /** Inside the limit but within the margin (0.3 °C, 2 %, 0.1 level, 5 % of the light) it is not yet over. */
    @ParameterizedTest(name = "{0}: {6} is within the margin")
    @CsvSource({
        "DRY_DOWN,         cuttings, HUMIDITY_PERCENT, 1, 10, 70,  81.5",
        "MEDIUM_DRY,       cuttings, MOISTURE_LEVEL,   1, 10, 3.2, 3.55",
        "OVER_MISTING,     cuttings, HUMIDITY_PERCENT, 1, 10, 95,  88.5",
        "OVER_MISTING,     cuttings, MOISTURE_LEVEL,   1, 10, 4.8, 4.45",
        "MEDIUM_SATURATED, rooting,  MOISTURE_LEVEL,   1, 10, 4.8, 4.45",
        "MEDIUM_COLD,      cuttings, MEDIUM_C,         1, 10, 18,  20.2",
        "AIR_COLD,         cuttings, AIR_C,            1, 10, 18,  20.2",
        "LIGHT_HIGH,       cuttings, LIGHT_UMOL,       1, 10, 500, 290",
        "NIGHT_MIST_ON,    rooting,  HUMIDITY_PERCENT, 1, 10, 97,  88.5",
        "AIR_WET,          rooting,  HUMIDITY_PERCENT, 1, 10, 98,  88.5",
    })
    void lastsWhileTheValueIsWithinTheMargin(
            WarningKind kind, String which, Measured measured, int day, int hour, double bad, double within) {
        List<Warning> still = house(which)
                .fault(measured, day, hour, 30, bad)
                .fault(measured, day, hour + 30, 60, within)
                .warningsUntil(day, hour + 90);

        assertThat(of(kind, still))
                .singleElement()
                .satisfies(warning -> assertThat(warning.until()).isNull());
    }

    @Test
    void aColdMediumIsOverOnlyFromTheHourThatIsClearOfTheLimit() {
        ScriptedHouse house =
                cuttings().fault(Measured.MEDIUM_C, 3, 0, 4, 18.5).fault(Measured.MEDIUM_C, 3, 4, 30, 20.2);

        assertThat(house.warningsUntil(6, 0)).singleElement().satisfies(warning -> {
            assertThat(warning.kind()).isEqualTo(WarningKind.MEDIUM_COLD);
            assertThat(warning.until()).isEqualTo(at(4, 10));
        });
    }

    @Test
    void nightIsFromEightInTheEveningToSixInTheMorning() {
        assertThat(cuttings().fault(Measured.AIR_C, 1, 6, 14, 18).warningsUntil(2, 12))
                .isEmpty();
        assertThat(cuttings().fault(Measured.AIR_C, 1, 18, 4, 18).warningsUntil(2, 12))
                .as("two night hours")
                .isEmpty();
        assertThat(cuttings().fault(Measured.AIR_C, 2, 4, 10, 18).warningsUntil(2, 18))
                .as("two night hours")
                .isEmpty();
        assertThat(cuttings().fault(Measured.AIR_C, 2, 3, 3, 18).warningsUntil(2, 18))
                .extracting(Warning::kind)
                .containsExactly(WarningKind.AIR_COLD);
    }

    @Test
    void airWetForDaysIsWarnedOfWhileRootsForm() {
        ScriptedHouse house = rooting().fault(Measured.HUMIDITY_PERCENT, 2, 6, 72, 98);

        assertThat(of(WarningKind.AIR_WET, house.warningsUntil(7, 0)))
                .singleElement()
                .satisfies(warning -> {
                    assertThat(warning.batches()).containsExactly("R");
                    assertThat(warning.limit()).isEqualTo(90);
                    assertThat(warning.unit()).isEqualTo("%");
                    assertThat(warning.since()).isEqualTo(at(2, 6));
                    assertThat(warning.until()).isEqualTo(at(5, 6));
                });
    }

    @Test
    void aDryNoonBreaksTheWetness() {
        ScriptedHouse house =
                rooting().fault(Measured.HUMIDITY_PERCENT, 2, 6, 72, 98).fault(Measured.HUMIDITY_PERCENT, 3, 5, 1, 80);

        assertThat(of(WarningKind.AIR_WET, house.warningsUntil(4, 4))).isEmpty();
        assertThat(of(WarningKind.AIR_WET, house.warningsUntil(4, 6))).hasSize(1);
    }

    /** Who is under mist is over-misting's; who stands beside it suffers as well and is told of by his own limit. */
    @Test
    void besideBatchesUnderMistOnlyTheOthersAreCalledWet() {
        ScriptedHouse mixed = cuttings()
                .with(Story.of("F", at(-20, 8))
                        .reached(Stage.CALLUS, at(-12, 8))
                        .reached(Stage.ROOT, at(-3, 8)))
                .fault(Measured.HUMIDITY_PERCENT, 2, 6, 48, 98);
        List<Warning> warnings = mixed.warningsUntil(4, 6);

        assertThat(of(WarningKind.AIR_WET, warnings))
                .singleElement()
                .satisfies(warning -> assertThat(warning.batches()).containsExactly("F"));
        assertThat(of(WarningKind.OVER_MISTING, warnings))
                .singleElement()
                .satisfies(warning -> assertThat(warning.batches()).containsExactly("A"));
        assertThat(of(
                        WarningKind.AIR_WET,
                        cuttings()
                                .fault(Measured.HUMIDITY_PERCENT, 2, 6, 48, 98)
                                .warningsUntil(4, 6)))
                .isEmpty();
    }
}
