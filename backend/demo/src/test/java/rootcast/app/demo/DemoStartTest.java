package rootcast.app.demo;

import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.http.Cookies;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The demo as it starts on an empty database: the use cases take every fact that the scenario tells. */
@QuarkusTest
class DemoStartTest {

    @Inject
    UseCaseSink sink;

    @Inject
    EntityManager database;

    @Inject
    InstantSource time;

    private final DemoScenario scenario = DemoSeed.scenario();

    @Test
    void itSaysThatTheBusinessIsInvented() {
        assertThat(get("/api/about").jsonPath().getBoolean("demo")).isTrue();
    }

    @Test
    void everyFactToldIsInTheTables() {
        DemoScenario.Told told = told();

        assertThat(rows())
                .containsEntry("site", 3L)
                .containsEntry("house", 12L)
                .containsEntry("sensor", 48L)
                .containsEntry("crop", 15L)
                .containsEntry("variety", 25L)
                .containsEntry("batch", (long) told.batches().size())
                .containsEntry(
                        "ledger_entry",
                        (long) told.batches().size() + told.entries().size())
                .containsEntry("customer_order", (long) told.orders().size())
                .containsEntry("order_line", 60L);
        assertThat(rows().get("reading")).isGreaterThanOrEqualTo(told.readings().size());
    }

    /** An attempt that broke off is begun anew: what was written is then not written again, and keeps its ids. */
    @Test
    void toldAgainItChangesNothing() {
        Map<String, Long> before = rows();
        before.remove("reading"); // the simulator goes on

        DemoLoad.Played again = DemoLoad.play(scenario, told(), sink);

        assertThat(again.refusedOrders()).isEmpty();
        assertThat(rows()).containsAllEntriesOf(before);
    }

    @Test
    void everyOrderIsPromisedForAShipDayOfItsSite() {
        Map<String, DayOfWeek> shipDays =
                Map.of("TARROW", DayOfWeek.MONDAY, "PELLAN", DayOfWeek.MONDAY, "DUNMAR", DayOfWeek.TUESDAY);

        assertThat(promisedDays())
                .hasSize(60)
                .allSatisfy(line -> assertThat(line.shipOn().getDayOfWeek()).isEqualTo(shipDays.get(line.site())));
    }

    /**
     * Of what people can leave undone only the lines of seed/demo/rounds.csv, and moves that the clashes of the day
     * advise; what the climate warns of depends on the season. The day's own round is still to be walked.
     */
    @Test
    void aFewThingsAreOverdueAndTheDaysRoundIsOpen() {
        Cookies manager = given().contentType(ContentType.JSON)
                .body("{\"door\": \"manager\"}")
                .post("/api/session/door")
                .detailedCookies();
        List<Map<String, Object>> items = scenario.setup().sites().stream()
                .flatMap(site -> list(manager, "/api/rounds?site=" + site.code()).stream())
                .toList();
        List<String> lasting = list(manager, "/api/warnings").stream()
                .filter(warning -> warning.get("state").equals("lasting"))
                .map(warning -> (String) warning.get("kind"))
                .toList();

        assertThat(tasks(items, "carried-over"))
                .contains("scouting")
                .hasSizeBetween(4, 15)
                .filteredOn(task -> !task.equals("move"))
                .hasSizeLessThanOrEqualTo(12);
        assertThat(tasks(items, "due")).contains("moisture-check").hasSizeGreaterThan(10);
        assertThat(lasting)
                .contains("scouting-missed", "leached", "prevention-missed")
                .filteredOn(
                        List.of("scouting-missed", "leached", "prevention-missed", "no-feed", "mist-not-weaned")
                                ::contains)
                .doesNotHaveDuplicates();
    }

    private static List<String> tasks(List<Map<String, Object>> items, String state) {
        return items.stream()
                .filter(item -> item.get("state").equals(state))
                .map(item -> (String) item.get("task"))
                .toList();
    }

    private static List<Map<String, Object>> list(Cookies who, String path) {
        return given().cookies(who).get(path).jsonPath().getList("");
    }

    private DemoScenario.Told told() {
        Instant startAt = sink.startAt(scenario.setup(), time.instant());
        assertThat(startAt).as("of the first attempt").isBefore(time.instant());
        return scenario.tell(startAt);
    }

    record Promised(String site, LocalDate shipOn) {}

    @Transactional
    List<Promised> promisedDays() {
        List<?> rows = database.createNativeQuery("select site, ship_on from order_line")
                .getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .map(row -> new Promised((String) row[0], LocalDate.parse(row[1].toString())))
                .toList();
    }

    @Transactional
    Map<String, Long> rows() {
        Map<String, Long> rows = new LinkedHashMap<>();
        for (String table : new String[] {
            "site",
            "house",
            "sensor",
            "crop",
            "variety",
            "batch",
            "ledger_entry",
            "posting",
            "customer_order",
            "order_line",
            "round_care",
            "reading"
        }) {
            Object count =
                    database.createNativeQuery("select count(*) from " + table).getSingleResult();
            rows.put(table, ((Number) count).longValue());
        }
        return rows;
    }
}
