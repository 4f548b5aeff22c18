package rootcast.app.people;

import static rootcast.app.people.AccessTable.Rule.*;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rootcast.app.Nursery;

/** Who may do what: one row per endpoint, long because it is one table. An endpoint without a row fails {@link AccessMatrixTest}. */
final class AccessTable {

    /**
     * What is expected, as the issue states it and not as the code says it. Letters stand for who gets in: S sales, P
     * production, M manager, O owner, D device, X partner, T the token; small s and m the same granted for one site only,
     * and P and D always for one. After the bar who gets in where the site is not theirs.
     */
    enum Rule {
        /** Open to all. */
        OPEN("SsPMmODXT-|SsPMmODXT-"),
        /** Anybody who shows who they are. */
        SELF("SsPMmODXT|SsPMmODXT"),
        /** People only: a key has no sessions and no password. */
        PERSON("SsPMmO|SsPMmO"),
        /** All people. */
        READ("SsPMmOT|SsPMmOT"),
        /** All people, production where it is granted. */
        READ_AT_SITE("SsPMmOT|SsMmOT"),
        RECORD("PMmOT|MOT"),
        READINGS("PMmODT|MOT"),
        WRITE_ORDERS("SsMmOT|SMOT"),
        SET_UP_AT_SITE("MmOT|MOT"),
        /** Concerns all sites. */
        SET_UP("MOT|MOT"),
        /** Names no site. */
        ASK_SET_UP("MmOT|MmOT"),
        OWNERS("OT|OT");

        private final String own;
        private final String other;

        Rule(String getIn) {
            int bar = getIn.indexOf('|');
            own = getIn.substring(0, bar);
            other = getIn.substring(bar + 1);
        }

        boolean letsIn(char who, boolean ownSite) {
            return (ownSite ? own : other).indexOf(who) >= 0;
        }
    }

    /** What a row needs to be asked at a site. */
    interface Place {
        Nursery nursery();

        String batch();

        String order();

        String sensor();

        String warning();

        String flag();

        String treatment();

        /** A round item, due or closed. */
        String dueItem();

        /** A round item that was closed just now. */
        String closedItem();

        /** A key in force. */
        String key();

        /** A person without grants. */
        String person();

        String now();
    }

    /**
     * @param endpoint method and path as docs/openapi.json has them
     * @param path     the same at a place, with a query if it needs one
     * @param body     null for none
     * @param lists    whether the answer is a list that leaves out what is not theirs, instead of a refusal
     */
    record Row(
            String endpoint,
            Rule rule,
            Function<Place, String> path,
            @Nullable Function<Place, Object> body,
            boolean lists) {
        String method() {
            return endpoint.substring(0, endpoint.indexOf(' '));
        }
    }

    private final List<Row> rows = new ArrayList<>();

    static List<Row> rows() {
        AccessTable table = new AccessTable();
        table.people();
        table.read();
        table.write();
        table.setUp();
        return List.copyOf(table.rows);
    }

    private void people() {
        row("GET /api/about", OPEN, null);
        row("POST /api/session", OPEN, at -> Map.of());
        row("GET /api/session", SELF, null);
        row("DELETE /api/session", OPEN, null);
        row("POST /api/owner", OPEN, at -> Map.of());
        row("PUT /api/session/password", PERSON, at -> Map.of("current", "not this one", "password", Crew.PASSWORD));
        row("GET /api/session/all", PERSON, null);
        row("DELETE /api/session/all", PERSON, null);
        row("DELETE /api/session/all/{id}", SELF, at -> "not an id", null);
        row("GET /api/people", OWNERS, null);
        row("POST /api/people", OWNERS, at -> Map.of());
        row("PUT /api/people/{name}", OWNERS, Place::person, at -> Map.of("displayName", "Hand", "grants", List.of()));
        row("POST /api/people/{name}/password", OWNERS, Place::person, at -> Map.of("password", Crew.PASSWORD));
        row("DELETE /api/people/{name}/sessions", OWNERS, Place::person, null);
        row("GET /api/keys", OWNERS, null);
        row("POST /api/keys", OWNERS, at -> Map.of());
        row("DELETE /api/keys/{id}", OWNERS, Place::key, null);
        row("GET /api/audit", OWNERS, null);
        row("GET /api/setup-changes", OWNERS, null);
    }

