package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.crop.Cardinals;
import rootcast.crop.Stage;
import rootcast.outlook.DevelopmentRate;

/** Stages at the reference temperature, where a day is a reference-day; worked by hand. */
class StageTimesTest {

    private static final Cardinals CARDINALS = new Cardinals(Cardinals.Form.LINEAR, 5, 24, 36, 22);
    private static final double ROUNDS_DAYS = 2;

    private static WarmDays at22(double days) {
        return WarmDays.at(22, days);
    }

    /** Stuck, seen callused after {@code days}; the look before that was so many days earlier. */
    private static BatchRecord.SeenStage stick(double days, double endLookDays) {
        return new BatchRecord.SeenStage(Stage.STICK, at22(days), WarmDays.NONE, at22(2), 0, endLookDays);
    }

    private static StageTimes times(List<BatchRecord.SeenStage> stages, List<BatchRecord.SeenCells> looks) {
        WarmDays.Rates[] rates = new WarmDays.Rates[3];
        Arrays.setAll(rates, k -> new WarmDays.Rates(new DevelopmentRate(CARDINALS)));
        return new StageTimes(new BatchRecord("B", "V", "S", false, stages, looks, Map.of(), 0, 0), rates);
    }

    /** Up to ten days the look says how late the end was seen; after that somebody will have come by on a round since. */
    @ParameterizedTest(name = "looked at {0} days before: on average {1} days late")
    @CsvSource({"1, 0.5", "3, 1.5", "4, 2", "7, 3.5", "10, 4", "10.01, 1", "12, 1", "Infinity, 1"})
    void anOldLookSaysNoMoreThanTheRounds(double endLookDays, double meanLateDays) {
        StageTimes times = times(List.of(stick(8, endLookDays)), List.of());

        assertThat(times.given(ROUNDS_DAYS).log()[0]).isCloseTo(Math.log(8 - meanLateDays), within(1e-9));
        assertThat(times.needsRounds()).isEqualTo(endLookDays > 10);
    }

    @Test
    void aLateLookLengthensTheOneStageAndShortensTheNext() {
        var callus = new BatchRecord.SeenStage(Stage.CALLUS, at22(9), at22(2), at22(2), 3, 1);
        StageTimes.Given given = times(List.of(stick(8, 3), callus), List.of()).given(ROUNDS_DAYS);

        // Callus was seen 0 to 3 days late and root 0 to 1: 8 − 1.5 and 9 + 1.5 − 0.5.
        assertThat(given.log()).containsExactly(new double[] {Math.log(6.5), Math.log(10), 0}, within(1e-9));
        assertThat(given.error()[0][0]).isCloseTo(9 / 12.0 / (6.5 * 6.5), within(2e-6));
        assertThat(given.error()[1][1]).isCloseTo((9 + 1) / 12.0 / (10 * 10), within(2e-6));
        assertThat(given.error()[1][0]).isCloseTo(-9 / 12.0 / (6.5 * 10), within(1e-9));
        assertThat(given.error()[0][1]).isEqualTo(given.error()[1][0]);
        assertThat(given.error()[2]).containsExactly(0, 0, 1);
        assertThat(given.isSeen()).containsExactly(true, true, false);
        assertThat(given.seenStages()).isEqualTo(2);
        assertThat(given.logSlope()).isCloseTo(Math.log(1 / 6.5) + Math.log(1 / 10.0), within(1e-9));
        assertThat(given.tellsNothing()).isFalse();
    }

    @Test
    void aLookBeginsWhereItsStageDid() {
        var look = new BatchRecord.SeenCells(Stage.CALLUS, at22(5), at22(2), 3, 40, 12);
        StageTimes.Given given = times(List.of(), List.of(look)).given(ROUNDS_DAYS);

        assertThat(given.tellsNothing()).isFalse();
        assertThat(given.looks().get(0)).isEmpty();
        assertThat(given.looks().get(1)).singleElement().satisfies(seen -> {
            assertThat(seen.logGained()).isCloseTo(Math.log(6.5), within(1e-9));
            assertThat(seen.beginVariance()).isCloseTo(9 / 12.0 / (6.5 * 6.5), within(1e-9));
            assertThat(seen.cells()).isEqualTo(40);
            assertThat(seen.reached()).isEqualTo(12);
        });
    }

    @Test
    void nothingSeenTellsNothing() {
        StageTimes times = times(List.of(), List.of());

        assertThat(times.given(ROUNDS_DAYS).tellsNothing()).isTrue();
        assertThat(times.needsRounds()).isFalse();
    }

    @Test
    void aLookKnowsHowLongAfterItItsStageWasEntered() {
        var look = new BatchRecord.SeenCells(Stage.STICK, at22(5), WarmDays.NONE, 0, 40, 20);

        assertThat(times(List.of(stick(8, 3)), List.of(look))
                        .given(ROUNDS_DAYS)
                        .looks()
                        .get(0))
                .singleElement()
                .satisfies(seen -> {
                    assertThat(seen.logGained()).isCloseTo(Math.log(5), within(1e-9));
                    assertThat(seen.beginVariance()).isZero();
                    assertThat(seen.toEntry()).isCloseTo(3, within(1e-9));
                    assertThat(seen.isEntered()).isTrue();
                });
        assertThat(times(List.of(), List.of(look)).given(ROUNDS_DAYS).looks().get(0))
                .singleElement()
                .satisfies(seen -> assertThat(seen.isEntered()).isFalse());
    }

    /** Callus is taken to have begun two days before it was seen, with a variance of a half: 5 + 2 days, 0.5 / 49. */
    @Test
    void looksFollowWhatIsLearnedOfTheirStagesBegin() {
        var look = new BatchRecord.SeenCells(Stage.CALLUS, at22(5), at22(2), 3, 40, 12);
        StageTimes.Given given = times(List.of(), List.of(look)).given(ROUNDS_DAYS);

        assertThat(given.looks(new double[] {2, 9, 9}, new double[] {0.5, 9, 9}).get(1))
                .singleElement()
                .satisfies(seen -> {
                    assertThat(seen.logGained()).isCloseTo(Math.log(7), within(1e-9));
                    assertThat(seen.beginVariance()).isCloseTo(0.5 / 49, within(1e-9));
                });
    }

    /** Were days stated at 13.5 °C, 22 would run twice as fast: 16 less 3 for callus; root stays 9 + 1.5 − 0.5. */
    @Test
    void otherCardinalsOfOneStageLeaveTheOthersAsTheyWere() {
        var callus = new BatchRecord.SeenStage(Stage.CALLUS, at22(9), at22(2), at22(2), 3, 1);
        var twice = new WarmDays.Rates(new DevelopmentRate(new Cardinals(Cardinals.Form.LINEAR, 5, 24, 36, 13.5)));

        StageTimes.Given given = times(List.of(stick(8, 3), callus), List.of())
                .withOther(Stage.STICK, twice)
                .given(ROUNDS_DAYS);

        assertThat(given.log()).containsExactly(new double[] {Math.log(13), Math.log(10), 0}, within(1e-9));
    }
}
