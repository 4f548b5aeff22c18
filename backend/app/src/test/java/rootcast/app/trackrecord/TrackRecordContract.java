package rootcast.app.trackrecord;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.FinishedBatches;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** The track record, seen from outside. The profile says 7, 9 and 10 days, and a day counts as a day. */
abstract class TrackRecordContract {

    @Inject
    HandSetClock time;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    private JsonPath record(String more) {
        return Nursery.get("/api/track-record?crop=" + nursery.crop + more);
    }

    @Test
    void withoutAFinishedBatchEveryFigureIsNull() {
        nursery.stuck(1, Duration.ofDays(5));

        JsonPath record = record("");

        assertThat(record.getInt("n")).isZero();
        assertThat(record.getInt("leadDays")).isEqualTo(7);
        for (String figure : new String[] {
            "maeDays",
            "biasDays",
            "pinball",
            "crps",
            "promisedKept",
            "coverage.'0.8'",
            "baselines.calendar.maeDays",
            "baselines.degreeDays.skill"
        }) {
            assertThat((Object) record.get(figure)).as(figure).isNull();
        }
        assertThat(record.getInt("promisedCases")).isZero();
        assertThat(record.getList("batches")).isEmpty();
        assertThat(record.getList("byCrop")).isEmpty();
        assertThat(record.getList("byLead.n")).containsOnly(0);
    }

    /** From seven days before it was ready, rooted as the profile says: three of ten days done, seven to go. */
    @Test
    void aBatchThatWentByTheProfileHasNoError() {
        String batch = FinishedBatches.seen(nursery, 40, 7, 9, 10);

        JsonPath record = record("&leadDays=7");

        assertThat(record.getInt("n")).isEqualTo(1);
        assertThat(record.getDouble("maeDays")).isCloseTo(0, within(0.3));
        assertThat(record.getDouble("coverage.'0.9'")).isEqualTo(1);
        // Nothing was ready before: both baselines go by the profile's 26 days.
        assertThat(record.getDouble("baselines.calendar.maeDays")).isCloseTo(0, within(0.01));
        assertThat(record.getDouble("baselines.degreeDays.maeDays")).isCloseTo(0, within(0.01));
        assertThat(record.getString("batches[0].batch")).isEqualTo(batch);
        assertThat(record.getString("batches[0].predicted.p50")).isNotNull();
        assertThat(record.getList("byLead.leadDays")).containsExactly(1, 3, 5, 7, 10, 14, 21);
        assertThat(record.getList("byLead.n")).containsOnly(1);
        assertThat(record.getString("byCrop[0].crop")).isEqualTo(nursery.crop);
    }

    @Test
    void theRecordOfABatchIsWhatItsOutlookWasOnThatDay() {
        String batch = FinishedBatches.seen(nursery, 50, 8, 11, 13);

        JsonPath record = record("&leadDays=5");

        Instant readyAt = Instant.parse(record.getString("batches[0].readyAt"));
        Instant origin = readyAt.minus(Duration.ofDays(5));
        JsonPath then = Nursery.get("/api/batches/" + batch + "?asOf=" + origin);
        Instant p50 = Instant.parse(record.getString("batches[0].predicted.p50"));
        assertThat(Map.of("p50", p50.toString())).isEqualTo(Map.of("p50", then.getString("outlook.readyAt.p50")));
        double errorDays = Duration.between(p50, readyAt).toMillis() / 86_400_000.0;
        assertThat(record.getDouble("batches[0].errorDays")).isCloseTo(errorDays, within(1e-3));
        assertThat(record.getDouble("biasDays")).isCloseTo(errorDays, within(1e-3));
    }

    /** Ready on day 26, found not ready two days before: taken as day 25. */
    @Test
    void aLookThatFoundItNotReadyNarrowsWhenItWas() {
        String batch = FinishedBatches.seen(nursery, 40, 7, 9, 10);
        Instant seen = nursery.now().minus(Duration.ofDays(14));
        nursery.enter(
                        batch,
                        Nursery.entry(
                                "look",
                                seen.minus(Duration.ofDays(2)),
                                Map.of("stage", "READY", "cells", 50, "reached", 20)))
                .statusCode(201);

        JsonPath record = record("");

        assertThat(record.getString("batches[0].seenReadyAt")).isEqualTo(seen.toString());
        assertThat(record.getString("batches[0].readyAt"))
                .isEqualTo(seen.minus(Duration.ofDays(1)).toString());
    }

    /** Of one that held the share lies between 27 and 100 %, by Wilson's interval: 1 / (1 + 1.645²) = 0.270. */
    @Test
    void howOftenRangesHeldIsSaidWithHowWellThatIsKnown() {
        FinishedBatches.seen(nursery, 40, 7, 9, 10);

        JsonPath record = record("");

        for (String of :
                new String[] {"held", "byLead[3].held", "byCrop[0].held", "bySite[0].held", "byQuarter[0].held"}) {
            assertThat(record.getInt(of + ".n")).as(of).isEqualTo(1);
            assertThat(record.getDouble(of + ".share")).as(of).isEqualTo(1);
            assertThat(record.getDouble(of + ".low")).as(of).isCloseTo(0.270, within(1e-3));
            assertThat(record.getDouble(of + ".high")).as(of).isEqualTo(1);
        }
        assertThat(record.getString("bySite[0].site")).isEqualTo(nursery.site);
        LocalDate ready = LocalDate.ofInstant(nursery.now().minus(Duration.ofDays(14)), ZoneOffset.UTC);
        assertThat(LocalDate.parse(record.getString("byQuarter[0].from")))
                .isEqualTo(LocalDate.of(ready.getYear(), (ready.getMonthValue() - 1) / 3 * 3 + 1, 1));
    }

    @Test
    void oneBatchIsNoRecordToTrust() {
        FinishedBatches.seen(nursery, 40, 7, 9, 10);

        JsonPath record = record("");

        assertThat(record.getString("byCrop[0].verdict")).isEqualTo("too-few");
        assertThat(record.getList("byCrop[0].mends")).isEmpty();
    }

    /** What is entered of a batch that is not ready yet changes no case: they are kept. */
    @Test
    void entriesOfOtherBatchesMakeNobodyWait() {
        FinishedBatches.seen(nursery, 40, 7, 9, 10);
        String asOf = record("").getString("asOf");
        time.moveOn(Duration.ofMinutes(1));
        String running = nursery.stuck(1, Duration.ofDays(5));
        nursery.enter(running, Nursery.entry("loss", nursery.now(), Map.of("plants", 3, "cause", "rot")))
                .statusCode(201);

        assertThat(record("").getString("asOf")).isEqualTo(asOf);
    }

    @Test
    void aNewEntryIsInTheNextAnswer() {
        FinishedBatches.seen(nursery, 60, 7, 9, 10);
        assertThat(record("").getInt("n")).isEqualTo(1);

        FinishedBatches.seen(nursery, 40, 7, 9, 12);

        assertThat(record("").getInt("n")).isEqualTo(2);
    }

    @Test
    void aLeadThatIsNotKeptOrACropThatIsNotThereIsRefused() {
        given().get("/api/track-record?leadDays=2").then().statusCode(422).body("errors.field", contains("leadDays"));
        given().get("/api/track-record?crop=nothing")
                .then()
                .statusCode(422)
                .body("type", equalTo("/problems/unknown-code"));
    }
}
