package rootcast.app.once;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.net.URI;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.Clients;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/**
 * Sending twice is normal and does once.
 *
 * <p>Source: draft-ietf-httpapi-idempotency-key-header; facts-operations F.
 */
abstract class OnceContract {

    @Inject
    HandSetClock time;

    @Inject
    ObjectMapper json;

    @Inject
    AgroalDataSource database;

    @TestHTTPResource
    URI base;

    private Nursery nursery;
    private Tables tables;
    private String batch;
    private String entries;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        tables = new Tables(database);
        batch = nursery.stuck(1, Duration.ofDays(3));
        entries = "/api/batches/" + batch + "/entries";
    }

    @Test
    void anEntrySentTwiceIsAnsweredAlikeAndWrittenOnce() {
        String key = UUID.randomUUID().toString();
        Response first = Nursery.send(key, entries, loss(5));
        var after = tables.everything();

        Response again = Nursery.send(key, entries, loss(5));

        assertThat(first.statusCode()).isEqualTo(201);
        assertThat(again.statusCode()).isEqualTo(201);
        assertThat(again.asString()).isEqualTo(first.asString());
        assertThat(tables.everything()).isEqualTo(after);
    }

    @Test
    void theAnswerStaysTheSameWhateverHappenedInBetween() {
        String key = UUID.randomUUID().toString();
        String first = Nursery.send(key, entries, loss(5)).asString();
        nursery.enter(batch, loss(40)).statusCode(201);

        assertThat(Nursery.send(key, entries, loss(5)).asString()).isEqualTo(first);
    }

    @Test
    void everythingThatIsCreatedTakesAKey() {
        String site = nursery.site + "k";
        sentTwice("/api/sites", Map.of("code", site, "name", "x", "timeZone", "Etc/UTC"));
        sentTwice("/api/houses", Map.of("code", site + "-H", "site", site, "name", "x"));
        sentTwice("/api/tray-formats", Nursery.formatBody(site + "-T"));
        sentTwice("/api/crops", Nursery.cropBody(site + "-C"));
        sentTwice("/api/varieties", Map.of("code", site + "-V", "crop", site + "-C", "name", "x"));
        sentTwice("/api/batches", nursery.stickBody(1, Duration.ofDays(1)));
        sentTwice(
                "/api/readings",
                Map.of(
                        "house",
                        nursery.house,
                        "quantity",
                        "medium-temperature",
                        "value",
                        22,
                        "unit",
                        "Cel",
                        "at",
                        time.instant().toString()));
        nursery.ready(1, 95);
        sentTwice("/api/orders", Nursery.orderBody(List.of(nursery.line(nursery.nextMonday(), 1))));
    }

    @Test
    void theSameKeyWithOtherContentIsRefusedAndNothingIsWritten() {
        String key = UUID.randomUUID().toString();
        Nursery.send(key, entries, loss(5)).then().statusCode(201);
        var after = tables.everything();

        Nursery.send(key, entries, loss(6))
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/key-used-before"));
        String other = "/api/batches/" + nursery.stuck(1, Duration.ofDays(3)) + "/entries";
        var withOther = tables.everything();
        Nursery.send(key, other, loss(5)).then().statusCode(422);

        assertThat(after).isNotEqualTo(withOther);
        assertThat(tables.everything()).isEqualTo(withOther);
        assertThat(Nursery.batch(batch).getInt("plants.lost")).isEqualTo(5);
    }

    @Test
    void aRefusedWriteLeavesItsKeyFree() {
        String key = UUID.randomUUID().toString();
        Nursery.send(key, entries, loss(500)).then().statusCode(422);

        Nursery.send(key, entries, loss(5)).then().statusCode(201);
    }

    @Test
    void entriesAndOrdersNeedAKey() {
        var before = tables.everything();
        for (String path : List.of(entries, "/api/orders")) {
            Object body =
                    path.equals(entries) ? loss(1) : Nursery.orderBody(List.of(nursery.line(nursery.nextMonday(), 1)));
            given().contentType(ContentType.JSON)
                    .body(body)
                    .post(path)
                    .then()
                    .statusCode(400)
                    .contentType("application/problem+json")
                    .body("errors.field", contains("Idempotency-Key"));
        }
        assertThat(tables.everything()).isEqualTo(before);
    }

    @Test
    void aKeyInQuotesIsTheKeyInThem() {
        String key = UUID.randomUUID().toString();
        String first = Nursery.send('"' + key + '"', entries, loss(5)).asString();

        assertThat(Nursery.send(key, entries, loss(5)).asString()).isEqualTo(first);
        assertThat(Nursery.batch(batch).getInt("plants.lost")).isEqualTo(5);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\"\"", "two words", "\t"})
    void aKeyThatIsNoneIsRefused(String key) {
        Nursery.send(key, entries, loss(5)).then().statusCode(400);
        Nursery.send("k".repeat(201), entries, loss(5)).then().statusCode(400);
    }

    @Test
    void sixteenThreadsWithOneKeyWriteOneEntry() throws Exception {
        String key = UUID.randomUUID().toString();
        String body = json.writeValueAsString(loss(3));
        Clients clients = new Clients(base);

        List<HttpResponse<String>> answers = Clients.together(16, client -> () -> clients.post(entries, key, body));

        assertThat(answers).allSatisfy(answer -> assertThat(answer.statusCode()).isEqualTo(201));
        assertThat(answers)
                .extracting(HttpResponse::body)
                .containsOnly(answers.get(0).body());
        assertThat(Nursery.batch(batch).getInt("plants.lost")).isEqualTo(3);
        assertThat(Nursery.get(entries).getList("kind")).containsExactly("stick", "loss");
    }

    private void sentTwice(String path, Map<String, Object> body) {
        String key = UUID.randomUUID().toString();
        Response first = Nursery.send(key, path, body);
        var after = tables.everything();
        Response again = Nursery.send(key, path, body);
        assertThat(first.statusCode()).as(first.asString()).isIn(200, 201);
        assertThat(again.statusCode()).as(path).isEqualTo(first.statusCode());
        assertThat(again.asString()).as(path).isEqualTo(first.asString());
        assertThat(tables.everything()).as(path).isEqualTo(after);
        assertThat(Nursery.send(key, path, other(body)).statusCode()).as(path).isEqualTo(422);
    }

    private static Map<String, Object> other(Map<String, Object> body) {
        Map<String, Object> changed = new HashMap<>(body);
        changed.computeIfPresent("name", (field, before) -> before + "!");
        changed.computeIfPresent("cells", (field, before) -> 101);
        changed.computeIfPresent("value", (field, before) -> 23);
        changed.computeIfPresent("customer", (field, before) -> before + "!");
        changed.computeIfPresent("stuckAt", (field, before) -> "2026-01-01T00:00:00Z");
        return changed;
    }

    private Map<String, Object> loss(int plants) {
        return nursery.entry("loss", Map.of("plants", plants, "cause", "rot"));
    }
}
