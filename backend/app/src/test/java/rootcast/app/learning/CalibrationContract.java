package rootcast.app.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.app.FinishedBatches;
import rootcast.app.Nursery;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.node.NodeDuties;
import rootcast.crop.Calibration;

/** Ranges held against the record of finished batches, seen from outside. */
abstract class CalibrationContract extends GrownCrop {

    @Inject
    CalibrateCrops calibrate;

    @Inject
    NodeDuties duties;

    @Inject
    Catalogue catalogue;

    /** By this node, an hour later. */
    private void calibrated() {
        time.moveOn(Duration.ofHours(1));
        assertThat(duties.take(NodeDuties.CALIBRATE_CROPS, Duration.ofMinutes(5)))
                .isTrue();
        calibrate.calibrate();
    }

    private Calibration known() {
        return catalogue.crop(nursery.crop).orElseThrow().crop().profile().calibration();
    }

    @Test
    void withoutAFinishedBatchTheModelStands() {
        calibrated();

        assertThat(known().isNone()).isTrue();
    }

    /** They took a fifth less than stated, each in weather of its own: dates come sooner than by the model, and the page says so. */
    @Test
    void batchesThatWereReadySoonerMoveTheDatesOfThoseThatRun() {
        growFaster();
        String running = nursery.stuck(2, Duration.ofDays(1));
        JsonPath before = Nursery.batch(running);

        calibrated();

        assertThat(known().at(16).middle()).isNegative();
        JsonPath after = Nursery.batch(running);
        assertThat(Instant.parse(after.getString("outlook.readyAt.p50")))
                .isBefore(Instant.parse(before.getString("outlook.readyAt.p50")));
        JsonPath why = Nursery.get("/api/batches/" + running + "/explanation");
        assertThat(why.getDouble("ownRecord.batches")).isPositive();
        assertThat(why.getList("parts.cause", String.class)).endsWith("own-record");
        assertThat(why.getList("parts.days", Double.class).stream()
                        .mapToDouble(Double::doubleValue)
                        .sum())
                .isCloseTo(why.getDouble("differenceDays"), within(1e-6));
        assertThat(Nursery.get("/api/track-record?crop=" + nursery.crop).getDouble("byCrop[0].width"))
                .isPositive();
    }

    @Test
    void anAnswerOfThenKnowsWhatWasKnownThen() {
        growFaster();
        String running = nursery.stuck(2, Duration.ofDays(1));
        Instant then = nursery.now();
        String before = Nursery.get("/api/batches/" + running + "?asOf=" + then).getString("outlook.readyAt.p50");

        calibrated();

        assertThat(Nursery.get("/api/batches/" + running + "?asOf=" + then).getString("outlook.readyAt.p50"))
                .isEqualTo(before);
    }

    /** What an entry has not changed is not made again; the next finished batch is taken in. */
    @Test
    void eachFinishedBatchIsTakenInOnce() {
        growFaster();
        calibrated();
        Calibration first = known();
        var newest = catalogue.calibratedUpTo(nursery.crop, 1);

        calibrated();
        assertThat(known()).isEqualTo(first);
        assertThat(catalogue.calibratedUpTo(nursery.crop, 1)).isEqualTo(newest);

        FinishedBatches.seen(nursery, 30, 7, 9, 12);
        calibrated();
        assertThat(known()).isNotEqualTo(first);
    }

    /** A version that was learned from these batches is judged by what the others taught. */
    @Test
    void aLearnedVersionHasARecordOfItsOwn() {
        growFaster();
        calibrated();
        Calibration ofStated = known();
        learned();
        adopt(2, Map.of()).statusCode(200);

        assertThat(known().isNone()).isTrue();
        calibrated();

        assertThat(known().isNone()).isFalse();
        // It has learned that they are faster: what is left of the shift is small.
        assertThat(Math.abs(known().at(16).middle()))
                .isLessThan(Math.abs(ofStated.at(16).middle()));
        adopt(1, Map.of()).statusCode(200);
        assertThat(known()).isEqualTo(ofStated);
    }

    @Test
    void whoDoesNotHaveTheDutyWritesNothing() {
        growFaster();
        time.moveOn(Duration.ofHours(1));
        duties.leave(NodeDuties.CALIBRATE_CROPS);

        calibrate.calibrate();

        assertThat(known().isNone()).isTrue();
    }
}