    private void read() {
        // Which rows and cells of the board production sees is for the board's own tests.
        row("GET /api/board", READ, null);
        ask(
                "GET /api/board/cell",
                READ_AT_SITE,
                at -> "?variety=%s&trayFormat=%s&site=%s&week=2026-W20"
                        .formatted(at.nursery().variety, at.nursery().trayFormat, at.nursery().site));
        row("GET /api/live", READ, null);
        list("GET /api/batches", READ_AT_SITE);
        list("GET /api/climate", READ_AT_SITE);
        row("GET /api/batches/{id}", READ_AT_SITE, Place::batch, null);
        row("GET /api/batches/{id}/development", READ_AT_SITE, Place::batch, null);
        row("GET /api/batches/{id}/explanation", READ_AT_SITE, Place::batch, null);
        row("GET /api/batches/{id}/entries", READ_AT_SITE, Place::batch, null);
        list("GET /api/orders", READ_AT_SITE);
        row("GET /api/orders/{id}", READ_AT_SITE, Place::order, null);
        list("GET /api/sites", READ_AT_SITE);
        row("GET /api/sites/{code}", READ_AT_SITE, at -> at.nursery().site, null);
        list("GET /api/houses", READ_AT_SITE);
        row("GET /api/houses/{code}", READ_AT_SITE, at -> at.nursery().house, null);
        row("GET /api/houses/{code}/climate", READ_AT_SITE, at -> at.nursery().house, null);
        row("GET /api/houses/{code}/now", READ_AT_SITE, at -> at.nursery().house, null);
        row("GET /api/houses/{code}/sensors", READ_AT_SITE, at -> at.nursery().house, null);
        row("GET /api/houses/{code}/setpoints", READ_AT_SITE, at -> at.nursery().house, null);
        list("GET /api/sensors", READ_AT_SITE);
        row("GET /api/sensors/{code}", READ_AT_SITE, Place::sensor, null);
        row("GET /api/sensors/{code}/readings", READ_AT_SITE, Place::sensor, null);
        list("GET /api/treatments", READ_AT_SITE);
        list("GET /api/treatments/closed-houses", READ_AT_SITE);
        row("GET /api/treatments/{id}", READ_AT_SITE, Place::treatment, null);
        list("GET /api/warnings", READ_AT_SITE);
        row("GET /api/warnings/{id}", READ_AT_SITE, Place::warning, null);
        row("GET /api/warnings/{id}/evidence", READ_AT_SITE, Place::warning, null);
        ask("GET /api/rounds", READ_AT_SITE, at -> "?site=" + at.nursery().site);
        ask("GET /api/rounds/houses", READ_AT_SITE, at -> "?site=" + at.nursery().site);
        row("GET /api/track-record", READ, null);
        row("GET /api/ingest", READ, null);
        row("GET /api/crops", READ, null);
        row("GET /api/crops/{code}", READ, at -> at.nursery().crop, null);
        row("GET /api/crops/{code}/profiles", READ, at -> at.nursery().crop, null);
        row("GET /api/crops/{code}/recipe", READ, at -> at.nursery().crop, null);
        row("GET /api/crops/{code}/recipe/versions", READ, at -> at.nursery().crop, null);
        row("GET /api/seeded-crops", READ, null);
        row("GET /api/varieties", READ, null);
        row("GET /api/varieties/{code}", READ, at -> at.nursery().variety, null);
        row("GET /api/tray-formats", READ, null);
        row("GET /api/tray-formats/{code}", READ, at -> at.nursery().trayFormat, null);
        for (String computed : List.of("dilution", "ec", "injector", "stock", "strength")) {
            row("POST /api/feed/" + computed, READ, at -> Map.of());
        }
    }

