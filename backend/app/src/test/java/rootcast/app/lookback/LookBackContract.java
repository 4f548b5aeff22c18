package rootcast.app.lookback;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** Batches and the board as they were, and why a date is what it is. */
abstract class LookBackContract {

    @Inject
    HandSetClock time;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    private void readings(Instant from, Instant until, double celsius) {
        List<Map<String, Object>> readings = new ArrayList<>();
        for (Instant at = from; at.isBefore(until); at = at.plus(Duration.ofMinutes(30))) {
            readings.add(Map.of(
                    "house",
                    nursery.house,
                    "quantity",
                    "medium-temperature",
                    "value",
                    celsius,
                    "unit",
                    "Cel",
                    "at",
                    at.toString()));
        }
        nursery.post("/api/readings", readings).statusCode(200);
    }

    private static JsonPath batch(String id, String query) {
        return Nursery.get("/api/batches/" + id + (query.isEmpty() ? "" : "?" + query));
    }

    private JsonPath board(String query) {
        return Nursery.get("/api/board?site=" + nursery.site + "&weeks=6&" + query);
    }

    /** Whatever comes afterwards, for any time: the answer of then comes back to the last digit. */
    @Test
    void whatWasAnsweredThenIsAnsweredAgain() {
        String id = nursery.stuck(10, Duration.ofDays(9));
        readings(nursery.now().minus(Duration.ofDays(9)), nursery.now(), 21);
        nursery.enter(id, Nursery.entry("look", nursery.now().minus(Duration.ofHours(30)), look(40, 31)))
                .statusCode(201);
        nursery.ready(5, 470);
        nursery.order(nursery.nextMonday(), 2).statusCode(201);
        Instant then = nursery.now();
        Object outlookThen = batch(id, "").get("outlook");
        Object rowsThen = board("").get("rows");

        time.moveOn(Duration.ofDays(3));
        nursery.enter(id, Nursery.entry("loss", then.minus(Duration.ofDays(2)), Map.of("plants", 200, "cause", "rot")))
                .statusCode(201);
        readings(then.minus(Duration.ofDays(9)).plusSeconds(600), then.minus(Duration.ofDays(2)), 24);
        nursery.enter(id, nursery.entry("stage", Map.of("stage", "ROOT"))).statusCode(201);
        nursery.order(nursery.nextMonday(), 1).statusCode(201);
        assertThat((Object) batch(id, "").get("outlook")).isNotEqualTo(outlookThen);

        String asOf = "asOf=" + then + "&knownAt=" + then;
        assertThat((Object) batch(id, asOf).get("outlook")).isEqualTo(outlookThen);
        assertThat((Object) board(asOf).get("rows")).isEqualTo(rowsThen);
    }

    private static Map<String, Object> look(int cells, int reached) {
        return Map.of("stage", "CALLUS", "cells", cells, "reached", reached);
    }

    @Test
    void whatHappenedByThenCountsEvenIfItWasRecordedLater() {
        String id = nursery.stuck(10, Duration.ofDays(9));
        Instant then = nursery.now();
        time.moveOn(Duration.ofDays(1));
        nursery.enter(id, Nursery.entry("loss", then.minus(Duration.ofDays(1)), Map.of("plants", 70, "cause", "rot")))
                .statusCode(201);
        nursery.enter(id, Nursery.entry("loss", then.plus(Duration.ofHours(3)), Map.of("plants", 5, "cause", "rot")))
                .statusCode(201);

        assertThat(batch(id, "").getInt("plants.alive")).isEqualTo(925);
        assertThat(batch(id, "asOf=" + then).getInt("plants.alive")).isEqualTo(930);
        assertThat(batch(id, "asOf=" + then + "&knownAt=" + then).getInt("plants.alive"))
                .isEqualTo(1000);
        assertThat(batch(id, "knownAt=" + then).getInt("plants.alive")).isEqualTo(1000);
    }

    @Test
    void aReversedEntryIsStillThereForWhoDoesNotKnowOfTheReversal() {
        String id = nursery.stuck(10, Duration.ofDays(9));
        String loss = nursery.enter(id, nursery.entry("loss", Map.of("plants", 70, "cause", "rot")))
                .statusCode(201)
                .extract()
                .path("id");
        Instant then = nursery.now();
        time.moveOn(Duration.ofHours(2));
        nursery.enter(id, nursery.entry("reversal", Map.of("entry", loss, "reason", "wrong batch")))
                .statusCode(201);

        assertThat(batch(id, "asOf=" + then).getInt("plants.alive")).isEqualTo(1000);
        assertThat(batch(id, "asOf=" + then + "&knownAt=" + then).getInt("plants.alive"))
                .isEqualTo(930);
    }

