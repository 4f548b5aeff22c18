package rootcast.app.people;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.app.people.Crew.grant;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/**
 * Every endpoint × who asks × their own and another site; and without a sign-in, with a session that is over, with a
 * token that is none, and from another site's page.
 *
 * <p>Endpoints come from docs/openapi.json, expectations from {@link AccessTable}: an endpoint without a row fails, and so
 * does a row without an endpoint.
 */
@QuarkusTest
class AccessMatrixTest {

    private static final Path DOCUMENT = Path.of(System.getProperty("repository.root"), "docs", "openapi.json");
    private static final Set<String> METHODS = Set.of("get", "post", "put", "delete", "patch");
    private static final Set<String> SAFE = Set.of("GET");

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    @TestHTTPResource("/")
    URI base;

    private Tables tables;
    private At own;
    private At other;
    private Map<Character, String> people;
    private Map<Character, Visitor> keys;
    private String spare;

    @BeforeEach
    void aBusinessOfTwoSites() throws SQLException {
        tables = new Tables(database);
        own = new At(Nursery.opened(time));
        other = new At(Nursery.opened(time));
        String site = own.nursery.site;
        people = new LinkedHashMap<>();
        people.put('S', Crew.person(base, grant("SALES", null)));
        people.put('s', Crew.person(base, grant("SALES", site)));
        people.put('P', Crew.person(base, grant("PRODUCTION", site)));
        people.put('M', Crew.person(base, grant("MANAGER", null)));
        people.put('m', Crew.person(base, grant("MANAGER", site)));
        people.put('O', Crew.person(base, grant("OWNER", null)));
        spare = Crew.person(base);
        keys = new LinkedHashMap<>();
        keys.put(
                'D',
                Visitor.withBearer(
                        base, Crew.key(base, grant("DEVICE", site)).json().getString("key")));
        keys.put(
                'X',
                Visitor.withBearer(
                        base, Crew.key(base, grant("PARTNER", null)).json().getString("key")));
        keys.put('T', Visitor.withToken(base));
    }

    @Test
    void everyEndpointHasARowAndEveryRowAnEndpoint() throws IOException {
        Set<String> endpoints = new TreeSet<>();
        JsonNode paths = new ObjectMapper().readTree(DOCUMENT.toFile()).get("paths");
        paths.fields()
                .forEachRemaining(path -> path.getValue().fieldNames().forEachRemaining(method -> {
                    if (METHODS.contains(method)) {
                        endpoints.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey());
                    }
                }));