    private void write() {
        row("POST /api/batches", RECORD, at -> at.nursery().stickBody(1, java.time.Duration.ofDays(1)));
        row(
                "POST /api/batches/{id}/entries",
                RECORD,
                Place::batch,
                at -> at.nursery().entry("count", Map.of("plants", 1_900)));
        query(
                "POST /api/batches/csv",
                RECORD,
                at -> "?dryRun=true",
                at -> Map.of(
                        "csv",
                        "site,house,variety,tray,trays,stuck\n%s,%s,%s,%s,1,2026-02-01\n"
                                .formatted(
                                        at.nursery().site,
                                        at.nursery().house,
                                        at.nursery().variety,
                                        at.nursery().trayFormat),
                        "columns",
                        Map.of(
                                "site",
                                "site",
                                "house",
                                "house",
                                "variety",
                                "variety",
                                "trayFormat",
                                "tray",
                                "trays",
                                "trays",
                                "stuckOn",
                                "stuck")));
        row("POST /api/rounds/{id}/done", RECORD, Place::dueItem, at -> Map.of("happenedAt", at.now(), "level", 4));
        row("POST /api/rounds/{id}/skipped", RECORD, Place::dueItem, at -> Map.of("reason", "rain"));
        row("POST /api/rounds/{id}/undo", RECORD, Place::closedItem, at -> Map.of("reason", "wrong house"));
        row("POST /api/treatments", RECORD, AccessTable::treatment);
        row("POST /api/treatments/{id}/reversal", RECORD, Place::treatment, at -> Map.of("reason", "wrong house"));
        row("POST /api/warnings/{id}/acknowledgement", RECORD, Place::warning, at -> Map.of("text", "seen"));
        row("POST /api/readings", READINGS, AccessTable::reading);
        row(
                "POST /api/orders",
                WRITE_ORDERS,
                at -> Nursery.orderBody(List.of(at.nursery().line(at.nursery().nextMonday(), 1))));
        row("DELETE /api/orders/{id}", WRITE_ORDERS, Place::order, null);
    }

    private void setUp() {
        row("POST /api/sites", SET_UP_AT_SITE, at -> at.nursery().siteBody("Etc/UTC"));
        row(
                "PUT /api/sites/{code}",
                SET_UP_AT_SITE,
                at -> at.nursery().site,
                at -> at.nursery().siteBody("Etc/UTC"));
        row("POST /api/houses", SET_UP_AT_SITE, at -> house(at, at.nursery().house + "x"));
        row("PUT /api/houses/{code}", SET_UP_AT_SITE, at -> at.nursery().house, at -> house(at, at.nursery().house));
        row(
                "POST /api/houses/{code}/setpoints",
                SET_UP_AT_SITE,
                at -> at.nursery().house,
                at -> Map.of("mediumC", 22, "from", at.now()));
        row("POST /api/sensors", SET_UP_AT_SITE, at -> sensor(at, at.sensor() + "x"));
        row("PUT /api/sensors/{code}", SET_UP_AT_SITE, Place::sensor, at -> sensor(at, at.sensor()));
        row("POST /api/flags/{id}/override", SET_UP_AT_SITE, Place::flag, at -> Map.of("reason", "it was so"));
        row("POST /api/flags/{id}/restore", SET_UP_AT_SITE, Place::flag, at -> Map.of("reason", "it was not"));
        put("PUT /api/rounds/houses", SET_UP_AT_SITE, at -> Map.of("houses", List.of(at.nursery().house)));
        query(
                "POST /api/readings/csv",
                SET_UP_AT_SITE,
                at -> "?dryRun=true",
                at -> Map.of(
                        "csv",
                        "time,medium\n2026-02-01T00:00:00,21\n",
                        "timeColumn",
                        "time",
                        "zone",
                        "UTC",
                        "columns",
                        List.of(Map.of(
                                "column",
                                "medium",
                                "house",
                                at.nursery().house,
                                "quantity",
                                "medium-temperature",
                                "unit",
                                "Cel"))));
        row(
                "POST /api/what-if",
                SET_UP_AT_SITE,
                at -> Map.of(
                        "setpoints", List.of(Map.of("house", at.nursery().house, "mediumC", 24, "from", at.now()))));
        row("POST /api/seeded-crops", SET_UP, at -> Map.of("crops", List.of("crop-of-nobody")));
        row("POST /api/crops", SET_UP, at -> Nursery.cropBody("crop-of-nobody"));
        row("PUT /api/crops/{code}", SET_UP, at -> at.nursery().crop, at -> Nursery.cropBody(at.nursery().crop));
        row("POST /api/crops/{code}/learning", SET_UP, at -> at.nursery().crop, null);
        row("POST /api/crops/{code}/profiles/{version}/adoption", SET_UP, at -> at.nursery().crop, null);
        row("GET /api/crops/{code}/profiles/{version}/weighed", SET_UP, at -> at.nursery().crop, null);
        // Its body is long, so a broken one stands for it: who may ask is told that it is broken.
        row("PUT /api/crops/{code}/recipe", ASK_SET_UP, at -> at.nursery().crop, at -> Map.of());
        row(
                "POST /api/varieties",
                SET_UP,
                at -> Map.of("code", "variety-of-nobody", "crop", at.nursery().crop, "name", "Grey"));
        row(
                "PUT /api/varieties/{code}",
                SET_UP,
                at -> at.nursery().variety,
                at -> Map.of("code", at.nursery().variety, "crop", at.nursery().crop, "name", "Grey Morning"));
        row("POST /api/tray-formats", SET_UP, at -> Nursery.formatBody("format-of-nobody"));
        row(
                "PUT /api/tray-formats/{code}",
                SET_UP,
                at -> at.nursery().trayFormat,
                at -> Nursery.formatBody(at.nursery().trayFormat));
    }

