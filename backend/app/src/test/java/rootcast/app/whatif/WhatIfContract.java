package rootcast.app.whatif;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** What would move; nothing does. */
abstract class WhatIfContract {

    @Inject
    HandSetClock time;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    private void readings(String house, double celsius) {
        List<Map<String, Object>> readings = new ArrayList<>();
        for (int hour = 1; hour <= 24 * 9; hour++) {
            readings.add(Map.of(
                    "house",
                    house,
                    "quantity",
                    "medium-temperature",
                    "value",
                    celsius,
                    "unit",
                    "Cel",
                    "at",
                    nursery.now().minus(Duration.ofHours(hour)).toString()));
        }
        nursery.post("/api/readings", readings).statusCode(200);
    }

    private JsonPath ask(Map<String, Object> question) {
        return nursery.post("/api/what-if", question).statusCode(200).extract().jsonPath();
    }

    private static Map<String, Object> setpoint(String house, double mediumC, String from) {
        return Map.of("setpoints", List.of(Map.of("house", house, "mediumC", mediumC, "from", from)));
    }

    @Test
    void aWarmerHouseBringsDatesForwardAndNothingIsStored() {
        readings(nursery.house, 19);
        String id = nursery.stuck(10, Duration.ofDays(9));
        String other = nursery.stuck(3, Duration.ofDays(4));
        Object before = Nursery.batch(id).get("outlook.readyAt");

        JsonPath answer = ask(setpoint(
                nursery.house, 25, nursery.now().plus(Duration.ofDays(1)).toString()));

        assertThat(answer.getList("batches.id", String.class)).containsExactlyInAnyOrder(id, other);
        String mine = "batches.find { it.id == '" + id + "' }";
        assertThat((Object) answer.get(mine + ".before.readyAt")).isEqualTo(before);
        assertThat(Instant.parse(answer.getString(mine + ".after.readyAt.p50")))
                .isBefore(Instant.parse(answer.getString(mine + ".before.readyAt.p50"))
                        .minus(Duration.ofDays(2)));
        assertThat(answer.getInt(mine + ".after.saleableTrays.p50"))
                .isEqualTo(answer.getInt(mine + ".before.saleableTrays.p50"));
        assertThat(answer.getList("cells.findAll { it.openAfter > it.openBefore }"))
                .isNotEmpty();
        assertThat(answer.getList("cells.variety", String.class)).containsOnly(nursery.variety);
        assertThat((Object) Nursery.batch(id).get("outlook.readyAt")).isEqualTo(before);
        assertThat(Nursery.get("/api/houses/" + nursery.house + "/setpoints").getList("$"))
                .isEmpty();
    }

    /** The site ships on Thursdays: a week stands for that day, as on the board, not for its Monday. */
    @Test
    void eachWeekSaysTheDayItStandsFor() {
        Map<String, Object> site = new HashMap<>(nursery.siteBody("Etc/UTC"));
        site.put("shipDay", "THURSDAY");
        given().contentType(ContentType.JSON)
                .body(site)
                .put("/api/sites/" + nursery.site)
                .then()
                .statusCode(200);
        readings(nursery.house, 19);
        nursery.stuck(10, Duration.ofDays(9));

        JsonPath answer = ask(setpoint(
                nursery.house, 25, nursery.now().plus(Duration.ofDays(1)).toString()));

        assertThat(answer.getList("cells.date", String.class).stream()
                        .skip(1)
                        .map(date -> LocalDate.parse(date).getDayOfWeek()))
                .hasSizeGreaterThan(3)
                .containsOnly(DayOfWeek.THURSDAY);
    }

    /** What is asked as a question must be what happens once it is done. */
    @Test
    void theAnswerIsWhatThePlanThenMakes() {
        readings(nursery.house, 19);
        String id = nursery.stuck(10, Duration.ofDays(9));
        String from = nursery.now().plus(Duration.ofDays(3)).toString();
        JsonPath answer = ask(setpoint(nursery.house, 24, from));

        nursery.post("/api/houses/" + nursery.house + "/setpoints", Map.of("mediumC", 24, "from", from))
                .statusCode(201);

        assertThat((Object) Nursery.batch(id).get("outlook.readyAt")).isEqualTo(answer.get("batches[0].after.readyAt"));
    }

