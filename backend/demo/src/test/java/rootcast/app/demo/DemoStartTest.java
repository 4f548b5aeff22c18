package rootcast.app.demo;

import static io.restassured.RestAssured.get;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.InstantSource;
import java.util.LinkedHashMap;
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

    private DemoScenario.Told told() {
        Instant startAt = sink.startAt(scenario.setup(), time.instant());
        assertThat(startAt).as("of the first attempt").isBefore(time.instant());
        return scenario.tell(startAt);
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
