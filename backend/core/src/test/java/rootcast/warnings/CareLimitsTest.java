package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.warnings.ScriptedHouse.at;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.crop.Stage;
import rootcast.ledger.What;
import rootcast.rounds.OneHouse;
import rootcast.rounds.OneHouse.Story;
import rootcast.rounds.Task;

/** When care that was left undone is told of, to the hour; days of grace are common practice (CP, no source). */
class CareLimitsTest {

    private static final int DAYS = 30;

    private static ScriptedHouse house(Story story) {
        return ScriptedHouse.calm(7, 82, 70, 3.5, DAYS).with(story);
    }

    /** Stuck ten days before the start, callused at 08:00 of the first day. */
    private static Story callused() {
        return Story.of("B", at(-10, 8)).reached(Stage.CALLUS, at(0, 8));
    }

    private static Story rooted() {
        return callused().reached(Stage.ROOT, at(9, 8));
    }

    private static Stream<Warning> of(WarningKind kind, ScriptedHouse house, int day, int hour) {
        return house.warningsUntil(day, hour).stream().filter(warning -> warning.kind() == kind);
    }

    @Test
    void mistNotWeanedIsToldTwoDaysAfterCallus() {
        assertThat(of(WarningKind.MIST_NOT_WEANED, house(callused()), 2, 8)).isEmpty();
        assertThat(of(WarningKind.MIST_NOT_WEANED, house(callused()), 2, 9))
                .singleElement()
                .satisfies(warning -> {
                    assertThat(warning.since()).isEqualTo(at(2, 8));
                    assertThat(warning.raisedAt()).isEqualTo(at(2, 9));
                    assertThat(warning.batch()).isEqualTo("B");
                    assertThat(warning.batches()).containsExactly("B");
                    assertThat(warning.worst()).isNull();
                    assertThat(warning.limit()).isNull();
                    assertThat(warning.unit()).isEmpty();
                });
    }

    /** Rooting asks for nights without mist: longer pauses are not enough, mist off altogether is. */
    @ParameterizedTest(name = "after {0} it is still told: {1}")
    @CsvSource({"WEAN_MIST, true", "NIGHT_MIST_OFF, false", "MIST_OFF, false", "TONE, true"})
    void theLeastMistThatWasRecordedDecides(Task done, boolean told) {
        ScriptedHouse house = house(callused()).did(done, "B", 1, 8);

        assertThat(of(WarningKind.MIST_NOT_WEANED, house, 3, 0).findAny().isPresent())
                .isEqualTo(told);
    }

    @Test
    void itEndsWithTheHourInWhichMistWasTakenOffAndNotByAnotherBatchs() {
        ScriptedHouse house = house(callused()).did(Task.NIGHT_MIST_OFF, "other", 2, 12);
        assertThat(of(WarningKind.MIST_NOT_WEANED, house, 4, 0))
                .singleElement()
                .satisfies(warning -> assertThat(warning.until()).isNull());

        house.did(Task.NIGHT_MIST_OFF, "B", 3, 10);
        assertThat(of(WarningKind.MIST_NOT_WEANED, house, 4, 0))
                .singleElement()
                .satisfies(warning -> assertThat(warning.until()).isEqualTo(at(3, 10)));
    }

    @Test
    void noFeedIsToldThreeDaysAfterRootsAndUntilItWasFed() {
        assertThat(of(WarningKind.NO_FEED, house(rooted()), 12, 8)).isEmpty();
        assertThat(of(WarningKind.NO_FEED, house(rooted()), 12, 9))
                .singleElement()
                .satisfies(warning -> assertThat(warning.since()).isEqualTo(at(12, 8)));
        assertThat(of(WarningKind.NO_FEED, house(rooted()).did(Task.FEED_STEP, "B", 13, 6), 14, 0))
                .singleElement()
                .satisfies(warning -> assertThat(warning.until()).isEqualTo(at(13, 6)));
        assertThat(of(WarningKind.NO_FEED, house(rooted()).did(Task.FEED_STEP, "other", 10, 6), 14, 0))
                .hasSize(1);
        assertThat(of(WarningKind.NO_FEED, house(rooted()).did(Task.TONE, "B", 10, 6), 14, 0))
                .hasSize(1);
        assertThat(of(WarningKind.NO_FEED, house(rooted()).did(Task.FEED_STEP, "B", 5, 6), 14, 0))
                .as("fed before it had roots")
                .isEmpty();
    }

