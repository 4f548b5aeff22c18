package rootcast.app.board;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** The shared table, seen from outside. */
abstract class BoardContract {

    @Inject
    HandSetClock time;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    /** Source: ISO 8601 week dates, facts-operations D; 2026 has 53 weeks. */
    @ParameterizedTest(name = "{0} begins on {1}")
    @CsvSource({
        "2026-W53, 2026-12-28",
        "2027-W01, 2027-01-04",
        "2026-W01, 2025-12-29",
        "2025-W01, 2024-12-30",
        "2020-W53, 2020-12-28",
        "2009-W01, 2008-12-29",
        "2009-W53, 2009-12-28",
        "2010-W01, 2010-01-04",
    })
    void weeksAreThoseOfIso8601(String week, String monday) {
        JsonPath board = Nursery.get("/api/board?weeks=1&from=" + week);

        assertThat(board.getString("weeks[0].week")).isEqualTo(week);
        assertThat(board.getString("weeks[0].monday")).isEqualTo(monday);
    }

    @Test
    void aYearOf53WeeksIsFollowedByWeekOne() {
        assertThat(Nursery.get("/api/board?weeks=3&from=2026-W52").getList("weeks.week"))
                .containsExactly("2026-W52", "2026-W53", "2027-W01");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "from=2025-W53",
                "from=2026-W54",
                "from=2026-W00",
                "from=2026-10",
                "from=2026-W1",
                "from=2026-W10&weeks=0",
                "from=2026-W10&weeks=54",
                "from=2026-W10&weeks=many",
                "from=2026-W10&weeks=9999999999",
                "confidence=0",
                "confidence=1",
                "confidence=NaN",
                "confidence=Infinity",
                "confidence=sure",
            })
    void weeksAndConfidencesThatAreNoneAreRefused(String query) {
        given().get("/api/board?" + query)
                .then()
                .statusCode(400)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/malformed"))
                .body("instance", equalTo("/api/board"));
    }

    @Test
    void readyTraysStandInEveryWeekInWhichTheyMayLeave() {
        // Nine cells in ten were ready two days ago, each is held for 30 days from when it was itself: all ten trays
        // for three
        // weeks, the last plants on the 30th day. In between summed apart from this program, see OrdersContract: 27
        // days from
        // today 2 trays have 1.00 and 3 have 0.83; a day later 1 has 1.00 and 2 have 0.15.
        nursery.ready(10, 950);
        LocalDate monday = nursery.nextMonday();

        JsonPath board = nursery.board(monday, 6);

        assertThat(board.getDouble("confidence")).isEqualTo(0.9);
        assertThat(board.getList("rows")).hasSize(1);
        assertThat(board.getString("rows[0].varietyName")).isEqualTo("Grey Morning");
        assertThat(board.getString("rows[0].crop")).isEqualTo(nursery.crop);
        for (int week = 0; week < 6; week++) {
            LocalDate day = monday.plusWeeks(week);
            String cell = "rows[0].cells[" + week + "].";
            long ahead = ChronoUnit.DAYS.between(nursery.today(), day);
            int trays = ahead <= 22 ? 10 : ahead == 27 ? 2 : ahead == 28 ? 1 : 0;
            assertThat(ahead)
                    .as("days ahead that the sums were made for")
                    .matches(days -> days <= 22 || days == 27 || days == 28 || days >= 31);
            assertThat(board.getString(cell + "date")).isEqualTo(day.toString());
            assertThat(board.getInt(cell + "ready")).as("%s", day).isEqualTo(trays);
            assertThat(board.getInt(cell + "open")).as("%s", day).isEqualTo(trays);
            assertThat(board.getInt(cell + "likely")).as("%s", day).isBetween(trays, trays == 2 ? 4 : trays);
        }
    }

    @Test
    void aCellStandsForTheSitesOwnShipDay() {
        Map<String, Object> site = new HashMap<>(nursery.siteBody("America/Chicago"));
        site.put("shipDay", "WEDNESDAY");
        given().contentType("application/json")
                .body(site)
                .put("/api/sites/" + nursery.site)
                .then()
                .statusCode(200);
        nursery.ready(10, 950);

        JsonPath board = nursery.board(nursery.nextMonday(), 1);

        assertThat(board.getString("rows[0].cells[0].date"))
                .isEqualTo(nursery.nextMonday().plusDays(2).toString());
    }

    @Test
    void aPromiseForAnyDayOfTheWeekCountsInItsCell() {
        nursery.ready(10, 950);
        LocalDate monday = nursery.nextMonday();
        nursery.order(monday.plusDays(6), 3).statusCode(201);
        nursery.order(monday, 2).statusCode(201);

        assertThat(nursery.board(monday, 2).getList("rows[0].cells.promised")).containsExactly(5, 0);
    }

    @Test
    void rowsAreFoundBySiteCropAndText() {
        nursery.ready(1, 95);
        String week = Nursery.week(nursery.nextMonday());

        assertThat(rows("site=" + nursery.site, week)).containsExactly(nursery.variety);
        assertThat(rows("crop=" + nursery.crop, week)).containsExactly(nursery.variety);
        assertThat(rows("text=" + nursery.variety.toUpperCase(java.util.Locale.ROOT), week))
                .contains(nursery.variety);
        assertThat(rows("site=" + nursery.site + "&text=marigold", week)).isEmpty();
        assertThat(rows("site=nowhere", week)).isEmpty();
    }

    @Test
    void aBatchThatHasLeftLeavesTheBoard() {
        String batch = nursery.ready(1, 90);
        assertThat(nursery.board(nursery.nextMonday(), 1).getList("rows")).hasSize(1);

        nursery.enter(batch, nursery.entry("ship", Map.of("trays", 1))).statusCode(201);

        assertThat(nursery.board(nursery.nextMonday(), 1).getList("rows")).isEmpty();
    }

    @Test
    void aCellIsExplainedDownToItsBatchesAndPromises() {
        String batch = nursery.ready(10, 950);
        LocalDate monday = nursery.nextMonday();
        String order = nursery.order(monday, 4).extract().path("id");

        JsonPath cell = nursery.cell(monday, "");

        assertThat(cell.getInt("ready")).isEqualTo(10);
        assertThat(cell.getInt("promised")).isEqualTo(4);
        assertThat(cell.getInt("open")).isEqualTo(6);
        assertThat(cell.getString("date")).isEqualTo(monday.toString());
        assertThat(cell.getString("week")).isEqualTo(Nursery.week(monday));
        assertThat(cell.getList("lots.batch")).containsExactly(batch);
        assertThat(cell.getInt("lots[0].alive")).isEqualTo(950);
        assertThat(cell.getInt("lots[0].saleableTrays.p10")).isEqualTo(10);
        assertThat(cell.getInt("lots[0].traysAtConfidence")).isEqualTo(10);
        assertThat(cell.getInt("lots[0].promisedHere")).isEqualTo(4);
        assertThat(cell.getList("promises.order")).containsExactly(order);
        assertThat(cell.getDouble("promises[0].chance")).isEqualTo(1);
        assertThat(cell.getDouble("weekKept")).isEqualTo(1);
        assertThat(cell.getInt("limitedBy.capacity") - cell.getInt("limitedBy.promised"))
                .isEqualTo(6);
        assertThat(cell.getInt("steps.stuck")).isEqualTo(1000);
        assertThat(cell.getInt("steps.lost")).isEqualTo(50);
        assertThat(cell.getInt("steps.alive")).isEqualTo(950);
        assertThat(cell.getInt("steps.open")).isEqualTo(6);
    }

    @Test
    void everyCellOfTheBoardSaysTheSameWhenItIsOpened() {
        nursery.ready(10, 950);
        nursery.stuck(30, Duration.ofDays(12));
        LocalDate monday = nursery.nextMonday();
        nursery.order(monday.plusWeeks(1), 5).statusCode(201);
        JsonPath board = nursery.board(monday, 8);

        for (int week = 0; week < 8; week++) {
            JsonPath cell = nursery.cell(monday.plusWeeks(week), "");
            for (String figure : List.of("ready", "promised", "open", "likely", "atRisk", "lessSure")) {
                assertThat(cell.getInt(figure))
                        .as("%s in week %d", figure, week)
                        .isEqualTo(board.getInt("rows[0].cells[" + week + "]." + figure));
            }
        }
    }

    /** Two that are 90 % sure: 81 % if each fails for itself, 90 % if one never fails without the other; a thousand draws are out by three points at most. */
    @Test
    void aPromiseThatTakesTwoBatchesIsLessSureThanEach() {
        nursery.stuck(30, Duration.ofDays(12));
        nursery.stuck(30, Duration.ofDays(12));
        LocalDate monday = nursery.nextMonday();
        JsonPath board = nursery.board(monday, 8);
        int week = 0;
        while (board.getInt("rows[0].cells[" + week + "].open") == 0) {
            week++;
        }
        LocalDate day = monday.plusWeeks(week);
        nursery.order(day, board.getInt("rows[0].cells[" + week + "].open")).statusCode(201);

        JsonPath cell = nursery.cell(day, "");

        assertThat(cell.getDouble("promises[0].chance")).isBetween(0.78, 0.93);
        assertThat(cell.getDouble("weekKept")).isEqualTo(cell.getDouble("promises[0].chance"));
        assertThat(nursery.cell(day.plusWeeks(1), "").get("weekKept") == null).isTrue();
        assertThat(nursery.cell(day.plusWeeks(1), "").getDouble("allKept"))
                .isEqualTo(cell.getDouble("promises[0].chance"));
    }

    @Test
    void aCellOfNobodysIsNotFoundAndAHalfNamedOneIsRefused() {
        String whole = "/api/board/cell?variety=%s&trayFormat=%s&site=%s&week=2026-W12";
        given().get(whole.formatted("nothing", nursery.trayFormat, nursery.site))
                .then()
                .statusCode(404);
        given().get(whole.formatted(nursery.variety, "nothing", nursery.site))
                .then()
                .statusCode(404);
        given().get(whole.formatted(nursery.variety, nursery.trayFormat, "nowhere"))
                .then()
                .statusCode(404);
        given().get("/api/board/cell?variety=" + nursery.variety).then().statusCode(400);
    }

    @Test
    void theBoardIsAsOfTheLastFact() {
        long before = Nursery.get("/api/board").getLong("position");

        String batch = nursery.stuck(1, Duration.ofDays(1));

        JsonPath after = Nursery.get("/api/board");
        assertThat(after.getLong("position")).isGreaterThan(before);
        assertThat(Instant.parse(after.getString("asOf"))).isEqualTo(time.instant());
        assertThat(Nursery.batch(batch).getLong("position")).isEqualTo(after.getLong("position"));
        assertThat(Nursery.get("/api/about").getLong("position")).isEqualTo(after.getLong("position"));
        assertThat(Nursery.get("/api/about").getBoolean("demo")).isFalse();
    }

    @Test
    void aWeekThatIsOverOffersNothingAndTheRunningOneStandsForToday() {
        nursery.ready(10, 950);
        LocalDate monday = nursery.nextMonday();
        assertThat(nursery.open(monday)).isEqualTo(10);

        time.moveOn(Duration.ofDays(15));
        nursery.post("/api/houses", Map.of("code", nursery.house + "x", "site", nursery.site, "name", "Late house"))
                .statusCode(201);

        assertThat(nursery.open(monday)).isZero();
        JsonPath running = nursery.board(nursery.today(), 1);
        assertThat(running.getString("rows[0].cells[0].date"))
                .isEqualTo(nursery.today().toString());
        assertThat(running.getInt("rows[0].cells[0].open")).isEqualTo(10);
        nursery.order(monday, 1).statusCode(422);
        nursery.order(nursery.today(), 10).statusCode(201);
    }

    @Test
    void anOutlookMovesOnWithTheHours() {
        String batch = nursery.stuck(10, Duration.ofDays(1));
        Instant before = Instant.parse(Nursery.batch(batch).getString("outlook.asOf"));

        time.moveOn(Duration.ofHours(1));
        nursery.post("/api/houses", Map.of("code", nursery.house + "y", "site", nursery.site, "name", "Later house"))
                .statusCode(201);

        assertThat(Instant.parse(Nursery.batch(batch).getString("outlook.asOf")))
                .isEqualTo(before.plusSeconds(3600));
    }

    private static List<String> rows(String query, String week) {
        return Nursery.get("/api/board?weeks=1&from=" + week + "&" + query).getList("rows.variety");
    }
}