    @Test
    void theBoardOfThenKnowsNoLaterBatchAndNoLaterPromise() {
        Instant before = nursery.now();
        time.moveOn(Duration.ofHours(1));
        nursery.ready(10, 950);
        Instant then = nursery.now();
        time.moveOn(Duration.ofHours(1));
        LocalDate monday = nursery.nextMonday();
        nursery.order(monday, 4).statusCode(201);
        String week = "&from=" + Nursery.week(monday);

        assertThat(board("asOf=" + then + "&knownAt=" + before + week).getList("rows"))
                .isEmpty();
        assertThat(board("asOf=" + then + week).getInt("rows[0].cells[0].open")).isEqualTo(10);
        assertThat(board(week.substring(1)).getInt("rows[0].cells[0].open")).isEqualTo(6);

        var cellThen = nursery.cell(monday, "&asOf=" + then);
        assertThat(cellThen.getInt("open")).isEqualTo(10);
        assertThat(cellThen.getString("asOf")).isEqualTo(then.toString());
        assertThat(cellThen.getList("lots")).hasSize(1);
        assertThat(cellThen.getList("promises")).isEmpty();
        assertThat(nursery.cell(monday, "&asOf=" + then + "&knownAt=" + before).getList("lots"))
                .isEmpty();
        assertThat(nursery.cell(monday, "").getInt("open")).isEqualTo(6);
    }

    @Test
    void aMomentToComeOrNoMomentAtAllIsRefused() {
        String id = nursery.stuck(1, Duration.ofDays(2));
        given().get("/api/batches/" + id + "?asOf=" + nursery.now().plusSeconds(60))
                .then()
                .statusCode(422)
                .body("detail", containsString("still to come"));
        given().get("/api/board?knownAt=" + nursery.now().plusSeconds(60))
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("knownAt"));
        given().get("/api/board?asOf=yesterday")
                .then()
                .statusCode(400)
                .body("errors[0].code", equalTo("not-an-instant"));
        given().get("/api/batches/" + id + "?asOf=" + nursery.now().minus(Duration.ofDays(3)))
                .then()
                .statusCode(404)
                .body("detail", containsString(id));
    }

    /** 22 °C is this nursery's reference: 7 + 9 + 10 days as planned. */
    @Test
    void theExplanationGoesFromThePlanToTheDateInPartsThatAddUp() {
        String id = nursery.stuck(10, Duration.ofDays(12));
        Instant stuck = nursery.now().minus(Duration.ofDays(12));
        readings(stuck, stuck.plus(Duration.ofDays(5)), 22);
        readings(stuck.plus(Duration.ofDays(5)), stuck.plus(Duration.ofDays(6)), 15);
        readings(stuck.plus(Duration.ofDays(7)), nursery.now(), 22);
        nursery.enter(id, Nursery.entry("look", stuck.plus(Duration.ofDays(8)), look(50, 20)))
                .statusCode(201);

        JsonPath explained = Nursery.get("/api/batches/" + id + "/explanation");

        Instant planned = Instant.parse(explained.getString("plannedReadyAt"));
        Instant ready = Instant.parse(explained.getString("readyAt"));
        assertThat(planned)
                .isBetween(
                        stuck.plus(Duration.ofDays(26)).minusSeconds(1),
                        stuck.plus(Duration.ofDays(26)).plusSeconds(1));
        assertThat(ready).isEqualTo(Instant.parse(batch(id, "").getString("outlook.readyAt.p50")));
        List<Float> days = explained.getList("parts.days", Float.class);
        double sum = days.stream().mapToDouble(Float::doubleValue).sum();
        assertThat(sum).isCloseTo(Duration.between(planned, ready).toMillis() / 86_400_000.0, within(0.05));
        assertThat(sum).isCloseTo(explained.getDouble("differenceDays"), within(1e-3));
        assertThat(explained.getList("parts.cause", String.class)).contains("temperature", "gap-filling", "rate-seen");
        assertThat(explained.getList("parts.text", String.class)).anyMatch(text -> text.contains("15.0 °C"));
    }

    @Test
    void thePlotHasThePlanTheLooksAndTheHours() {
        String id = nursery.stuck(10, Duration.ofDays(9));
        nursery.enter(id, nursery.entry("look", look(40, 31))).statusCode(201);

        JsonPath plot = Nursery.get("/api/batches/" + id + "/development");

        assertThat(plot.getList("looks.reached")).containsExactly(31);
        assertThat(plot.getFloat("plan[0].progress")).isZero();
        assertThat(plot.getFloat("plan[-1].progress")).isEqualTo(3);
        assertThat(plot.getList("hours")).hasSizeGreaterThan(200);
    }

    @Test
    void aPlannedSetpointMovesTheDateFromThenOn() {
        String id = nursery.stuck(10, Duration.ofDays(5));
        readings(nursery.now().minus(Duration.ofDays(5)), nursery.now(), 20);
        Instant before = Instant.parse(batch(id, "").getString("outlook.readyAt.p50"));
        nursery.post(
                        "/api/houses/" + nursery.house + "/setpoints",
                        Map.of(
                                "mediumC",
                                24,
                                "from",
                                nursery.now().plus(Duration.ofDays(2)).toString()))
                .statusCode(201);

        assertThat(Instant.parse(batch(id, "").getString("outlook.readyAt.p50")))
                .isBefore(before);
        assertThat(Nursery.get("/api/houses/" + nursery.house + "/setpoints").getList("mediumC"))
                .containsExactly(24.0f);
        nursery.post(
                        "/api/houses/" + nursery.house + "/setpoints",
                        Map.of("mediumC", 50, "from", nursery.now().toString()))
                .statusCode(400);
        given().get("/api/houses/nowhere/setpoints").then().statusCode(404);
    }
}
