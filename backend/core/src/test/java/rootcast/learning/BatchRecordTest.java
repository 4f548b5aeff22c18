package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Stage;
import rootcast.learning.BatchRecord.Lived;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchHistory.Look;
import rootcast.outlook.HouseCurves;

/** What is taken from the books of a batch that stood at 22 °C; days are after sticking. */
class BatchRecordTest {

    private static final Instant STUCK = Instant.parse("2026-03-02T15:00:00Z");

    private static Instant day(double days) {
        return STUCK.plus(Duration.ofMinutes(Math.round(days * 1440)));
    }

    private static Look look(double day, Stage stage, int cells, int reached) {
        return new Look(day(day), stage, cells, reached);
    }

    private static BatchRecord record(Map<Stage, Instant> reachedAt, Look... looks) {
        HouseCurves houses = new HouseCurves(day(60));
        houses.house("A", new HourlySeries(), SetpointPlan.of(22.0));
        BatchHistory history = new BatchHistory(
                STUCK,
                reachedAt,
                List.of(new BatchHistory.Placement("A", STUCK)),
                new BatchHistory.Plants(STUCK, 1_000),
                List.of(),
                List.of(),
                null,
                Arrays.asList(looks));
        return BatchRecord.of("B", "lav", "north", history, Map.of(), houses, 21);
    }

    @Test
    void aStageIsFromItsBeginSeenToItsEndSeen() {
        BatchRecord record = record(
                Map.of(Stage.CALLUS, day(8), Stage.ROOT, day(17)),
                look(5, Stage.CALLUS, 40, 20),
                look(20, Stage.READY, 40, 4));

        assertThat(record.stages()).hasSize(2);
        assertThat(record.stages().get(0)).satisfies(stick -> {
            assertThat(stick.stage()).isEqualTo(Stage.STICK);
            assertThat(stick.gained().days()).isCloseTo(8, within(1e-6));
            assertThat(stick.aroundBegin().days()).isZero();
            assertThat(stick.aroundEnd().days()).as("since the look on day 5").isCloseTo(3, within(1e-6));
            assertThat(stick.beginLookDays()).isZero();
            assertThat(stick.endLookDays()).isCloseTo(3, within(1e-6));
        });
        assertThat(record.stages().get(1)).satisfies(callus -> {
            assertThat(callus.stage()).isEqualTo(Stage.CALLUS);
            assertThat(callus.gained().days()).isCloseTo(9, within(1e-6));
            assertThat(callus.gained().meanC()).isCloseTo(22, within(1e-6));
            assertThat(callus.aroundBegin().days()).isCloseTo(3, within(1e-6));
            assertThat(callus.aroundEnd().days())
                    .as("nobody looked since it began: two days")
                    .isCloseTo(2, within(1e-6));
            assertThat(callus.beginLookDays()).isCloseTo(3, within(1e-6));
            assertThat(callus.endLookDays()).isInfinite();
        });
    }

    @Test
    void aLookCountsFromTheBeginOfItsStageAndNotBeforeIt() {
        BatchRecord record = record(
                Map.of(Stage.CALLUS, day(8), Stage.ROOT, day(17)),
                look(5, Stage.CALLUS, 40, 20),
                look(6, Stage.ROOT, 40, 1),
                look(20, Stage.READY, 40, 4));

        assertThat(record.looks()).hasSize(2);
        assertThat(record.looks().get(0)).satisfies(look -> {
            assertThat(look.stage()).isEqualTo(Stage.STICK);
            assertThat(look.gained().days()).isCloseTo(5, within(1e-6));
            assertThat(look.aroundBegin().days()).isZero();
            assertThat(look.cells()).isEqualTo(40);
            assertThat(look.reached()).isEqualTo(20);
        });
        assertThat(record.looks().get(1)).satisfies(look -> {
            assertThat(look.stage()).isEqualTo(Stage.ROOT);
            assertThat(look.gained().days()).isCloseTo(3, within(1e-6));
            assertThat(look.aroundBegin().days()).as("a week at most").isCloseTo(7, within(1e-6));
            assertThat(look.beginLookDays())
                    .as("since the look on day 6 that found no roots")
                    .isCloseTo(11, within(1e-6));
        });
    }

    /** Of 40 cells 35 are not nine in ten and 36 are; a look at the very moment is no look before it. */
    @ParameterizedTest(name = "{1} of {2} on day {0}: {3} days since it was incomplete, {4} around its end")
    @CsvSource({
        "9,  35, 40, 3,  3",
        "9,  36, 40, 7,  7",
        "11, 35, 40, 1,  2",
        "12, 35, 40, 7,  7",
        "2,  35, 40, 7,  7",
    })
    void theLastLookThatFoundItIncompleteBoundsItsEnd(double on, int reached, int cells, double days, double around) {
        BatchRecord record = record(
                Map.of(Stage.CALLUS, day(12)),
                look(5, Stage.CALLUS, 40, 0),
                look(10, Stage.ROOT, 40, 0),
                look(on, Stage.CALLUS, cells, reached));

        assertThat(record.stages().get(0).endLookDays()).isCloseTo(days, within(1e-6));
        assertThat(record.stages().get(0).aroundEnd().days()).isCloseTo(around, within(1e-6));
    }

    @Test
    void aroundAnEndIsAWeekAtMostAndNotBeforeSticking() {
        BatchRecord longAgo = record(Map.of(Stage.CALLUS, day(12)), look(1, Stage.CALLUS, 40, 0));
        BatchRecord early = record(Map.of(Stage.CALLUS, day(1)));

        assertThat(longAgo.stages().get(0).endLookDays()).isCloseTo(11, within(1e-6));
        assertThat(longAgo.stages().get(0).aroundEnd().days()).isCloseTo(7, within(1e-6));
        assertThat(early.stages().get(0).aroundEnd().days()).isCloseTo(1, within(1e-6));
    }

    @Test
    void stagesPassedAndEnteredAreThoseBeforeTheLast() {
        assertThat(record(Map.of()))
                .extracting(BatchRecord::finished, BatchRecord::passed, BatchRecord::entered)
                .containsExactly(false, 0, 0);
        assertThat(record(Map.of(Stage.CALLUS, day(8), Stage.ROOT, day(17))))
                .extracting(BatchRecord::finished, BatchRecord::passed, BatchRecord::entered)
                .containsExactly(false, 1, 1);
        assertThat(record(Map.of(Stage.READY, day(28))))
                .extracting(BatchRecord::finished, BatchRecord::passed, BatchRecord::entered)
                .containsExactly(true, 2, 0);
        assertThat(record(Map.of(Stage.CALLUS, day(8), Stage.READY, day(28))).stages())
                .as("what came after a stage that nobody entered is not known")
                .hasSize(1);
    }

    @Test
    void noMorePlantsLiveThroughAStageThanBeganIt() {
        assertThat(new Lived(10, 10).survived()).isEqualTo(10);
        assertThat(new Lived(10, 0).begun()).isEqualTo(10);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Lived(10, 11))
                .withMessage("11 of 10 plants must rise from 0");
        assertThatIllegalArgumentException().isThrownBy(() -> new Lived(10, -1));
    }
}
