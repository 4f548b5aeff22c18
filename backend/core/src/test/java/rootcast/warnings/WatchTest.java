package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.warnings.ScriptedHouse.at;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.ledger.What;
import rootcast.rounds.OneHouse;
import rootcast.rounds.OneHouse.Story;
import rootcast.rounds.Task;
import rootcast.rounds.Treatment;

/** Limits are those of common practice (CP, no source): see the recipe's own test. */
class WatchTest {

    private static final int DAYS = 12;

    /** Cuttings cared for as they should be. */
    private static ScriptedHouse cuttings() {
        return ScriptedHouse.calm(7, 87, 83, 4, DAYS)
                .with(Story.of("A", at(0, 8)))
                .did(Task.PREVENTION, "A", 1, 8)
                .did(Task.SCOUTING, null, 1, 8)
                .did(Task.SCOUTING, null, 8, 8);
    }

    /** Vapour pressure deficit by hand from FAO-56: e° at 24.5 °C is 3.075 kPa (V2), of which 45 % is missing. */
    @Test
    void dryAirIsToldWithTheDeficitAndTheCuttingsItDries() {
        Warning warning = only(cuttings()
                .fault(Measured.AIR_C, 2, 11, 5, 24.5)
                .fault(Measured.HUMIDITY_PERCENT, 2, 11, 5, 55)
                .warningsUntil(3, 0));

        assertThat(warning.kind()).isEqualTo(WarningKind.DRY_DOWN);
        assertThat(warning.unit()).isEqualTo("kPa");
        assertThat(warning.worst()).isCloseTo(3.075 * 0.45, within(0.005));
        assertThat(warning.batches()).containsExactly("A");
        assertThat(warning.since()).isEqualTo(at(2, 11));
        assertThat(warning.raisedAt()).isEqualTo(at(2, 14));
        assertThat(warning.until()).isNull();
    }

    @Test
    void humidityAloneTellsWhereNoAirTemperatureIsMeasured() {
        Warning warning = only(cuttings()
                .without(Measured.AIR_C)
                .fault(Measured.HUMIDITY_PERCENT, 2, 11, 5, 70)
                .warningsUntil(3, 0));

        assertThat(warning.unit()).isEqualTo("%");
        assertThat(warning.worst()).isEqualTo(70);
        assertThat(warning.limit()).isEqualTo(80);
    }

    @Test
    void theSameAirAfterTheDaysOfFullMistIsNoDryDown() {
        assertThat(cuttings().fault(Measured.HUMIDITY_PERCENT, 5, 11, 5, 70).warningsUntil(6, 0))
                .isEmpty();
    }

    @Test
    void faultsOnThreeDaysInARowAreOneWarningThatEndsADayLater() {
        List<Warning> warnings = cuttings()
                .fault(Measured.LIGHT_UMOL, 4, 11, 3, 480)
                .fault(Measured.LIGHT_UMOL, 5, 11, 3, 500)
                .fault(Measured.LIGHT_UMOL, 6, 11, 3, 490)
                .warningsUntil(9, 0);

        Warning warning = only(warnings);
        assertThat(warning.kind()).isEqualTo(WarningKind.LIGHT_HIGH);
        assertThat(warning.worst()).isEqualTo(500);
        assertThat(warning.since()).isEqualTo(at(4, 11));
        assertThat(warning.until()).isEqualTo(at(6, 14));
    }

    /** Below 5 mol a day the medium of unrooted cuttings must not fall below 21 °C (CP); 20.5 °C is cold then and fine else. */
    @Test
    void lowLightRaisesTheLeastMedium() {
        ScriptedHouse bright = cuttings().fault(Measured.MEDIUM_C, 5, 0, 6, 20.5);
        ScriptedHouse dull =
                cuttings().fault(Measured.MEDIUM_C, 5, 0, 6, 20.5).fault(Measured.LIGHT_UMOL, 3, 0, 48, 20);

        assertThat(bright.warningsUntil(5, 8)).isEmpty();
        Warning warning = only(dull.warningsUntil(5, 8));
        assertThat(warning.kind()).isEqualTo(WarningKind.MEDIUM_COLD);
        assertThat(warning.limit()).isEqualTo(21);
    }

    @Test
    void coldNightsCountAndCoolDaysDoNot() {
        assertThat(cuttings().fault(Measured.AIR_C, 5, 8, 6, 18).warningsUntil(6, 0))
                .isEmpty();
        assertThat(only(cuttings().fault(Measured.AIR_C, 5, 0, 6, 18).warningsUntil(6, 0))
                        .kind())
                .isEqualTo(WarningKind.AIR_COLD);
    }

    @Test
    void aLevelSeenByHandHoldsForADay() {
        ScriptedHouse byHand = cuttings().without(Measured.MOISTURE_LEVEL).did(Task.MOISTURE_CHECK, "A", 5, 9, 2);

        Warning warning = only(byHand.warningsUntil(7, 0));

        assertThat(warning.kind()).isEqualTo(WarningKind.MEDIUM_DRY);
        assertThat(warning.since()).isEqualTo(at(5, 9));
        assertThat(warning.raisedAt()).isEqualTo(at(5, 13));
        assertThat(only(byHand.did(Task.MOISTURE_CHECK, "A", 5, 15, 4).warningsUntil(7, 0))
                        .until())
                .as("watered and looked at again")
                .isEqualTo(at(5, 15));
    }

