package rootcast.app.ledger;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** What cannot have happened to a batch, or cannot be stuck, is refused with its numbers and nothing is written. */
abstract class RefusedEntriesContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    private Nursery nursery;
    private String batch;

    @BeforeEach
    void stick() {
        nursery = Nursery.opened(time);
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
        nursery.enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);
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
        nursery.enter(batch, "stage", Map.of("stage", "CALLUS")).statusCode(201);
        refused("ship", Map.of("trays", 1), 422, "ship-before-rooted").body("current", equalTo("CALLUS"));
    }

    @Test
    void shippingMoreThanCanBeFilled() {
        nursery.enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);
        nursery.enter(batch, "count", Map.of("plants", 179)).statusCode(201);
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
        nursery.enter(batch, "loss", Map.of("plants", 150, "cause", "dry-down")).statusCode(201);
        Instant yesterday = time.instant().minus(Duration.ofDays(1));
        refused(Nursery.entry("loss", yesterday, Map.of("plants", 60, "cause", "rot")), 422, "contradicts-later-entry")
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
        JsonPath entries = Nursery.entries(batch);
        String stick = entries.getString("[0].id");
        refused("reversal", Map.of("entry", UUID.randomUUID(), "reason", "x"), 422, "no-such-entry");
        refused("reversal", Map.of("entry", "seven", "reason", "x"), 400, "malformed");
        String loss = nursery.enter(batch, "loss", Map.of("plants", 1, "cause", "rot"))
                .extract()
                .path("id");
        refused("reversal", Map.of("entry", stick, "reason", "x"), 422, "contradicts-later-entry");
        refused("reversal", Map.of("entry", loss, "reason", " "), 400, "malformed")
                .body("errors.field", contains("reason"));
        String reversal = nursery.enter(batch, "reversal", Map.of("entry", loss, "reason", "x"))
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
        nursery.enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);
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

    private void stickRefused(String field, Object value, int status, String type) {
        nursery.post("/api/batches", nursery.stickWith(field, value))
                .statusCode(status)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/" + type));
    }
}