    @Test
    void aBatchSeenReadyAtOnceWasRootedToo() {
        Story ready = Story.of("B", at(-10, 8)).reached(Stage.READY, at(2, 8));

        assertThat(of(WarningKind.NO_FEED, house(ready), 5, 8)).isEmpty();
        assertThat(of(WarningKind.NO_FEED, house(ready), 5, 9)).hasSize(1);
        assertThat(of(WarningKind.NO_FEED, house(callused()), 20, 0)).isEmpty();
    }

    @Test
    void preventionIsMissedForTheSecondWeekOnly() {
        ScriptedHouse house = house(Story.of("B", at(0, 8)));

        assertThat(of(WarningKind.PREVENTION_MISSED, house, 7, 8)).isEmpty();
        assertThat(of(WarningKind.PREVENTION_MISSED, house, 7, 9)).hasSize(1);
        assertThat(of(WarningKind.PREVENTION_MISSED, house, 14, 12))
                .singleElement()
                .satisfies(warning -> {
                    assertThat(warning.since()).isEqualTo(at(7, 8));
                    assertThat(warning.until()).isEqualTo(at(14, 8));
                });
        assertThat(of(WarningKind.PREVENTION_MISSED, house.did(Task.PREVENTION, "B", 9, 7), 12, 0))
                .singleElement()
                .satisfies(warning -> assertThat(warning.until()).isEqualTo(at(9, 7)));
    }

    /** The first walk is due a day after the first batch came, then weekly; two days later it is missed. */
    @Test
    void scoutingIsMissedTwoDaysAfterItWasDue() {
        ScriptedHouse house = house(Story.of("B", at(0, 8))).with(Story.of("C", at(1, 8)));

        assertThat(of(WarningKind.SCOUTING_MISSED, house, 3, 8)).isEmpty();
        assertThat(of(WarningKind.SCOUTING_MISSED, house, 3, 9)).singleElement().satisfies(warning -> {
            assertThat(warning.since()).isEqualTo(at(3, 8));
            assertThat(warning.batches()).containsExactly("B", "C");
            assertThat(warning.batch()).isNull();
        });
        house.did(Task.SCOUTING, null, 2, 8);
        assertThat(of(WarningKind.SCOUTING_MISSED, house, 11, 8)).isEmpty();
        assertThat(of(WarningKind.SCOUTING_MISSED, house, 11, 9))
                .singleElement()
                .satisfies(warning -> assertThat(warning.since()).isEqualTo(at(11, 8)));
    }

    @Test
    void scoutingCountsFromWhenABatchWasCarriedIn() {
        Story carried = Story.of("B", at(-9, 8), "H2").write(at(2, 8), new What.Move(OneHouse.HOUSE));
        ScriptedHouse scoutedBefore = house(carried).did(Task.SCOUTING, null, 1, 8);

        assertThat(of(WarningKind.SCOUTING_MISSED, scoutedBefore, 5, 8)).isEmpty();
        assertThat(of(WarningKind.SCOUTING_MISSED, scoutedBefore, 5, 9)).hasSize(1);
        assertThat(of(WarningKind.SCOUTING_MISSED, house(Story.of("B", at(-9, 8), "H2")), 20, 0))
                .as("it stands elsewhere")
                .isEmpty();
    }

    @Test
    void readingsAreMissedAfterThreeHoursOnceAProbeHasReportedForSixInARow() {
        ScriptedHouse house = house(callused()).silent(Measured.AIR_C, 1, 3, 3);

        assertThat(of(WarningKind.NO_READINGS, house, 1, 5)).isEmpty();
        assertThat(of(WarningKind.NO_READINGS, house, 2, 0)).singleElement().satisfies(warning -> {
            assertThat(warning.measured()).isEqualTo(Measured.AIR_C);
            assertThat(warning.since()).isEqualTo(at(1, 3));
            assertThat(warning.raisedAt()).isEqualTo(at(1, 6));
            assertThat(warning.until()).isEqualTo(at(1, 6));
            assertThat(warning.batches()).containsExactly("B");
        });
        assertThat(of(WarningKind.NO_READINGS, house(callused()).without(Measured.MEDIUM_C), 5, 0))
                .isEmpty();
        assertThat(of(
                        WarningKind.NO_READINGS,
                        house(callused()).without(Measured.MEDIUM_C).fault(Measured.MEDIUM_C, 2, 0, 6, 22),
                        5,
                        0))
                .singleElement()
                .satisfies(warning -> assertThat(warning.since()).isEqualTo(at(2, 6)));
        assertThat(of(
                        WarningKind.NO_READINGS,
                        house(callused()).without(Measured.MEDIUM_C).fault(Measured.MEDIUM_C, 2, 0, 5, 22),
                        5,
                        0))
                .as("a thermometer read by hand is not silent in between")
                .isEmpty();
        assertThat(of(WarningKind.NO_READINGS, house(callused()).without(Measured.MOISTURE_LEVEL), 5, 0))
                .as("a level is often seen by hand")
                .isEmpty();
    }

