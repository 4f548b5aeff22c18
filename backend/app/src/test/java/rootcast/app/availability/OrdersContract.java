package rootcast.app.availability;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Promising trays and giving them back, seen from outside. A ready batch of 950 plants fills 10 trays of 90. */
abstract class OrdersContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    private Nursery nursery;
    private String batch;
    private LocalDate monday;

    @BeforeEach
    void growTenTrays() {
        nursery = Nursery.opened(time);
        batch = nursery.ready(10, 950);
        monday = nursery.nextMonday();
    }

    /** Whoever ships a batch asks for the orders that want it, not for every order of the business. */
    @Test
    void ordersThatWantOneVarietyInOneFormatAtOneSiteAreAskedFor() {
        String wanted = nursery.order(monday, 1).statusCode(201).extract().path("id");
        Nursery other = Nursery.opened(time);
        other.ready(10, 950);
        other.order(monday, 1).statusCode(201);
        String cell = "&variety=" + nursery.variety + "&trayFormat=" + nursery.trayFormat + "&site=" + nursery.site;

        assertThat(Nursery.get("/api/orders?state=open" + cell).getList("id")).containsExactly(wanted);
        assertThat(Nursery.get("/api/orders?state=open&site=" + other.site + "&variety=" + nursery.variety)
                        .getList("id"))
                .isEmpty();
    }

    @Test
    void anOrderIsAnsweredWithItsPromisesAndTheBatchesBehindThem() {
        String order = nursery.order(monday, 4)
                .statusCode(201)
                .body("customer", equalTo("Garden centre by the mill"))
                .body("released", equalTo(false))
                .body("confidence", equalTo(0.9f))
                .body("position", notNullValue())
                .body("promises", hasSize(1))
                .body("promises[0].line", equalTo(1))
                .body("promises[0].variety", equalTo(nursery.variety))
                .body("promises[0].shipOn", equalTo(monday.toString()))
                .body("promises[0].trays", equalTo(4))
                .body("promises[0].shipped", equalTo(0))
                .body("promises[0].kept", equalTo(true))
                .body("promises[0].lots.batch", contains(batch))
                .body("promises[0].lots.trays", contains(4))
                .extract()
                .path("id");

        JsonPath read = Nursery.get("/api/orders/" + order);
        assertThat(read.getInt("promises[0].trays")).isEqualTo(4);
        assertThat(Nursery.get("/api/orders").getList("id")).contains(order);
    }

    @Test
    void aPromiseLowersWhatIsOpenInEveryWeekThatTheSameTraysCouldServe() {
        // Ready on 28 February at the earliest and held for 30 days: four Mondays from 9 March on see the same ten
        // trays.
        assertThat(nursery.board(monday, 3).getList("rows[0].cells.open")).containsExactly(10, 10, 10);

        nursery.order(monday.plusWeeks(1), 4).statusCode(201);

        JsonPath board = nursery.board(monday, 3);
        assertThat(board.getList("rows[0].cells.open")).containsExactly(6, 6, 6);
        assertThat(board.getList("rows[0].cells.promised")).containsExactly(0, 4, 0);
        assertThat(board.getList("rows[0].cells.ready")).containsExactly(10, 10, 10);
    }

    @Test
    void whatIsNotOpenIsRefusedWithWhatIsOpenAndNothingIsWritten() {
        nursery.order(monday, 4).statusCode(201);
        var tables = new Tables(database);
        var before = tables.everything();

        nursery.order(monday.plusWeeks(1), 7)
                .statusCode(409)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/not-enough-open"))
                .body("lines", hasSize(1))
                .body("lines[0].line", equalTo(1))
                .body("lines[0].variety", equalTo(nursery.variety))
                .body("lines[0].trayFormat", equalTo(nursery.trayFormat))
                .body("lines[0].site", equalTo(nursery.site))
                .body("lines[0].shipOn", equalTo(monday.plusWeeks(1).toString()))
                .body("lines[0].asked", equalTo(7))
                .body("lines[0].open", equalTo(6))
                .body("lines[0].nearestDate", nullValue())
                .body("detail", containsString("7"));

        assertThat(tables.everything()).isEqualTo(before);
    }

    @Test
    void theNearestDateWithEnoughIsNamed() {
        // Nine cells in ten were ready two days ago and each is held for 30 days from when it was itself. Ten trays of
        // 90 of 950
        // plants leave few to be past their day. Summed apart from this program (R's binomial of 950; cells log-normal
        // on the
        // clock since sticking, the last stage being 10 of 26 days, with 0.12 · 1.202, in one batch of six by e^0.52
        // wider
        // and in one narrower; rate 0.93): 24 days from today 7 trays have 1.00 and 8 have 0.84, a day later 5 have
        // 1.00 and
        // 6 have 0.89. So 24 days is the last with seven.
        LocalDate last = nursery.today().plusDays(24);

        nursery.order(last.plusDays(6), 7)
                .statusCode(409)
                .body("lines[0].open", equalTo(0))
                .body("lines[0].nearestDate", equalTo(last.toString()))
                .body("lines[0].nearestOpen", equalTo(7));
    }

    @Test
    void allLinesArePromisedOrNone() {
        nursery.post(
                        "/api/orders",
                        Nursery.orderBody(
                                List.of(nursery.line(monday, 6), nursery.line(monday, 5), nursery.line(monday, 4))))
                .statusCode(409)
                .body("lines.line", contains(2))
                .body("lines[0].open", equalTo(4));
        assertThat(nursery.open(monday)).isEqualTo(10);

        nursery.post("/api/orders", Nursery.orderBody(List.of(nursery.line(monday, 6), nursery.line(monday, 4))))
                .statusCode(201)
                .body("promises.line", contains(1, 2));
        assertThat(nursery.open(monday)).isZero();
    }

    @Test
    void aReleasedOrderGivesItsTraysBackHoweverOftenItIsReleased() {
        String order = nursery.order(monday, 4).extract().path("id");
        assertThat(nursery.open(monday)).isEqualTo(6);

        given().delete("/api/orders/" + order).then().statusCode(204);
        given().delete("/api/orders/" + order).then().statusCode(204);

        assertThat(nursery.open(monday)).isEqualTo(10);
        assertThat(Nursery.get("/api/orders/" + order).getBoolean("released")).isTrue();
        assertThat(Nursery.get("/api/orders").getList("id")).doesNotContain(order);
        assertThat(Nursery.get("/api/orders?state=all").getList("id")).contains(order);
    }

    @Test
    void traysThatLeaveForAPromiseFulfilItAndFreeNothing() {
        String order = nursery.order(monday, 4).extract().path("id");

        ship(order, 3).statusCode(201);

        // 950 - 270 = 680 plants fill 7 trays, 1 of them promised.
        assertThat(Nursery.get("/api/orders/" + order).getInt("promises[0].shipped"))
                .isEqualTo(3);
        assertThat(nursery.open(monday)).isEqualTo(6);
        ship(order, 2).statusCode(422).body("type", equalTo("/problems/not-allowed"));

        given().delete("/api/orders/" + order).then().statusCode(204);
        assertThat(nursery.open(monday)).isEqualTo(7);
        assertThat(Nursery.get("/api/orders/" + order).getInt("promises[0].shipped"))
                .isEqualTo(3);
        ship(order, 1).statusCode(422).body("type", equalTo("/problems/unknown-code"));
    }

    @Test
    void anotherVarietysTraysCannotFulfilThePromise() {
        String order = nursery.order(monday, 4).extract().path("id");
        Nursery other = Nursery.opened(time);
        String otherBatch = other.ready(2, 200);

        other.enter(otherBatch, other.entry("ship", Map.of("trays", 1, "order", order, "line", 1)))
                .statusCode(422)
                .body("type", equalTo("/problems/not-allowed"));
        ship(order, 1, 2).statusCode(422).body("errors.field", contains("line"));
    }

    @Test
    void aPromiseThatCanNoLongerBeKeptIsNamedAndStays() {
        String order = nursery.order(monday, 8).extract().path("id");

        nursery.enter(batch, nursery.entry("loss", Map.of("plants", 500, "cause", "botrytis")))
                .statusCode(201);

        // 450 plants fill 5 trays: 3 of the 8 are missing.
        JsonPath cell = nursery.board(monday, 1);
        assertThat(cell.getInt("rows[0].cells[0].promised")).isEqualTo(8);
        assertThat(cell.getInt("rows[0].cells[0].open")).isZero();
        assertThat(cell.getInt("rows[0].cells[0].atRisk")).isPositive();
        assertThat(Nursery.get("/api/orders/" + order).getBoolean("promises[0].kept"))
                .isFalse();
    }

    @Test
    void anOrderThatCannotBeReadOrMakesNoSenseIsRefusedAndNothingIsWritten() {
        var tables = new Tables(database);
        var before = tables.everything();

        refused("variety", "nothing", 422);
        refused("trayFormat", "nothing", 422);
        refused("site", "nowhere", 422);
        refused("shipOn", nursery.today().minusDays(1).toString(), 422);
        refused("shipOn", nursery.today().plusYears(3).toString(), 422);
        refused("shipOn", "2026-02-30", 400);
        refused("shipOn", "next Monday", 400);
        refused("shipOn", monday + "T10:00:00Z", 400);
        refused("shipOn", 20_521, 400);
        refused("shipOn", List.of(2026, 3, 9), 400);
        refused("trays", 0, 400);
        refused("trays", -1, 400);
        refused("trays", 20_001, 422);
        refused("trays", Integer.MAX_VALUE, 422);
        refused("trays", 1.5, 400);
        nursery.post("/api/orders", Nursery.orderBody(List.of())).statusCode(400);
        nursery.post("/api/orders", Map.of("customer", " ", "lines", List.of(nursery.line(monday, 1))))
                .statusCode(400);
        for (double confidence : new double[] {0, 1, 1.5, -0.9}) {
            Map<String, Object> order = new HashMap<>(Nursery.orderBody(List.of(nursery.line(monday, 1))));
            order.put("confidence", confidence);
            nursery.post("/api/orders", order).statusCode(422);
        }
        given().get("/api/orders/" + UUID.randomUUID()).then().statusCode(404);
        given().get("/api/orders/seven").then().statusCode(404);
        given().delete("/api/orders/" + UUID.randomUUID()).then().statusCode(404);
        given().get("/api/orders?state=lost").then().statusCode(400);

        assertThat(tables.everything()).isEqualTo(before);
    }

    @Test
    void ordersAreNumberedOneAfterTheOtherAndARefusedOneTakesNoNumber() {
        long first = number(nursery.order(monday, 1).statusCode(201));
        nursery.order(monday, 11).statusCode(409);
        long second = number(nursery.order(monday.plusWeeks(1), 2).statusCode(201));

        assertThat(second).isEqualTo(first + 1);
        assertThat(Nursery.get("/api/orders?text=" + second).getList("number", Long.class))
                .contains(second)
                .doesNotContain(first);
        assertThat(nursery.cell(monday, "").getList("promises.orderNumber", Long.class))
                .containsExactly(first, second);
        assertThat(nursery.cell(monday, "").getList("promises.inWeek", Boolean.class))
                .containsExactly(true, false);
        // The same ten trays serve both Mondays, so both promises take from what is open on the first.
        assertThat(nursery.cell(monday, "").getList("promises.inLimit", Boolean.class))
                .containsExactly(true, true);
        assertThat(nursery.cell(monday, "").getInt("limitedBy.capacity")).isEqualTo(10);
        assertThat(nursery.cell(monday, "").getInt("limitedBy.promised")).isEqualTo(3);
        assertThat(nursery.cell(monday, "").getInt("open")).isEqualTo(7);
    }

    private static long number(ValidatableResponse placed) {
        return placed.extract().jsonPath().getLong("number");
    }

    @Test
    void anOrderIsFoundByItsCustomer() {
        Map<String, Object> order = new HashMap<>(Nursery.orderBody(List.of(nursery.line(monday, 1))));
        order.put("customer", "Buyer " + nursery.site + " & Sons");
        nursery.post("/api/orders", order).statusCode(201);

        assertThat(Nursery.get("/api/orders?text=buyer " + nursery.site.toLowerCase(java.util.Locale.ROOT) + " ")
                        .getList("customer"))
                .containsExactly("Buyer " + nursery.site + " & Sons");
    }

    @Test
    void aLowerConfidencePromisesNoFewerTrays() {
        Nursery young = Nursery.opened(time);
        young.stuck(20, java.time.Duration.ofDays(10));
        LocalDate later = young.nextMonday().plusWeeks(3);
        int sure = open(young, later, "0.99");
        int usual = open(young, later, "0.9");
        int even = open(young, later, "0.5");

        assertThat(sure).isLessThanOrEqualTo(usual);
        assertThat(usual).isLessThanOrEqualTo(even);
        assertThat(even).isPositive();
        Map<String, Object> order = new HashMap<>(Nursery.orderBody(List.of(young.line(later, even + 1))));
        order.put("confidence", 0.5);
        young.post("/api/orders", order).statusCode(409).body("lines[0].open", equalTo(even));
        order.put("lines", List.of(young.line(later, even)));
        young.post("/api/orders", order).statusCode(201).body("confidence", equalTo(0.5f));
        assertThat(open(young, later, "0.5")).isZero();
    }

    private static int open(Nursery nursery, LocalDate day, String confidence) {
        return Nursery.get("/api/board?weeks=1&site=" + nursery.site + "&from=" + Nursery.week(day) + "&confidence="
                        + confidence)
                .getInt("rows[0].cells[0].open");
    }

    private void refused(String field, Object value, int status) {
        Map<String, Object> line = new HashMap<>(nursery.line(monday, 1));
        line.put(field, value);
        nursery.post("/api/orders", Nursery.orderBody(List.of(line)))
                .statusCode(status)
                .contentType("application/problem+json")
                .body("detail", not(equalTo("")));
    }

    private io.restassured.response.ValidatableResponse ship(String order, int trays) {
        return ship(order, trays, 1);
    }

    private io.restassured.response.ValidatableResponse ship(String order, int trays, int line) {
        return nursery.enter(batch, nursery.entry("ship", Map.of("trays", trays, "order", order, "line", line)));
    }
}