    @Test
    void preventionThatNobodyRecordedIsMissedOnTheEighthDay() {
        ScriptedHouse house = ScriptedHouse.calm(7, 87, 83, 4, DAYS)
                .with(Story.of("A", at(0, 8)))
                .did(Task.SCOUTING, null, 1, 8)
                .did(Task.SCOUTING, null, 8, 8);

        assertThat(house.warningsUntil(7, 8)).isEmpty();
        Warning warning = only(house.warningsUntil(9, 0));
        assertThat(warning.kind()).isEqualTo(WarningKind.PREVENTION_MISSED);
        assertThat(warning.batch()).isEqualTo("A");
        assertThat(warning.since()).isEqualTo(at(7, 8));
        Treatment treatment = new Treatment(
                new UUID(0, 1),
                OneHouse.HOUSE,
                null,
                Treatment.Purpose.PREVENTION,
                "Guard 50",
                at(3, 8),
                Duration.ofHours(12));
        assertThat(house.with(treatment).warningsUntil(9, 0)).isEmpty();
    }

    private static ScriptedHouse unprevented(Story story) {
        return ScriptedHouse.calm(7, 87, 83, 4, DAYS)
                .with(story)
                .did(Task.SCOUTING, null, 1, 8)
                .did(Task.SCOUTING, null, 8, 8);
    }

    private static Treatment prevention(String house, @Nullable String batch, Instant at) {
        return new Treatment(
                new UUID(0, 2), house, batch, Treatment.Purpose.PREVENTION, "Guard 50", at, Duration.ofHours(12));
    }

    @Test
    void onlyWhatWasPutOnTheBatchIsItsPrevention() {
        Story story = Story.of("A", at(0, 8));

        assertThat(only(unprevented(story)
                                .with(prevention("H2", null, at(3, 8)))
                                .warningsUntil(9, 0))
                        .kind())
                .as("another house")
                .isEqualTo(WarningKind.PREVENTION_MISSED);
        assertThat(only(unprevented(story)
                                .with(prevention(OneHouse.HOUSE, "B", at(3, 8)))
                                .warningsUntil(9, 0))
                        .kind())
                .as("another batch of this house")
                .isEqualTo(WarningKind.PREVENTION_MISSED);
        assertThat(unprevented(story).with(prevention("H2", "A", at(3, 8))).warningsUntil(9, 0))
                .as("this batch by name")
                .isEmpty();
        assertThat(only(unprevented(story)
                                .with(prevention(OneHouse.HOUSE, null, at(-1, 8)))
                                .warningsUntil(9, 0))
                        .kind())
                .as("before it was stuck")
                .isEqualTo(WarningKind.PREVENTION_MISSED);
    }

    @Test
    void aBatchTreatedInTheHouseItStoodInThenStaysPreventedAfterAMove() {
        Story moved = Story.of("A", at(0, 8), "H2").write(at(4, 8), new What.Move(OneHouse.HOUSE));

        assertThat(unprevented(moved).with(prevention("H2", null, at(3, 8))).warningsUntil(9, 0))
                .extracting(Warning::kind)
                .doesNotContain(WarningKind.PREVENTION_MISSED);
        assertThat(unprevented(moved)
                        .with(prevention(OneHouse.HOUSE, null, at(3, 8)))
                        .warningsUntil(9, 0))
                .as("its house of today was treated before it came")
                .extracting(Warning::kind)
                .contains(WarningKind.PREVENTION_MISSED);
    }

    @Test
    void nightsAreWetForCuttingsThatStillNeedMistAndThatIsNoMistake() {
        ScriptedHouse mixed = ScriptedHouse.calm(7, 87, 83, 4, DAYS)
                .with(Story.of("old", at(-10, 8)).reached(Stage.CALLUS, at(-2, 8)))
                .did(Task.NIGHT_MIST_OFF, "old", -2, 9)
                .did(Task.PREVENTION, "old", -8, 9)
                .did(Task.SCOUTING, null, -9, 8)
                .did(Task.SCOUTING, null, -1, 8)
                .did(Task.SCOUTING, null, 6, 8)
                .fault(Measured.HUMIDITY_PERCENT, 2, 20, 10, 97);
        assertThat(only(mixed.warningsUntil(3, 12)).kind()).isEqualTo(WarningKind.NIGHT_MIST_ON);

        mixed.with(Story.of("fresh", at(0, 8))).did(Task.PREVENTION, "fresh", 1, 8);

        assertThat(mixed.warningsUntil(3, 12)).extracting(Warning::kind).doesNotContain(WarningKind.NIGHT_MIST_ON);
    }

    @Test
    void aHouseWithoutABatchIsNotWatched() {
        ScriptedHouse left = ScriptedHouse.calm(7, 87, 83, 4, DAYS)
                .with(Story.of("A", at(0, 8)).write(at(1, 8), new What.Move("elsewhere")))
                .fault(Measured.MEDIUM_C, 3, 0, 20, 12)
                .silent(Measured.AIR_C, 4, 0, 30);

        assertThat(left.warningsUntil(10, 0)).isEmpty();
    }

    @Test
    void aQuantityThatWasNeverMeasuredIsNotMissed() {
        assertThat(cuttings().without(Measured.LIGHT_UMOL).warningsUntil(6, 0)).isEmpty();
        Warning warning = only(cuttings().silent(Measured.LIGHT_UMOL, 5, 3, 40).warningsUntil(6, 0));
        assertThat(warning.kind()).isEqualTo(WarningKind.NO_READINGS);
        assertThat(warning.measured()).isEqualTo(Measured.LIGHT_UMOL);
        assertThat(warning.raisedAt()).isEqualTo(at(5, 6));
    }

    private static Warning only(List<Warning> warnings) {
        assertThat(warnings).hasSize(1);
        return warnings.get(0);
    }
}