    /** FAO-56 by hand: at 24.5 °C and 55 % the air lacks 1.38 kPa, at 90 % 0.31. */
    @Test
    void dryHoursAreThoseWithAMeasuredDeficitOverTheLimit() {
        HouseHours hours = (measured, hour) -> switch (measured) {
            case AIR_C -> hour == 3 ? Double.NaN : 24.5;
            case HUMIDITY_PERCENT -> new double[] {55, 90, Double.NaN, 55, 0, 101, 55, 55}[(int) hour];
            default -> Double.NaN;
        };

        assertThat(DryAir.hours(hours, 1.0, 0, 7)).as("hours 0 and 6").isEqualTo(2);
        assertThat(DryAir.hours(hours, 1.5, 0, 8)).isZero();
        assertThat(DryAir.hours(hours, 0.2, 1, 2)).isEqualTo(1);
        assertThat(DryAir.hours((measured, hour) -> measured == Measured.AIR_C ? 20 : 100, 0, 0, 5))
                .as("saturated air lacks nothing")
                .isZero();
    }

    @Test
    void aDayWasDryFromThreeHoursOn() {
        HouseHours threeDry =
                (measured, hour) -> measured == Measured.AIR_C ? 24.5 : hour == 0 || hour == 7 || hour == 23 ? 55 : 90;

        assertThat(DryAir.wasDry(threeDry, 1.0, 24)).isTrue();
        assertThat(DryAir.wasDry(threeDry, 1.0, 25))
                .as("the first is over a day ago")
                .isFalse();
        assertThat(DryAir.wasDry(threeDry, 1.0, 23)).as("the last still runs").isFalse();
    }

    @Test
    void kindsGoByTheirWordsOutside() {
        assertThat(WarningKind.AIR_WET.wireName()).isEqualTo("air-wet");
        assertThat(WarningKind.MIST_NOT_WEANED.wireName()).isEqualTo("mist-not-weaned");
        assertThat(Measured.HUMIDITY_PERCENT.wireName()).isEqualTo("relative-humidity");
    }

    @Test
    void twoWarningsAreOneOnlyIfAllThatTheyAreAboutIsTheSame() {
        Warning cold = warning(WarningKind.MEDIUM_COLD, "H1", "A", null, at(0, 0), at(0, 5));

        assertThat(cold.isAboutTheSameAs(warning(WarningKind.MEDIUM_COLD, "H1", "A", null, at(9, 0), null)))
                .isTrue();
        assertThat(cold.isAboutTheSameAs(warning(WarningKind.AIR_COLD, "H1", "A", null, at(0, 0), null)))
                .isFalse();
        assertThat(cold.isAboutTheSameAs(warning(WarningKind.MEDIUM_COLD, "H2", "A", null, at(0, 0), null)))
                .isFalse();
        assertThat(cold.isAboutTheSameAs(warning(WarningKind.MEDIUM_COLD, "H1", "B", null, at(0, 0), null)))
                .isFalse();
        assertThat(cold.isAboutTheSameAs(warning(WarningKind.MEDIUM_COLD, "H1", "A", Measured.AIR_C, at(0, 0), null)))
                .isFalse();
    }

    @Test
    void theyShareAMomentUnlessOneEndsBeforeTheOtherBegins() {
        Warning first = warning(WarningKind.MEDIUM_COLD, "H1", null, null, at(0, 2), at(0, 5));

        assertThat(first.overlaps(warning(WarningKind.MEDIUM_COLD, "H1", null, null, at(0, 4), at(0, 9))))
                .isTrue();
        assertThat(first.overlaps(warning(WarningKind.MEDIUM_COLD, "H1", null, null, at(0, 5), null)))
                .isFalse();
        assertThat(first.overlaps(warning(WarningKind.MEDIUM_COLD, "H1", null, null, at(0, 0), at(0, 2))))
                .isFalse();
        assertThat(first.overlaps(warning(WarningKind.MEDIUM_COLD, "H1", null, null, at(0, 0), null)))
                .isTrue();
    }

    private static Warning warning(
            WarningKind kind,
            String house,
            @Nullable String batch,
            @Nullable Measured measured,
            Instant since,
            @Nullable Instant until) {
        return new Warning(kind, house, batch, measured, since, since, until, null, null, "", List.of());
    }
}