        assertThat(AccessTable.rows().stream().map(AccessTable.Row::endpoint).toList())
                .doesNotHaveDuplicates()
                .containsExactlyInAnyOrderElementsOf(endpoints);
    }

    @Test
    void everyoneGetsInWhereTheTableSaysAndNowhereElse() throws SQLException {
        List<String> wrong = new ArrayList<>();
        for (AccessTable.Row row : AccessTable.rows()) {
            for (char who : "SsPMmODXT".toCharArray()) {
                for (At place : List.of(own, other)) {
                    boolean wanted = row.rule().letsIn(who, place == own);
                    Visitor.Answer answer = ask(row, visitor(who), place);
                    boolean gotIn = row.lists() ? isIn(answer) && names(answer, place) : isIn(answer);
                    if (gotIn != wanted || answer.status() >= 500) {
                        wrong.add("%s as %s at %s site: %d, wanted %s: %s"
                                .formatted(
                                        row.endpoint(),
                                        who,
                                        place == own ? "own" : "other",
                                        answer.status(),
                                        wanted ? "in" : "out",
                                        answer.body()
                                                .substring(
                                                        0,
                                                        Math.min(
                                                                200,
                                                                answer.body().length()))));
                    }
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void withoutASignInOnlyWhatIsOpenAnswers() throws SQLException {
        Map<String, Visitor> strangers = new LinkedHashMap<>();
        strangers.put("nobody", Visitor.nobody(base));
        strangers.put("a made-up cookie", Visitor.withCookie(base, "made-up"));
        String over = session(people.get('O'));
        tables.execute("update person_session set begun_at = timestamp '2020-01-01 00:00:00'" + " where secret_hash = '"
                + Secrets.hash(over) + "'");
        strangers.put("a session that is over", Visitor.withCookie(base, over));
        List<String> wrong = new ArrayList<>();
        for (AccessTable.Row row : AccessTable.rows()) {
            strangers.forEach((name, stranger) -> {
                Visitor.Answer answer = ask(row, stranger, own);
                boolean refused = answer.status() == 401 && answer.type().equals("/problems/not-signed-in");
                if (refused != (row.rule() != AccessTable.Rule.OPEN)) {
                    wrong.add(row.endpoint() + " as " + name + ": " + answer.status());
                }
            });
            Visitor.Answer answer = ask(row, Visitor.withBearer(base, "made-up"), own);
            if (answer.status() != 401 || !answer.type().equals("/problems/unknown-token")) {
                wrong.add(row.endpoint() + " with a made-up token: " + answer.status());
            }
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void nothingIsChangedFromAnotherSitesPage() throws SQLException {
        List<String> wrong = new ArrayList<>();
        for (AccessTable.Row row : AccessTable.rows()) {
            Visitor owner = visitor('O').and("Origin", "https://elsewhere.example");
            Visitor.Answer answer = ask(row, owner, own);
            boolean refused = answer.status() == 403 && answer.type().equals("/problems/foreign-origin");
            if (refused == SAFE.contains(row.method())) {
                wrong.add(row.endpoint() + ": " + answer.status());
            }
        }
        assertThat(wrong).isEmpty();
    }

    private Visitor.Answer ask(AccessTable.Row row, Visitor visitor, At place) {
        Object body = row.body() == null ? null : row.body().apply(place);
        return visitor.send(row.method(), row.path().apply(place), body);
    }

    /** Refused are 401 and 403, and 404 where they must not learn that it exists; the rows name what does exist. */
    private static boolean isIn(Visitor.Answer answer) {
        boolean noDoorHere = answer.status() == 404 && answer.body().contains("no door");
        boolean noSuchId = answer.status() == 404 && !answer.body().contains("\"asked\"");
        return answer.status() != 401 && answer.status() != 403 && (answer.status() != 404 || noDoorHere || noSuchId);
    }

    private static boolean names(Visitor.Answer list, At place) {
        return list.body().contains('"' + place.nursery.site + '"')
                || list.body().contains('"' + place.nursery.house + '"');
    }

    private Visitor visitor(char who) throws SQLException {
        return people.containsKey(who) ? Visitor.withCookie(base, session(people.get(who))) : keys.get(who);
    }

    /** A session of its own for each request, without the work of a sign-in: some rows end all of them. */
    private String session(String person) throws SQLException {
        String secret = Secrets.random(256);
        tables.execute(
                "insert into person_session (id, secret_hash, person, begun_at, last_seen_at, device) values ('%s',"
                                .formatted(UUID.randomUUID())
                        + " '%s', '%s', timestamp with time zone '%s', timestamp with time zone '%s', 'a test')"
                                .formatted(Secrets.hash(secret), person, time.instant(), time.instant()));
        return secret;
    }

    /** A site with one of everything. */
    private final class At implements AccessTable.Place {

        private final Nursery nursery;
        private final String batch;
        private final String sensor;
        private final String warning;
        private final String order;

        At(Nursery nursery) throws SQLException {
            this.nursery = nursery;
            batch = nursery.ready(20, 1_900);
            sensor = nursery.house + "-air";
            nursery.post(
                            "/api/sensors",
                            Map.of(
                                    "code",
                                    sensor,
                                    "house",
                                    nursery.house,
                                    "quantity",
                                    "air-temperature",
                                    "unit",
                                    "Cel"))
                    .statusCode(201);
            warning = UUID.randomUUID().toString();
            tables.execute(("insert into warning_log (id, kind, site, house, since_at, raised_at, unit, batches,"
                            + " first_seen_at) values ('%s', 'AIR_COLD', '%s', '%s', timestamp with time zone '%s',"
                            + " timestamp with time zone '%s', 'Cel', '%s', timestamp with time zone '%s')")
                    .formatted(
                            warning,
                            nursery.site,
                            nursery.house,
                            time.instant().minus(Duration.ofHours(2)),
                            time.instant().minus(Duration.ofHours(1)),
                            batch,
                            time.instant().minus(Duration.ofHours(1))));
            treatment();
            Map<String, Object> closing = new HashMap<>(AccessTable.treatment(this));
            closing.put("reentryHours", 12);
            nursery.post("/api/treatments", closing).statusCode(201);
            order = nursery.order(nursery.nextMonday().plusWeeks(1), 1)
                    .statusCode(201)
                    .extract()
                    .path("id");
        }

        @Override
        public Nursery nursery() {
            return nursery;
        }

        @Override
        public String batch() {
            return batch;
        }

        @Override
        public String sensor() {
            return sensor;
        }

        @Override
        public String warning() {
            return warning;
        }

        @Override
        public String order() {
            return order;
        }

        /** Readings that cannot be true are set aside under an id that stands for their flag. */
        @Override
        public String flag() {
            Map<String, Object> reading = new LinkedHashMap<>(AccessTable.reading(this));
            reading.put("value", 180);
            reading.put("at", time.instant().minus(Duration.ofDays(1)).toString());
            Map<String, Object> good = new LinkedHashMap<>(AccessTable.reading(this));
            good.put("at", time.instant().minus(Duration.ofDays(2)).toString());
            Nursery.send(UUID.randomUUID().toString(), "/api/readings", List.of(good, reading)); // one is stored
            return tables.rows("select id from reading_aside where house = '" + nursery.house + "'")
                    .get(0);
        }

        @Override
        public String treatment() {
            return nursery.post("/api/treatments", AccessTable.treatment(this))
                    .statusCode(201)
                    .extract()
                    .path("id");
        }

        @Override
        public String dueItem() {
            return Nursery.get("/api/rounds?site=" + nursery.site)
                    .getString("find { it.task == 'moisture-check' }.id"); // each asks for an answer of its own
        }

        @Override
        public String closedItem() {
            String item = dueItem();
            nursery.post("/api/rounds/" + item + "/skipped", Map.of("reason", "rain"));
            return item;
        }

        @Override
        public String key() {
            return Crew.key(base, grant("DEVICE", nursery.site)).json().getString("id");
        }

        @Override
        public String person() {
            return spare;
        }

        @Override
        public String now() {
            return time.instant().toString();
        }
    }
}