    @Test
    void aBatchMovedToAWarmerHouseIsReadyEarlier() {
        readings(nursery.house, 18);
        readings(nursery.otherHouse, 24);
        String id = nursery.stuck(10, Duration.ofDays(9));

        JsonPath answer = ask(Map.of(
                "moves",
                List.of(Map.of(
                        "batch",
                        id,
                        "house",
                        nursery.otherHouse,
                        "from",
                        nursery.today().toString()))));

        assertThat(answer.getString("batches[0].before.house")).isEqualTo(nursery.house);
        assertThat(answer.getString("batches[0].after.house")).isEqualTo(nursery.otherHouse);
        assertThat(answer.getString("batches[0].after.readyAt.p50"))
                .isLessThan(answer.getString("batches[0].before.readyAt.p50"));

        nursery.enter(id, nursery.entry("move", Map.of("house", nursery.otherHouse)))
                .statusCode(201);
        assertThat((Object) Nursery.batch(id).get("outlook.readyAt")).isEqualTo(answer.get("batches[0].after.readyAt"));
    }

    @Test
    void promisesThatWouldBreakOrBeRescuedAreNamed() {
        readings(nursery.house, 20);
        nursery.stuck(10, Duration.ofDays(12));
        LocalDate monday = nursery.nextMonday();
        List<Integer> open = nursery.board(monday, 8).getList("rows[0].cells.open");
        int week = open.indexOf(open.stream().filter(n -> n > 0).findFirst().orElseThrow());
        int trays = open.get(week);
        long number = nursery.order(monday.plusWeeks(week), trays)
                .statusCode(201)
                .extract()
                .jsonPath()
                .getLong("number");
        String soon = nursery.now().plus(Duration.ofHours(1)).toString();

        JsonPath cold = ask(setpoint(nursery.house, 12, soon));

        assertThat(cold.getList("promises.orderNumber", Long.class)).containsExactly(number);
        assertThat(cold.getInt("promises[0].trays")).isEqualTo(trays);
        assertThat(cold.getInt("promises[0].shortBefore")).isZero();
        assertThat(cold.getInt("promises[0].shortAfter")).isEqualTo(trays);

        nursery.post("/api/houses/" + nursery.house + "/setpoints", Map.of("mediumC", 12, "from", soon))
                .statusCode(201);
        JsonPath warm = ask(setpoint(nursery.house, 24, soon));

        assertThat(warm.getList("promises.orderNumber", Long.class)).containsExactly(number);
        assertThat(warm.getInt("promises[0].shortBefore")).isEqualTo(trays);
        assertThat(warm.getInt("promises[0].shortAfter")).isZero();
        assertThat(ask(setpoint(nursery.house, 12, soon)).getList("promises")).isEmpty();
    }

    @Test
    void questionsThatCannotBeAreRefusedFieldByField() {
        String id = nursery.stuck(10, Duration.ofDays(9));
        String soon = nursery.now().plus(Duration.ofDays(1)).toString();
        nursery.post("/api/what-if", Map.of()).statusCode(400).body("detail", containsString("both empty"));
        nursery.post("/api/what-if", setpoint("nowhere", 22, soon))
                .statusCode(422)
                .body("errors[0].field", equalTo("setpoints[0].house"));
        nursery.post("/api/what-if", setpoint(nursery.house, 55, soon)).statusCode(400);
        nursery.post("/api/what-if", setpoint(nursery.house, 22, "soon")).statusCode(400);
        nursery.post("/api/what-if", setpoint(nursery.house, 22, "2020-01-01"))
                .statusCode(422)
                .body("detail", containsString("past"));
        nursery.post(
                        "/api/what-if",
                        Map.of("moves", List.of(Map.of("batch", "B-none", "house", nursery.house, "from", soon))))
                .statusCode(422)
                .body("errors[0].field", equalTo("moves[0].batch"));
        Nursery elsewhere = Nursery.opened(time);
        nursery.post(
                        "/api/what-if",
                        Map.of("moves", List.of(Map.of("batch", id, "house", elsewhere.house, "from", soon))))
                .statusCode(422)
                .body("errors[0].field", equalTo("moves[0].house"));
    }
}
