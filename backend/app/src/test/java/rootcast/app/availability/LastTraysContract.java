package rootcast.app.availability;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.net.URI;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import rootcast.app.Clients;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/**
 * Sixty-four clients race for the last trays: never one too many.
 *
 * <p>Source of the shape: facts-operations G, last-tray race.
 */
abstract class LastTraysContract {

    private static final int CLIENTS = 64;
    private static final long SEED = 64;

    @Inject
    HandSetClock time;

    @Inject
    ObjectMapper json;

    @Inject
    AgroalDataSource database;

    @TestHTTPResource
    URI base;

    private Nursery nursery;
    private LocalDate monday;
    private Clients clients;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        monday = nursery.nextMonday();
        clients = new Clients(base);
    }

    @RepeatedTest(3)
    void ofSixtyFourBuyersOfOneTrayTheLastTenGetOneEach() throws Exception {
        nursery.ready(10, 950); // fills ten trays of 90

        List<HttpResponse<String>> answers =
                Clients.together(CLIENTS, client -> () -> order(Nursery.orderBody(List.of(nursery.line(monday, 1)))));

        assertThat(answers).filteredOn(answer -> answer.statusCode() == 201).hasSize(10);
        assertThat(answers)
                .filteredOn(answer -> answer.statusCode() == 409)
                .hasSize(CLIENTS - 10)
                .allSatisfy(answer -> assertThat(JsonPath.from(answer.body()).getInt("lines[0].open"))
                        .isZero());
        assertThat(promised()).isEqualTo(10);
        assertThat(nursery.open(monday)).isZero();
    }

    @Test
    void ordersOfAnySizeForAnyWeekNeverPromiseOneTrayTooMany() throws Exception {
        nursery.ready(40, 3_690); // fills 41 trays by plants; two batches of one cell
        nursery.ready(40, 3_600);
        int most = 81;
        Random random = new Random(SEED);
        int[] trays = random.ints(CLIENTS, 1, 6).toArray();
        int[] weeks = random.ints(CLIENTS, 0, 3).toArray();

        List<HttpResponse<String>> answers = Clients.together(
                CLIENTS,
                client -> () -> order(
                        Nursery.orderBody(List.of(nursery.line(monday.plusWeeks(weeks[client]), trays[client])))));

        int sold = 0;
        for (int client = 0; client < CLIENTS; client++) {
            HttpResponse<String> answer = answers.get(client);
            if (answer.statusCode() == 201) {
                sold += trays[client];
            } else {
                assertThat(answer.statusCode()).as(answer.body()).isEqualTo(409);
                JsonPath line = JsonPath.from(answer.body());
                assertThat(line.getInt("lines[0].asked")).isEqualTo(trays[client]);
                assertThat(line.getInt("lines[0].open")).isBetween(0, trays[client] - 1);
            }
        }
        assertThat(sold).as("seed %d", SEED).isEqualTo((int) promised());
        assertThat(sold + nursery.open(monday))
                .as("sold and open, seed %d", SEED)
                .isEqualTo(most);
    }

    @Test
    void releasesAndOrdersAtOnceLeaveWhatStandsWithinWhatThereIs() throws Exception {
        nursery.ready(10, 950);
        List<String> state = new java.util.ArrayList<>();
        for (int order = 0; order < 10; order++) {
            state.add(nursery.order(monday, 1).statusCode(201).extract().path("id"));
        }

        List<Integer> statuses = Clients.together(
                40,
                client -> () -> client < 10
                        ? io.restassured.RestAssured.delete("/api/orders/" + state.get(client))
                                .statusCode()
                        : order(Nursery.orderBody(List.of(nursery.line(monday, 1))))
                                .statusCode());

        long sold = statuses.stream().filter(status -> status == 201).count();
        assertThat(statuses).filteredOn(status -> status == 204).hasSize(10);
        assertThat(promised()).isEqualTo(sold);
        assertThat(nursery.open(monday)).isEqualTo(10 - (int) sold);
    }

    @Test
    void oneOrderSentBySixteenThreadsIsPlacedOnce() throws Exception {
        nursery.ready(10, 950);
        String key = UUID.randomUUID().toString();
        String body = json.writeValueAsString(Nursery.orderBody(List.of(nursery.line(monday, 3))));

        List<HttpResponse<String>> answers =
                Clients.together(16, client -> () -> clients.post("/api/orders", key, body));

        assertThat(answers).allSatisfy(answer -> assertThat(answer.statusCode()).isEqualTo(201));
        assertThat(answers)
                .extracting(HttpResponse::body)
                .containsOnly(answers.get(0).body());
        assertThat(promised()).isEqualTo(3);
    }

    private HttpResponse<String> order(Map<String, Object> order) throws Exception {
        return clients.post("/api/orders", UUID.randomUUID().toString(), json.writeValueAsString(order));
    }

    private long promised() {
        return new Tables(database)
                .number("select coalesce(sum(l.trays), 0) from order_line l join customer_order o on o.id = l.order_id"
                        + " where o.released_at is null and l.site = '" + nursery.site + "'");
    }
}
