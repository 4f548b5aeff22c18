package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.facts.FactPosition;
import rootcast.learning.BatchRecord.Lived;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.Cause;
import rootcast.ledger.Entry;
import rootcast.ledger.Sample;
import rootcast.ledger.What;

/** Ten trays of 100 cells with 1 000 plants; days are after sticking. */
class LivedStagesTest {

    private static final Instant STUCK = Instant.parse("2026-03-02T15:00:00Z");
    private static final Batch BATCH =
            new Batch("B1", "north", "lav-blue", new TrayFormat("T100", 100, 90, 540, 280), STUCK);
    private static final What CALLUSED = new What.StageReached(Stage.CALLUS);

    private final List<Entry> entries = new ArrayList<>();

    private LivedStagesTest on(double day, What what) {
        Instant at = STUCK.plus(Duration.ofMinutes(Math.round(day * 1440)));
        int number = entries.size() + 1;
        entries.add(new Entry(new UUID(0, number), new FactPosition(number), BATCH.id(), at, at, "ana", what, null));
        return this;
    }

    private LivedStagesTest stuck() {
        return on(0, new What.Stick("A", 10, 1_000));
    }

    private Map<Stage, Lived> lived() {
        return LivedStages.of(BatchFold.of(BATCH, entries));
    }

    @Test
    void aBatchWipedOutInMidStageTeachesThatNoneLivedThroughIt() {
        stuck().on(7, CALLUSED).on(11, new What.Loss(400, Cause.ROT)).on(12, new What.Loss(600, Cause.ROT));

        assertThat(lived())
                .containsOnly(
                        Map.entry(Stage.STICK, new Lived(1_000, 1_000)), Map.entry(Stage.CALLUS, new Lived(1_000, 0)));
    }

    @Test
    void oneWipedOutBeforeAnyStageWasSeenTeachesOfTheFirst() {
        stuck().on(3, new What.Count(0));

        assertThat(lived()).containsOnly(Map.entry(Stage.STICK, new Lived(1_000, 0)));
    }

    @Test
    void whatWasShippedOutOfAStageNotSeenToEndSaysNothingOfIt() {
        stuck().on(7, CALLUSED)
                .on(7.5, new What.Count(1_000))
                .on(12, new What.Loss(400, Cause.ROT))
                .on(20, new What.Ship(6, 600, null));

        assertThat(lived()).containsOnlyKeys(Stage.STICK);
    }

    @Test
    void aRunningBatchTeachesNothingOfTheStageItIsIn() {
        stuck().on(7, new What.Count(900)).on(7, CALLUSED).on(9, new What.Count(850));

        assertThat(lived()).containsOnly(Map.entry(Stage.STICK, new Lived(1_000, 900)));
    }

    /** 40 blanks in 200 cells stand for 800 of 1 000; they tell as much as 200 plants of which 160 lived. */
    @Test
    void aSampleTellsAsMuchAsTheCellsThatWereLookedAt() {
        stuck().on(7, new What.SampledCount(new Sample(2, 200, 40)))
                .on(7, CALLUSED)
                .on(8, new What.Count(790));

        assertThat(lived()).containsOnly(Map.entry(Stage.STICK, new Lived(200, 160)));
    }

    /** 800 by the sample, of which 720 were counted at the end: nine in ten, known as by 200. */
    @Test
    void aStageThatBeganWithASampleTellsNoMoreThanThat() {
        stuck().on(7, new What.SampledCount(new Sample(2, 200, 40)))
                .on(7, CALLUSED)
                .on(16, new What.Count(720))
                .on(16, new What.StageReached(Stage.ROOT));

        assertThat(lived().get(Stage.CALLUS)).isEqualTo(new Lived(200, 180));
    }

    /** Of 790 rooted ones 100 were shipped alive and 680 counted at the end. */
    @Test
    void whatWasShippedInAStageHadLivedThroughIt() {
        stuck().on(7, CALLUSED)
                .on(7, new What.Count(1_000))
                .on(16, new What.Count(790))
                .on(16, new What.StageReached(Stage.ROOT))
                .on(20, new What.Ship(1, 100, null))
                .on(25, new What.Count(680))
                .on(25, new What.StageReached(Stage.READY));

        assertThat(lived())
                .containsOnly(
                        Map.entry(Stage.STICK, new Lived(1_000, 1_000)),
                        Map.entry(Stage.CALLUS, new Lived(1_000, 790)),
                        Map.entry(Stage.ROOT, new Lived(790, 780)));
    }

    @Test
    void nobodyRisesFromTheDead() {
        stuck().on(7, new What.Count(900))
                .on(7, CALLUSED)
                .on(16, new What.Count(930))
                .on(16, new What.StageReached(Stage.ROOT));

        assertThat(lived().get(Stage.CALLUS)).isEqualTo(new Lived(900, 900));
    }

    @Test
    void aBatchThatHasAllLeftTellsOfEveryStageWithoutACount() {
        stuck().on(7, CALLUSED).on(16, new What.StageReached(Stage.ROOT)).on(25, new What.StageReached(Stage.READY));
        assertThat(lived()).as("nobody counted yet").isEmpty();

        on(26, new What.Ship(10, 1_000, null));

        assertThat(lived())
                .containsOnly(
                        Map.entry(Stage.STICK, new Lived(1_000, 1_000)),
                        Map.entry(Stage.CALLUS, new Lived(1_000, 1_000)),
                        Map.entry(Stage.ROOT, new Lived(1_000, 1_000)));
    }

    @Test
    void aCountBeforeAStageEndedSaysNothingOfIt() {
        stuck().on(3, new What.Count(900)).on(7, CALLUSED);

        assertThat(lived()).isEmpty();
    }
}
