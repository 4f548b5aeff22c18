package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.ledger.What;
import rootcast.rounds.OneHouse.Story;
import rootcast.rounds.Task;

/** A warning goes when what it asks for is done, not hours later, and names only who is there. */
class SettledWarningsTest {

    private static final int DAYS = 12;

    private static Instant at(int day, int hour) {
        return ScriptedHouse.at(day, hour);
    }

    private static Instant at(int day, int hour, int minute) {
        return ScriptedHouse.at(day, hour).plus(Duration.ofMinutes(minute));
    }

    private static ScriptedHouse house(Story story) {
        return ScriptedHouse.calm(7, 87, 83, 4, DAYS).with(story);
    }

    private static ScriptedHouse caredFor(Story story, String batch) {
        return house(story).did(Task.PREVENTION, batch, 1, 8).did(Task.SCOUTING, null, 1, 8);
    }

    @Test
    void scoutingThatIsDoneIsNotOverdueAMinuteLater() {
        ScriptedHouse house = house(Story.of("A", at(0, 8)));
        assertThat(house.warningsAt(at(4, 10, 14)))
                .extracting(Warning::kind, Warning::until)
                .containsExactly(tuple(WarningKind.SCOUTING_MISSED, null));

        house.did(Task.SCOUTING, null, at(4, 10, 13), null);

        assertThat(house.warningsAt(at(4, 10, 14))).extracting(Warning::until).containsExactly(at(4, 10, 13));
        assertThat(house.warningsAt(at(4, 13, 0)))
                .as("the same hours later")
                .extracting(Warning::until)
                .containsExactly(at(4, 10, 13));
    }

    @Test
    void mistThatWasTakenOffIsWeanedAtOnce() {
        Story story = Story.of("A", at(0, 8)).reached(Stage.CALLUS, at(5, 8));
        ScriptedHouse house = caredFor(story, "A").did(Task.SCOUTING, null, 8, 8);
        assertThat(house.warningsAt(at(8, 10, 30)))
                .filteredOn(warning -> warning.kind() == WarningKind.MIST_NOT_WEANED)
                .extracting(Warning::until)
                .containsExactly((Instant) null);

        house.did(Task.MIST_OFF, "A", at(8, 10, 20), null);

        assertThat(house.warningsAt(at(8, 10, 30)))
                .filteredOn(warning -> warning.kind() == WarningKind.MIST_NOT_WEANED)
                .extracting(Warning::until)
                .containsExactly(at(8, 10, 20));
    }

    @Test
    void aBatchThatWasCarriedOutTakesItsWarningsWithIt() {
        Story story = Story.of("A", at(0, 8)).reached(Stage.CALLUS, at(5, 8)).write(at(8, 10, 20), new What.Move("H2"));

        assertThat(caredFor(story, "A").warningsAt(at(8, 10, 30)))
                .filteredOn(warning -> warning.kind() == WarningKind.MIST_NOT_WEANED)
                .extracting(Warning::until)
                .containsExactly(at(8, 10, 20));
    }

    /** Light warnings take a day of fine hours to end: with nobody left whom it burns they end with the last batch. */
    @Test
    void whatLastsNamesOnlyBatchesThatAreStillThere() {
        Story stays = Story.of("A", at(0, 8));
        Story leaves = Story.of("B", at(0, 8)).write(at(4, 14, 10), new What.Move("H2"));
        ScriptedHouse both = caredFor(stays, "A")
                .with(leaves)
                .did(Task.PREVENTION, "B", 1, 8)
                .fault(Measured.LIGHT_UMOL, 4, 11, 3, 480);
        ScriptedHouse alone = caredFor(leaves, "B").fault(Measured.LIGHT_UMOL, 4, 11, 3, 480);

        assertThat(both.warningsAt(at(4, 14, 5))).extracting(Warning::batches).containsExactly(List.of("A", "B"));
        assertThat(both.warningsAt(at(4, 14, 15))).extracting(Warning::batches).containsExactly(List.of("A"));
        assertThat(both.warningsAt(at(4, 14, 15))).extracting(Warning::until).containsExactly((Instant) null);
        assertThat(alone.warningsAt(at(4, 14, 15)))
                .extracting(Warning::batches, Warning::until)
                .containsExactly(tuple(List.of("B"), at(4, 14)));
        assertThat(alone.warningsAt(at(4, 18, 0))).extracting(Warning::until).containsExactly(at(4, 15));
    }

