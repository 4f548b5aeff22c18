package rootcast.app.ledger;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Sticking batches and writing down what happens to them, seen from outside. Figures are worked by hand. */
abstract class EntriesContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    @Test
    void aBatchHoldsEveryCellOfItsTraysUnlessToldOtherwise() {
        nursery.post("/api/batches", nursery.stickBody(3, Duration.ofDays(1)))
                .statusCode(201)
                .body("id", notNullValue())
                .body("position", notNullValue())
                .body("site", equalTo(nursery.site))
                .body("house", equalTo(nursery.house))
                .body("variety", equalTo(nursery.variety))
                .body("trayFormat", equalTo(nursery.trayFormat))
                .body("trays", equalTo(3))
                .body("plants", equalTo(300));

        nursery.post("/api/batches", stickWith("plants", 87)).statusCode(201).body("plants", equalTo(87));
    }

    @Test
    void aStuckBatchStandsAtStickWithAnOutlook() {
        JsonPath batch = Nursery.batch(nursery.stuck(2, Duration.ofDays(1)));

        assertThat(batch.getString("stage")).isEqualTo("STICK");
        assertThat(batch.getInt("trays")).isEqualTo(2);
        assertThat(batch.getMap("plants")).isEqualTo(Map.of("stuck", 200, "alive", 200, "lost", 0, "shipped", 0));
        assertThat(batch.getMap("lostByCause")).isEmpty();
        for (String date : List.of("callusedAt", "rootedAt", "readyAt")) {
            Instant p10 = Instant.parse(batch.getString("outlook." + date + ".p10"));
            Instant p50 = Instant.parse(batch.getString("outlook." + date + ".p50"));
            Instant p90 = Instant.parse(batch.getString("outlook." + date + ".p90"));
            assertThat(p10).isBefore(p50);
            assertThat(p50).isBefore(p90);
        }
    }

    @Test
    void aLossIsBookedUnderItsCause() {
        String batch = nursery.stuck(2, Duration.ofDays(5));

        enter(batch, "loss", Map.of("plants", 7, "cause", "rot", "note", "wet corner"))
                .statusCode(201)
                .body("id", notNullValue())
                .body("kind", equalTo("loss"))
                .body("alive", equalTo(193))
                .body("trays", equalTo(2));
        enter(batch, "loss", Map.of("plants", 3, "cause", "damping-off")).statusCode(201);

        JsonPath after = Nursery.batch(batch);
        assertThat(after.getMap("plants")).isEqualTo(Map.of("stuck", 200, "alive", 190, "lost", 10, "shipped", 0));
        assertThat(after.getMap("lostByCause")).isEqualTo(Map.of("rot", 7, "damping-off", 3));
    }

    @ParameterizedTest
    @ValueSource(strings = {"dry-down", "rot", "botrytis", "damping-off", "no-root", "pest", "damage", "other"})
    void everyCauseOfTheTradeIsTaken(String cause) {
        String batch = nursery.stuck(1, Duration.ofDays(5));

        enter(batch, "loss", Map.of("plants", 1, "cause", cause)).statusCode(201);

        assertThat(Nursery.batch(batch).getMap("lostByCause")).isEqualTo(Map.of(cause, 1));
    }

    @Test
    void aCountPostsTheDifferenceUnderItsOwnCause() {
        String batch = nursery.stuck(2, Duration.ofDays(5));
        enter(batch, "loss", Map.of("plants", 10, "cause", "pest")).statusCode(201);

        enter(batch, "count", Map.of("plants", 182)).statusCode(201).body("alive", equalTo(182));

        assertThat(Nursery.batch(batch).getMap("lostByCause")).isEqualTo(Map.of("pest", 10, "count-difference", 8));
        assertThat(Nursery.batch(batch).getInt("lastCount.alive")).isEqualTo(182);
    }

    @Test
    void aSampledCountStandsForTheRest() {
        // 5 blanks in 50 cells are a tenth; 200 places less a tenth are 180.
        String batch = nursery.stuck(2, Duration.ofDays(5));

        enter(batch, "count", Map.of("sampledTrays", 1, "sampledCells", 50, "blanks", 5))
                .statusCode(201)
                .body("alive", equalTo(180));

        assertThat(Nursery.batch(batch).getInt("lastCount.sampledCells")).isEqualTo(50);
    }

    @Test
    void stagesAreReachedInOrderAndMayBeSkipped() {
        String batch = nursery.stuck(1, Duration.ofDays(20));

        enter(batch, "stage", Map.of("stage", "CALLUS")).statusCode(201).body("stage", equalTo("CALLUS"));
        enter(batch, "stage", Map.of("stage", "READY")).statusCode(201).body("stage", equalTo("READY"));

        assertThat(Nursery.batch(batch).getString("stage")).isEqualTo("READY");
    }

    @Test
    void aMoveTakesTheWholeBatchAlong() {
        String batch = nursery.stuck(1, Duration.ofDays(5));

        enter(batch, "move", Map.of("house", nursery.otherHouse)).statusCode(201);

        assertThat(Nursery.batch(batch).getString("house")).isEqualTo(nursery.otherHouse);
        JsonPath entries = entries(batch);
        assertThat(entries.getList("[1].postings.account")).containsExactlyInAnyOrder("alive", "alive");
        assertThat(entries.getList("[1].postings.house")).containsExactlyInAnyOrder(nursery.house, nursery.otherHouse);
    }

    @Test
    void shippedTraysTakeTheSaleCountWithThemUnlessToldOtherwise() {
        String batch = nursery.stuck(4, Duration.ofDays(30));
        enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);

        enter(batch, "ship", Map.of("trays", 1)).statusCode(201).body("alive", equalTo(310));
        enter(batch, "ship", Map.of("trays", 2, "plants", 200)).statusCode(201).body("alive", equalTo(110));

        JsonPath after = Nursery.batch(batch);
        assertThat(after.getMap("plants")).isEqualTo(Map.of("stuck", 400, "alive", 110, "lost", 0, "shipped", 290));
        assertThat(after.getInt("traysStuck")).isEqualTo(4);
    }

    @Test
    void aReversalPutsTheBooksBackAndKeepsBothEntries() {
        String batch = nursery.stuck(1, Duration.ofDays(5));
        String loss = enter(batch, "loss", Map.of("plants", 40, "cause", "rot"))
                .statusCode(201)
                .extract()
                .path("id");

        String reversal = enter(batch, "reversal", Map.of("entry", loss, "reason", "other batch"))
                .statusCode(201)
                .body("alive", equalTo(100))
                .extract()
                .path("id");

        JsonPath entries = entries(batch);
        assertThat(entries.getList("kind")).containsExactly("stick", "loss", "reversal");
        assertThat(entries.getString("[1].reversedBy")).isEqualTo(reversal);
        assertThat(entries.getString("[2].reverses")).isEqualTo(loss);
        assertThat(entries.getString("[2].reason")).isEqualTo("other batch");
        assertThat(Nursery.batch(batch).getMap("plants"))
                .isEqualTo(Map.of("stuck", 100, "alive", 100, "lost", 0, "shipped", 0));
    }

    @Test
    void aLossEnteredLateForAMomentBeforeACountLeavesTheCountAsItWas() {
        // Counted 90 of 100; of the ten missing, five turn out to have been thrown out before.
        String batch = nursery.stuck(1, Duration.ofDays(10));
        Instant counted = time.instant().minus(Duration.ofDays(2));
        nursery.enter(batch, Nursery.entry("count", counted, Map.of("plants", 90)))
                .statusCode(201);

        nursery.enter(
                        batch,
                        Nursery.entry(
                                "loss", counted.minus(Duration.ofDays(1)), Map.of("plants", 5, "cause", "botrytis")))
                .statusCode(201)
                .body("alive", equalTo(90));

        assertThat(Nursery.batch(batch).getMap("lostByCause")).isEqualTo(Map.of("botrytis", 5, "count-difference", 5));
        assertThat(entries(batch).getList("kind")).containsExactly("stick", "loss", "count");
    }

    @Test
    void thePostingsOfEveryEntrySumToZeroPlants() {
        String batch = nursery.stuck(3, Duration.ofDays(30));
        String loss = enter(batch, "loss", Map.of("plants", 9, "cause", "rot"))
                .extract()
                .path("id");
        enter(batch, "count", Map.of("plants", 280)).statusCode(201);
        enter(batch, "move", Map.of("house", nursery.otherHouse)).statusCode(201);
        enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);
        enter(batch, "ship", Map.of("trays", 1, "plants", 95)).statusCode(201);
        enter(batch, "reversal", Map.of("entry", loss, "reason", "wrong batch")).statusCode(201);

        List<Map<String, Object>> entries = entries(batch).getList("$");
        assertThat(entries).hasSize(7);
        Map<String, Integer> balance = new HashMap<>();
        for (Map<String, Object> entry : entries) {
            int sum = 0;
            for (Map<?, ?> posting : (List<Map<?, ?>>) (List<?>) entry.get("postings")) {
                sum += (Integer) posting.get("plants");
                balance.merge((String) posting.get("account"), (Integer) posting.get("plants"), Integer::sum);
            }
            assertThat(sum).as("%s", entry).isZero();
        }
        // Stuck 300, counted 280, 95 left: 185 alive.
        assertThat(balance).isEqualTo(Map.of("supplier", -300, "alive", 185, "lost", 20, "shipped", 95));
    }

    @Nested
    class Refuses {

        private String batch;

        @BeforeEach
        void stick() {
            batch = nursery.stuck(2, Duration.ofDays(10));
        }

        @Test
        void moreLossThanAlive() {
            refused("loss", Map.of("plants", 201, "cause", "rot"), 422, "more-than-alive")
                    .body("asked", equalTo(201))
                    .body("alive", equalTo(200));
        }

        @Test
        void amountsThatAreNone() {
            refused("loss", Map.of("plants", 0, "cause", "rot"), 422, "out-of-range");
            refused("loss", Map.of("plants", -1, "cause", "rot"), 422, "not-allowed");
            refused("loss", Map.of("plants", Integer.MAX_VALUE, "cause", "rot"), 422, "not-allowed");
            refused("count", Map.of("plants", -1), 422, "not-allowed");
            refused("loss", Map.of("plants", 1.5, "cause", "rot"), 400, "malformed");
            refused("loss", Map.of("plants", 9_999_999_999L, "cause", "rot"), 400, "malformed");
        }

        @Test
        void moreCountedThanStuck() {
            refused("count", Map.of("plants", 201), 422, "more-than-stuck").body("most", equalTo(200));
        }

        @Test
        void aSampleLargerThanTheBatch() {
            refused("count", Map.of("sampledTrays", 3, "sampledCells", 50, "blanks", 1), 422, "sample-beyond-batch");
            refused("count", Map.of("sampledTrays", 1, "sampledCells", 101, "blanks", 1), 422, "sample-beyond-batch");
            refused("count", Map.of("sampledTrays", 1, "sampledCells", 50, "blanks", 51), 422, "out-of-range");
            refused("count", Map.of("sampledTrays", 1, "blanks", 51), 400, "malformed")
                    .body("errors.field", contains("sampledCells"));
        }

        @Test
        void aStageThatGoesBack() {
            enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);
            refused("stage", Map.of("stage", "CALLUS"), 422, "stage-goes-back")
                    .body("asked", equalTo("CALLUS"))
                    .body("current", equalTo("ROOT"));
            refused("stage", Map.of("stage", "ROOT"), 422, "stage-goes-back");
            refused("stage", Map.of("stage", "SHIP"), 422, "not-allowed");
            refused("stage", Map.of("stage", 3), 400, "malformed").body("errors.field", contains("stage"));
            refused("stage", Map.of("stage", ""), 400, "malformed");
            refused("stage", Map.of("stage", "BLOOM"), 400, "malformed").body("errors.field", contains("stage"));
        }

        @Test
        void shippingBeforeRooted() {
            refused("ship", Map.of("trays", 1), 422, "ship-before-rooted").body("current", equalTo("STICK"));
            enter(batch, "stage", Map.of("stage", "CALLUS")).statusCode(201);
            refused("ship", Map.of("trays", 1), 422, "ship-before-rooted").body("current", equalTo("CALLUS"));
        }

        @Test
        void shippingMoreThanCanBeFilled() {
            enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);
            enter(batch, "count", Map.of("plants", 179)).statusCode(201);
            // 179 plants fill one tray of 90.
            refused("ship", Map.of("trays", 2), 422, "more-than-saleable").body("saleable", equalTo(1));
            refused("ship", Map.of("trays", 1, "plants", 89), 422, "plants-do-not-fit-trays")
                    .body("least", equalTo(90))
                    .body("most", equalTo(100));
            refused("ship", Map.of("trays", 0), 422, "out-of-range");
            refused("ship", Map.of("trays", 20_001), 422, "not-allowed");
        }

        @Test
        void whatIsStillToCome() {
            Instant later = time.instant().plus(Duration.ofMinutes(3));
            refused(Nursery.entry("loss", later, Map.of("plants", 1, "cause", "rot")), 422, "in-the-future")
                    .body("now", equalTo(time.instant().toString()));
        }

        @Test
        void whatWasBeforeTheBatch() {
            Instant before = time.instant().minus(Duration.ofDays(11));
            refused(Nursery.entry("loss", before, Map.of("plants", 1, "cause", "rot")), 422, "before-sticking");
        }

        @Test
        void whatALaterEntrySpeaksAgainst() {
            enter(batch, "loss", Map.of("plants", 150, "cause", "dry-down")).statusCode(201);
            Instant yesterday = time.instant().minus(Duration.ofDays(1));
            refused(
                            Nursery.entry("loss", yesterday, Map.of("plants", 60, "cause", "rot")),
                            422,
                            "contradicts-later-entry")
                    .body("because", equalTo("/problems/more-than-alive"));
        }

        @Test
        void aMoveToWhereItStandsToAnUnknownHouseOrToAnotherSite() {
            refused("move", Map.of("house", nursery.house), 422, "already-there");
            refused("move", Map.of("house", "nowhere"), 422, "unknown-code").body("asked", equalTo("nowhere"));
            String elsewhere = Nursery.opened(time).house;
            refused("move", Map.of("house", elsewhere), 422, "not-allowed").body("errors.field", contains("house"));
        }

        @Test
        void reversingWhatIsNotThereOrNotReversible() {
            JsonPath entries = entries(batch);
            String stick = entries.getString("[0].id");
            refused("reversal", Map.of("entry", UUID.randomUUID(), "reason", "x"), 422, "no-such-entry");
            refused("reversal", Map.of("entry", stick, "reason", "x"), 422, "cannot-be-reversed");
            refused("reversal", Map.of("entry", "seven", "reason", "x"), 400, "malformed");
            String loss = enter(batch, "loss", Map.of("plants", 1, "cause", "rot"))
                    .extract()
                    .path("id");
            refused("reversal", Map.of("entry", loss, "reason", " "), 400, "malformed")
                    .body("errors.field", contains("reason"));
            String reversal = enter(batch, "reversal", Map.of("entry", loss, "reason", "x"))
                    .extract()
                    .path("id");
            refused("reversal", Map.of("entry", loss, "reason", "x"), 409, "already-reversed")
                    .body("by", equalTo(reversal));
            refused("reversal", Map.of("entry", reversal, "reason", "x"), 422, "cannot-be-reversed");
        }

        @Test
        void aCauseThatIsNoneOfTheTrade() {
            refused("loss", Map.of("plants", 1, "cause", "frost"), 422, "not-allowed")
                    .body("errors.field", contains("cause"));
            refused("loss", Map.of("plants", 1, "cause", "count-difference"), 422, "not-allowed");
        }

        @Test
        void fieldsThatBelongToAnotherKindOrAreMissing() {
            refused("loss", Map.of("plants", 1, "cause", "rot", "trays", 1), 400, "malformed")
                    .body("errors.field", contains("trays"));
            refused("loss", Map.of("plants", 1), 400, "malformed").body("errors.field", contains("cause"));
            refused("bloom", Map.of(), 400, "malformed").body("errors.field", contains("kind"));
            refused("ship", Map.of("trays", 1, "order", UUID.randomUUID()), 400, "malformed")
                    .body("errors.field", contains("line"));
            refused(Map.of("kind", "count", "plants", 1), 400, "malformed").body("errors.field", hasItem("happenedAt"));
        }

        @Test
        void aPromiseThatIsNotThere() {
            enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);
            refused("ship", Map.of("trays", 1, "order", UUID.randomUUID(), "line", 1), 422, "unknown-code");
        }

        @Test
        void aBatchThatIsNotThere() {
            var before = new Tables(database).everything();
            nursery.enter("nobody", nursery.entry("loss", Map.of("plants", 1, "cause", "rot")))
                    .statusCode(404)
                    .body("asked", equalTo("nobody"));
            for (String path : List.of("", "/entries", "/development")) {
                given().get("/api/batches/nobody" + path).then().statusCode(404);
            }
            assertThat(new Tables(database).everything()).isEqualTo(before);
        }

        private ValidatableResponse refused(String kind, Map<String, ?> fields, int status, String type) {
            return refused(nursery.entry(kind, fields), status, type);
        }

        private ValidatableResponse refused(Map<String, Object> entry, int status, String type) {
            var tables = new Tables(database);
            var before = tables.everything();
            ValidatableResponse answer = nursery.enter(batch, entry)
                    .statusCode(status)
                    .contentType("application/problem+json")
                    .body("type", equalTo("/problems/" + type));
            assertThat(tables.everything()).isEqualTo(before);
            return answer;
        }
    }

    @Test
    void aBatchThatCannotBeStuckIsRefusedAndNothingIsWritten() {
        Nursery elsewhere = Nursery.opened(time);
        var tables = new Tables(database);
        var before = tables.everything();

        stickRefused("site", "nowhere", 422, "unknown-code");
        stickRefused("house", "nowhere", 422, "unknown-code");
        stickRefused("variety", "nothing", 422, "unknown-code");
        stickRefused("trayFormat", "nothing", 422, "unknown-code");
        stickRefused("house", elsewhere.house, 422, "not-allowed");
        stickRefused("trays", 0, 422, "not-allowed");
        stickRefused("trays", -3, 422, "not-allowed");
        stickRefused("trays", 20_001, 422, "not-allowed");
        stickRefused("plants", 0, 422, "out-of-range");
        stickRefused("plants", 101, 422, "out-of-range");
        stickRefused("stuckAt", time.instant().plusSeconds(121).toString(), 422, "in-the-future");
        stickRefused("stuckAt", "yesterday", 400, "malformed");
        stickRefused("stuckAt", "2026-02-30T10:00:00Z", 400, "malformed");
        stickRefused("stuckAt", "2026-02-20T10:00:00", 400, "malformed");
        stickRefused("stuckAt", 1_700_000_000, 400, "malformed");
        stickRefused("stuckAt", List.of(2026, 2, 20), 400, "malformed");

        assertThat(tables.everything()).isEqualTo(before);
    }

    @Test
    void batchesAreListedByWhatIsAskedFor() {
        String stuck = nursery.stuck(1, Duration.ofDays(5));
        String finished = nursery.ready(1, 90);
        enter(finished, "ship", Map.of("trays", 1)).statusCode(201);

        assertThat(listed("")).containsExactly(stuck);
        assertThat(listed("&state=finished")).containsExactly(finished);
        assertThat(listed("&state=all")).containsExactlyInAnyOrder(stuck, finished);
        assertThat(listed("&stage=STICK")).containsExactly(stuck);
        assertThat(listed("&stage=ROOT")).isEmpty();
        assertThat(listed("&text=grey MORN")).containsExactly(stuck);
        assertThat(listed("&text=marigold")).isEmpty();
        assertThat(listed("&house=" + nursery.otherHouse)).isEmpty();
        assertThat(Nursery.batch(finished).getString("stage")).isEqualTo("SHIP");
        assertThat((Object) Nursery.batch(finished).get("outlook")).isNull();
        given().get("/api/batches?state=dead").then().statusCode(400);
        given().get("/api/batches?stage=BLOOM").then().statusCode(equalTo(404));
    }

    private List<String> listed(String more) {
        return Nursery.get("/api/batches?site=" + nursery.site + more).getList("batches.id");
    }

    private void stickRefused(String field, Object value, int status, String type) {
        nursery.post("/api/batches", stickWith(field, value))
                .statusCode(status)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/" + type));
    }

    private Map<String, Object> stickWith(String field, Object value) {
        Map<String, Object> body = nursery.stickBody(1, Duration.ofDays(3));
        body.put(field, value);
        return body;
    }

    private ValidatableResponse enter(String batch, String kind, Map<String, ?> fields) {
        return nursery.enter(batch, nursery.entry(kind, fields));
    }

    private static JsonPath entries(String batch) {
        return Nursery.get("/api/batches/" + batch + "/entries");
    }
}
