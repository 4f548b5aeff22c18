package rootcast.app;

import static io.restassured.RestAssured.given;

import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * An invented business set up through the API, with codes that no other has: a site in UTC that ships on Mondays, two
 * houses, one crop with one variety, and trays of 100 cells sold with at least 90 plants.
 *
 * <p>Its liners may be held for 30 days.
 */
public final class Nursery {

    public static final int CELLS = 100;
    public static final int SALE_COUNT = 90;
    public static final int HOLD_DAYS = 30;

    private static final AtomicInteger OPENED = new AtomicInteger();

    private final InstantSource time;
    public final String site;
    public final String house;
    public final String otherHouse;
    public final String crop;
    public final String variety;
    public final String trayFormat;

    private Nursery(InstantSource time) {
        int number = OPENED.incrementAndGet();
        this.time = time;
        site = "S" + number;
        house = "S" + number + "-H1";
        otherHouse = "S" + number + "-H2";
        crop = "crop-" + number;
        variety = "var-" + number;
        trayFormat = "T" + CELLS + "-" + number;
    }

    public static Nursery opened(InstantSource time) {
        Nursery nursery = new Nursery(time);
        nursery.setUp();
        return nursery;
    }

    private void setUp() {
        post("/api/sites", siteBody("Etc/UTC")).statusCode(201);
        post("/api/houses", Map.of("code", house, "site", site, "name", "North house"))
                .statusCode(201);
        post("/api/houses", Map.of("code", otherHouse, "site", site, "name", "South house"))
                .statusCode(201);
        post("/api/tray-formats", formatBody(trayFormat)).statusCode(201);
        post("/api/crops", cropBody(crop)).statusCode(201);
        post("/api/varieties", Map.of("code", variety, "crop", crop, "name", "Grey Morning"))
                .statusCode(201);
    }

    public Instant now() {
        return time.instant();
    }

    public LocalDate today() {
        return LocalDate.ofInstant(now(), java.time.ZoneOffset.UTC);
    }

    /** The next Monday after today. */
    public LocalDate nextMonday() {
        return today().plusDays(1).with(java.time.temporal.TemporalAdjusters.nextOrSame(DayOfWeek.MONDAY));
    }

    public Map<String, Object> siteBody(String zone) {
        return Map.of("code", site, "name", "Site " + site, "timeZone", zone);
    }

    public static Map<String, Object> formatBody(String code) {
        return Map.of("code", code, "cells", CELLS, "saleCount", SALE_COUNT, "lengthMm", 540, "widthMm", 280);
    }

    /** Invented values in the usual range; not a statement about any crop. */
    public static Map<String, Object> cropBody(String code) {
        return cropBody(code, 7);
    }

    public static Map<String, Object> cropBody(String code, double daysToCallus) {
        return Map.of("code", code, "name", "Greyleaf", "profile", profile(daysToCallus));
    }

    /**
     * Days known for certain, stages entered within the hour, and nothing told by what nobody enters: hand sums of dates need no
     * more than the rates.
     */
    private static Map<String, Object> profile(double daysToCallus) {
        return Map.of(
                "stages",
                List.of(stage("STICK", daysToCallus), stage("CALLUS", 9), stage("ROOT", 10)),
                "rateSpread",
                0.1,
                "holdDays",
                HOLD_DAYS,
                "daysDoubt",
                0,
                "roundsDays",
                0.05,
                "enteredShare",
                0);
    }

    public static Map<String, Object> stage(String stage, double days) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("stage", stage);
        body.put("daysAtReference", days);
        body.put("referenceC", 22);
        body.put("minC", 8);
        body.put("optimumC", 27);
        body.put("maxC", 36);
        body.put("survivalMean", 0.97);
        body.put("survivalWeight", 150);
        return body;
    }

    public ValidatableResponse post(String path, Object body) {
        return send(UUID.randomUUID().toString(), path, body).then();
    }

    public static Response send(String key, String path, Object body) {
        return given().contentType(ContentType.JSON)
                .header("Idempotency-Key", key)
                .body(body)
                .post(path);
    }

    public static JsonPath get(String path) {
        return given().get(path).then().statusCode(200).extract().jsonPath();
    }

    /** The board's cell of the week of {@code day}, opened. */
    public JsonPath cell(LocalDate day, String more) {
        return get("/api/board/cell?variety=%s&trayFormat=%s&site=%s&week=%s%s"
                .formatted(variety, trayFormat, site, week(day), more));
    }

    public ValidatableResponse enter(String batch, String kind, Map<String, ?> fields) {
        return enter(batch, entry(kind, fields));
    }

    public static JsonPath entries(String batch) {
        return get("/api/batches/" + batch + "/entries");
    }

    /** One tray stuck three days ago, but for one field. */
    public Map<String, Object> stickWith(String field, Object value) {
        Map<String, Object> body = stickBody(1, Duration.ofDays(3));
        body.put(field, value);
        return body;
    }

    public Map<String, Object> stickBody(int trays, Duration ago) {
        Map<String, Object> body = new HashMap<>();
        body.put("site", site);
        body.put("house", house);
        body.put("variety", variety);
        body.put("trayFormat", trayFormat);
        body.put("stuckAt", now().minus(ago).toString());
        body.put("trays", trays);
        return body;
    }

    /** Full trays, stuck some time ago; gives the batch's id. */
    public String stuck(int trays, Duration ago) {
        return post("/api/batches", stickBody(trays, ago))
                .statusCode(201)
                .extract()
                .path("id");
    }

    /** A batch that was counted and seen ready two days ago: floor(plants / 90) trays are certain. */
    public String ready(int trays, int plants) {
        String batch = stuck(trays, Duration.ofDays(30));
        Instant seen = now().minus(Duration.ofDays(2));
        enter(batch, entry("stage", seen, Map.of("stage", "READY"))).statusCode(201);
        enter(batch, entry("count", seen.plusSeconds(60), Map.of("plants", plants)))
                .statusCode(201);
        return batch;
    }

    public ValidatableResponse enter(String batch, Map<String, Object> entry) {
        return post("/api/batches/" + batch + "/entries", entry);
    }

    public Map<String, Object> entry(String kind, Map<String, ?> fields) {
        return entry(kind, now(), fields);
    }

    public static Map<String, Object> entry(String kind, Instant happenedAt, Map<String, ?> fields) {
        Map<String, Object> entry = new HashMap<>(fields);
        entry.put("kind", kind);
        entry.put("happenedAt", happenedAt.toString());
        return entry;
    }

    public static JsonPath batch(String id) {
        return get("/api/batches/" + id);
    }

    public Map<String, Object> line(LocalDate shipOn, int trays) {
        return Map.of(
                "variety",
                variety,
                "trayFormat",
                trayFormat,
                "site",
                site,
                "shipOn",
                shipOn.toString(),
                "trays",
                trays);
    }

    public static Map<String, Object> orderBody(List<?> lines) {
        return Map.of("customer", "Garden centre by the mill", "lines", lines);
    }

    public ValidatableResponse order(LocalDate shipOn, int trays) {
        return post("/api/orders", orderBody(List.of(line(shipOn, trays))));
    }

    /** The only row of this nursery, from the week of {@code from} on. */
    public JsonPath board(LocalDate from, int weeks) {
        return get("/api/board?site=" + site + "&from=" + week(from) + "&weeks=" + weeks);
    }

    public int open(LocalDate date) {
        return board(date, 1).getInt("rows[0].cells[0].open");
    }

    public static String week(LocalDate day) {
        return day.format(java.time.format.DateTimeFormatter.ISO_WEEK_DATE).substring(0, 8);
    }
}
