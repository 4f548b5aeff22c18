package rootcast.app.problem;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.Clients;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;
import rootcast.saying.Fault;

/**
 * Whatever is sent, the answer is a 4xx that says why, and nothing is written: every table is the same after each test.
 *
 * <p>Source of the body's members: RFC 9457.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class BadInputContract {

    @Inject
    HandSetClock time;

    @Inject
    ObjectMapper json;

    @Inject
    AgroalDataSource database;

    @TestHTTPResource
    URI base;

    private Nursery nursery;
    private String batch;
    private Map<String, Map<String, Object>> goodByPath;
    private Clients clients;
    private RawHttp http;
    private Tables tables;
    private Map<String, List<String>> before;

    /** One nursery for all: nothing here may change it. */
    @BeforeEach
    void open() {
        if (nursery != null) {
            return;
        }
        nursery = Nursery.opened(time);
        batch = nursery.ready(10, 950);
        goodByPath = Map.of(
                "/api/sites",
                Map.of("code", "new", "name", "x", "timeZone", "Etc/UTC"),
                "/api/houses",
                Map.of("code", "new", "site", nursery.site, "name", "x"),
                "/api/tray-formats",
                Nursery.formatBody("new"),
                "/api/crops",
                Nursery.cropBody("new"),
                "/api/varieties",
                Map.of("code", "new", "crop", nursery.crop, "name", "x"),
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
                        time.instant().toString()),
                "/api/batches",
                nursery.stickBody(1, Duration.ofDays(1)),
                "/api/batches/" + batch + "/entries",
                nursery.entry("loss", Map.of("plants", 1, "cause", "rot", "note", "x")),
                "/api/orders",
                Nursery.orderBody(List.of(nursery.line(nursery.nextMonday(), 1))));
        clients = new Clients(base);
        http = new RawHttp(base);
        tables = new Tables(database);
        before = tables.everything();
    }

    @AfterEach
    void nothingWasWritten() {
        Map<String, List<String>> after = tables.everything();
        Map<String, List<String>> was = before;
        before = after; // or one that writes would make all that follow fail
        assertThat(after).isEqualTo(was);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "{",
                "{\"code\":",
                "nothing",
                "\"text\"",
                "17",
                "true",
                "null",
                "[]]",
                "{} {}",
                "{\"code\":\"a\",\"code\":\"b\"}",
                "{'code':'a'}",
                "{\"value\":NaN}",
                "{\"value\":1e999999999}",
                "{\"value\":0123}",
                "\u0000",
                "{\"code\":\"\\ud800\"}",
                "<site/>",
            })
    void whatIsNotTheJsonExpected(String body) {
        goodByPath.keySet().forEach(path -> refused(path, body));
    }

    @Test
    void anArrayWhereAnObjectIsExpected() throws IOException {
        for (String path : goodByPath.keySet()) {
            if (!path.equals("/api/readings")) {
                refused(path, "[" + json.writeValueAsString(goodByPath.get(path)) + "]");
            }
        }
    }

    @Test
    void brokenUtf8() {
        byte[] broken = {'{', '"', 'n', '"', ':', '"', (byte) 0xff, (byte) 0xfe, '"', '}'};
        goodByPath
                .keySet()
                .forEach(path -> problem(given().contentType(ContentType.JSON)
                        .header("Idempotency-Key", UUID.randomUUID())
                        .body(broken)
                        .post(path)));
    }

    @Test
    void jsonNestedDeeperThanAnyoneNeeds() {
        String deep = "[".repeat(200_000);
        String closed = "[".repeat(5_000) + "]".repeat(5_000);
        for (String path : goodByPath.keySet()) {
            refused(path, deep);
            refused(path, closed);
            refused(path, "{\"profile\":".repeat(5_000) + "1" + "}".repeat(5_000));
        }
    }

    @Test
    void textsThatAreTooLongOrHoldAZeroByte() throws IOException {
        for (String path : goodByPath.keySet()) {
            for (String field : goodByPath.get(path).keySet()) {
                if (goodByPath.get(path).get(field) instanceof String) {
                    refused(path, with(path, field, "x".repeat(100_000)));
                    refused(path, with(path, field, "a\u0000b"));
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1e400",
                "-1e400",
                "1e-400000000",
                "99999999999999999999999999",
                "-2147483649",
                "\"7\"",
                "true",
                "{}",
                "[7]",
                "\"NaN\"",
                "\"Infinity\"",
                "-1"
            })
    void numbersThatAreNone(String number) throws IOException {
        for (String path : goodByPath.keySet()) {
            for (String field : goodByPath.get(path).keySet()) {
                if (goodByPath.get(path).get(field) instanceof Number && !plausible(field, number)) {
                    refused(path, with(path, field, "@@").replace("\"@@\"", number));
                }
            }
        }
        String entries = "/api/batches/" + batch + "/entries";
        for (String trays : List.of("ship", "move")) {
            refused(entries, with(entries, "kind", trays).replace("\"x\"", number));
        }
    }

    /** -1 °C and next to 0 °C are temperatures. */
    private static boolean plausible(String field, String number) {
        return field.equals("value") && List.of("-1", "1e-400000000").contains(number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/plain", "application/xml", "application/x-www-form-urlencoded", "text/html", "x/y"})
    void contentThatIsNotSaidToBeJson(String type) throws IOException {
        for (String path : goodByPath.keySet()) {
            Response answer = given().config(io.restassured.RestAssured.config()
                            .encoderConfig(io.restassured.config.EncoderConfig.encoderConfig()
                                    .encodeContentTypeAs(type, ContentType.TEXT)))
                    .contentType(type)
                    .header("Idempotency-Key", UUID.randomUUID())
                    .body(json.writeValueAsString(goodByPath.get(path)))
                    .post(path);
            problem(answer);
            assertThat(answer.statusCode()).as(path).isEqualTo(415);
        }
    }

    @Test
    void methodsThatAPathDoesNotKnow() {
        for (String path : goodByPath.keySet()) {
            for (String method : List.of("DELETE", "PATCH", "PUT")) {
                problem(given().contentType(ContentType.JSON).body("{}").request(method, path));
            }
        }
        problem(given().post("/api/board"));
        problem(given().delete("/api/batches/" + batch));
        problem(given().delete("/api/sites/" + nursery.site));
        problem(given().get("/api/nothing-here"));
        problem(given().get("/api"));
    }

    @Test
    void aBodyOfTenMegabytesThatSaysSo() throws IOException {
        for (String path : List.of("/api/readings", "/api/sites", "/api/orders")) {
            Response answer = given().contentType(ContentType.JSON)
                    .header("Idempotency-Key", UUID.randomUUID())
                    .body(" ".repeat(RawHttp.TEN_MEGABYTES))
                    .post(path);
            problem(answer);
            assertThat(answer.statusCode()).isEqualTo(413);
        }
    }

    @Test
    void aBodyOfTenMegabytesInPieces() throws IOException {
        assertThat(http.sentInPieces("/api/readings"))
                .startsWith("HTTP/1.1 413")
                .contains("application/problem+json");
        assertThat(http.sentInPieces("/api/sites")).startsWith("HTTP/1.1 413").contains("application/problem+json");
    }

    @Test
    void addressesThatNobodyMeant() throws IOException {
        for (String path : List.of(
                "/api/batches/%00",
                "/api/sites/%2e%2e%2f",
                "/api/batches/" + "x".repeat(3_000),
                "/api/houses/%F0%9F%8C%B1",
                "/api/sites/'%20or%20'1'='1",
                "/api/batches/%25/entries",
                "/api/orders/%00",
                "/api/sites/%00",
                "/api/batches/%00/entries",
                "/api/houses/%00/climate",
                "/api/board?text=%00",
                "/api/board/cell?variety=%00&trayFormat=%00&site=%00&week=2026-W12")) {
            String answer = http.get(path);
            assertThat(answer).as(path).startsWith("HTTP/1.1 4").contains("application/problem+json");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/batches?text=%25%5f'",
                "/api/board?site=%F0%9F%8C%B1",
            })
    void searchesForNonsenseFindNothing(String address) throws IOException {
        assertThat(http.get(address)).startsWith("HTTP/1.1 200");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "from=yesterday",
                "from=%00",
                "to=2026-03-01",
                "quantity=mood",
                "from=2030-01-01T00:00:00Z",
                "from=1900-01-01T00:00:00Z",
                "from=-999999999-01-01T00:00:00Z"
            })
    void spansOfTimeThatAreNone(String query) throws IOException {
        String answer = http.get("/api/houses/" + nursery.house + "/climate?" + query);
        assertThat(answer).startsWith("HTTP/1.1 4").contains("application/problem+json");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "-999999999-01-01T00:00:00Z",
                "+999999999-12-31T23:59:59Z",
                "0000-01-01T00:00:00Z",
                "1969-12-31T23:59:59Z",
                "9999-12-31T23:59:59Z",
                "2026-03-01T24:00:01Z",
                "2026-03-01T10:00:00+19:00",
            })
    void momentsThatNoNurserySaw(String moment) throws IOException {
        refused("/api/readings", with("/api/readings", "at", moment));
        refused("/api/batches", with("/api/batches", "stuckAt", moment));
        String entries = "/api/batches/" + batch + "/entries";
        refused(entries, with(entries, "happenedAt", moment));
    }

    private String with(String path, String field, Object value) throws IOException {
        Map<String, Object> changed = new HashMap<>(goodByPath.get(path));
        changed.put(field, value);
        return json.writeValueAsString(changed);
    }

    /** By a plain client: the usual one would first print a body of two hundred thousand brackets prettily. */
    private void refused(String path, String body) {
        try {
            HttpResponse<String> answer = clients.post(path, UUID.randomUUID().toString(), body);
            problem(
                    answer.statusCode(),
                    answer.headers().firstValue("Content-Type").orElse(""),
                    answer.body());
        } catch (IOException unanswered) {
            throw new AssertionError("no answer to " + path, unanswered);
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }

    private static void problem(Response answer) {
        problem(answer.statusCode(), answer.contentType(), answer.asString());
    }

    private static void problem(int status, String type, String text) {
        String shown = status + " " + type + " " + text;
        assertThat(status).as(shown).isBetween(400, 499);
        assertThat(type).as(shown).startsWith("application/problem+json");
        JsonPath body = JsonPath.from(text);
        assertThat(body.getInt("status")).isEqualTo(status);
        for (String member : List.of("type", "title", "detail", "instance")) {
            assertThat(body.getString(member)).as("%s of %s", member, shown).isNotBlank();
        }
        assertThat(body.getString("type")).startsWith("/problems/");
        List<String> codes = body.getList("errors.code");
        assertThat(codes == null ? List.of() : codes)
                .as("every fault of %s is one that the screens have words for", shown)
                .isSubsetOf(Arrays.stream(Fault.values()).map(Fault::wireName).toList());
        assertThat(shown).doesNotContain("java.", "rootcast.", "Exception", "\tat ");
    }
}