    @Test
    void oneLookThatFindsTheMoistureRightEndsWhatLooksHadRaised() {
        ScriptedHouse byHand = caredFor(Story.of("A", at(0, 8)), "A")
                .without(Measured.MOISTURE_LEVEL)
                .did(Task.MOISTURE_CHECK, "A", at(5, 9), 2);
        assertThat(byHand.warningsAt(at(5, 15, 10))).extracting(Warning::until).containsExactly((Instant) null);

        byHand.did(Task.MOISTURE_CHECK, "A", at(5, 15, 5), 4);

        assertThat(byHand.warningsAt(at(5, 15, 10))).extracting(Warning::until).containsExactly(at(5, 15));
        assertThat(byHand.did(Task.MOISTURE_CHECK, "A", at(5, 15, 40), 2).warningsAt(at(5, 15, 45)))
                .as("the last look of the hour counts")
                .extracting(Warning::until)
                .containsExactly((Instant) null);
    }

    @Test
    void theEvidenceIsWhatTheRuleSawHourByHour() {
        ScriptedHouse byHand = caredFor(Story.of("A", at(0, 8)), "A")
                .without(Measured.MOISTURE_LEVEL)
                .did(Task.MOISTURE_CHECK, "A", at(5, 9), 2);
        Warning dry = byHand.warningsAt(at(5, 15, 10)).get(0);

        assertThat(dry.kind()).isEqualTo(WarningKind.MEDIUM_DRY);
        assertThat(byHand.seen(dry, 5, 8, 3))
                .as("nothing before the look; level 4 is asked for, half a level is granted (CP)")
                .containsExactly(new Watch.Seen(at(5, 9), 2, 3.5), new Watch.Seen(at(5, 10), 2, 3.5));
        ScriptedHouse unscouted = house(Story.of("A", at(0, 8)));
        assertThat(unscouted.seen(unscouted.warningsAt(at(4, 10, 14)).get(0), 4, 0, 10))
                .isEmpty();
    }

    /** Not below 0.75 mS/cm once roots are there (CP, no source). */
    @Test
    void leachedCuttingsAreToldFromAMeasurementByHandUntilTheNextOneIsRight() {
        Story rooted = Story.of("A", at(0, 8)).reached(Stage.CALLUS, at(2, 8)).reached(Stage.ROOT, at(4, 8));
        ScriptedHouse house =
                caredFor(rooted, "A").did(Task.MIST_OFF, "A", at(2, 9), null).did(Task.FEED_STEP, "A", at(4, 9), null);
        assertThat(house.warningsAt(at(6, 20, 10))).extracting(Warning::kind).doesNotContain(WarningKind.LEACHED);

        house.measured(0.4, at(6, 10));

        Warning leached = house.warningsAt(at(6, 20, 10)).stream()
                .filter(warning -> warning.kind() == WarningKind.LEACHED)
                .findFirst()
                .orElseThrow();
        assertThat(leached)
                .extracting(Warning::worst, Warning::limit, Warning::unit, Warning::until)
                .containsExactly(0.4, 0.75, "mS/cm", null);
        assertThat(house.measured(1.1, at(6, 20, 5)).warningsAt(at(6, 20, 10)))
                .filteredOn(warning -> warning.kind() == WarningKind.LEACHED)
                .extracting(Warning::until)
                .containsExactly(at(6, 20));
    }
}