    private void row(String endpoint, Rule rule, @Nullable Function<Place, Object> body) {
        rows.add(new Row(endpoint, rule, at -> path(endpoint), body, false));
    }

    /** @param id for what stands in braces; a version number is 1 */
    private void row(String endpoint, Rule rule, Function<Place, String> id, @Nullable Function<Place, Object> body) {
        rows.add(new Row(
                endpoint,
                rule,
                at -> path(endpoint)
                        .replace("{version}", "1")
                        .replaceFirst("\\{\\w+}", id.apply(at).replace(" ", "%20")),
                body,
                false));
    }

    private void ask(String endpoint, Rule rule, Function<Place, String> query) {
        query(endpoint, rule, query, null);
    }

    private void query(
            String endpoint, Rule rule, Function<Place, String> query, @Nullable Function<Place, Object> body) {
        rows.add(new Row(endpoint, rule, at -> path(endpoint) + query.apply(at), body, false));
    }

    private void put(String endpoint, Rule rule, Function<Place, Object> body) {
        query(endpoint, rule, at -> "?site=" + at.nursery().site, body);
    }

    private void list(String endpoint, Rule rule) {
        rows.add(new Row(endpoint, rule, at -> path(endpoint), null, true));
    }

    private static String path(String endpoint) {
        return endpoint.substring(endpoint.indexOf(' ') + 1);
    }

    private static Object house(Place at, String code) {
        return Map.of("code", code, "site", at.nursery().site, "name", "North house");
    }

    private static Object sensor(Place at, String code) {
        return Map.of("code", code, "house", at.nursery().house, "quantity", "air-temperature", "unit", "Cel");
    }

    static Map<String, Object> treatment(Place at) {
        return Map.of(
                "house",
                at.nursery().otherHouse,
                "product",
                "Soap",
                "rate",
                "10 ml per litre",
                "appliedBy",
                "A hand",
                "appliedAt",
                at.now(),
                "reentryHours",
                0);
    }

    static Map<String, Object> reading(Place at) {
        return Map.of(
                "house",
                at.nursery().house,
                "quantity",
                "medium-temperature",
                "value",
                21.5,
                "unit",
                "Cel",
                "at",
                at.now());
    }
}
