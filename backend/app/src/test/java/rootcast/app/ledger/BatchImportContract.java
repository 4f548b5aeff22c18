package rootcast.app.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;

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

/** Batches that already stand on the benches, from a table: looked at first, then written as they were shown. */
abstract class BatchImportContract {

    private static final String PATH = "/api/batches/csv";

    /** Sale count 90, 100 cells: three trays hold 300 cuttings. */
    private static final String HEAD = "Site;House;Crop;Variety;Tray;Trays;Stuck;Stage;Reached;Alive;Lot\n";

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    private Nursery nursery;
    private LocalDate today;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        today = nursery.today();
    }

    @Test
    void aTableIsLookedAtFirstAndThenWrittenAsItWasShown() throws Exception {
        // House by its name, site and variety by their code in other letters; a count written with a thousands sign.
        String csv = HEAD
                + line("North house", "Grey Morning", 12, 20, "rooted", 4, "1 100", "A-7")
                + line(nursery.otherHouse.toLowerCase(), nursery.variety, 3, 2, "", 0, "", "");
        var tables = new Tables(database);
        var before = tables.everything();

        JsonPath preview = ask(true, body(csv)).statusCode(200).extract().jsonPath();
        assertThat(tables.everything()).isEqualTo(before);
        JsonPath taken = ask(false, body(csv)).statusCode(200).extract().jsonPath();

        for (JsonPath report : List.of(preview, taken)) {
            assertThat(report.getInt("rows")).isEqualTo(2);
            assertThat(report.getInt("batches")).isEqualTo(2);
            assertThat(report.getInt("plants")).isEqualTo(1_100 + 300);
            assertThat(report.getList("lines")).isEmpty();
            assertThat(report.getList("made")).isEmpty();
        }
        JsonPath batches = Nursery.get("/api/batches?site=" + nursery.site);
        assertThat(batches.getList("batches.plants.alive", Integer.class)).containsExactlyInAnyOrder(1_100, 300);
        String rooted = batches.getString("batches.find { it.plants.alive == 1100 }.id");
        JsonPath entries = Nursery.entries(rooted);
        assertThat(entries.getList("kind")).containsExactly("stick", "stage", "count");
        assertThat(entries.getString("[0].note")).isEqualTo("Lot: A-7");
        // The nursery's clock is UTC; a day counts as its noon.
        assertThat(entries.getString("[0].happenedAt")).isEqualTo(today.minusDays(20) + "T12:00:00Z");
        assertThat(entries.getString("[1].stage")).isEqualTo("ROOT");
        assertThat(entries.getString("[1].happenedAt")).isEqualTo(today.minusDays(4) + "T12:00:00Z");
    }

    @Test
    void theSameKeyWritesOnceAndTheSameTableAgainIsHereAlready() {
        String csv =
                HEAD + line("North house", "Grey Morning", 5, 9, "", 0, "", "").repeat(2);
        String key = UUID.randomUUID().toString();

        send(key, false, body(csv)).statusCode(200).body("batches", equalTo(2));
        send(key, false, body(csv)).statusCode(200).body("batches", equalTo(2));
        assertThat(Nursery.get("/api/batches?site=" + nursery.site).getList("batches"))
                .hasSize(2);

        ask(false, body(csv))
                .statusCode(200)
                .body("batches", equalTo(0))
                .body("here", equalTo(2))
                .body("lines.outcome", contains("here", "here"));
        assertThat(Nursery.get("/api/batches?site=" + nursery.site).getList("batches"))
                .hasSize(2);
    }

    @Test
    void eachBadLineHasItsReasonAndTheGoodOnesAreWritten() {
        String csv = HEAD
                + line("North house", "Grey Morning", 5, 9, "", 0, "", "")
                + line("Far house", "Grey Morning", 5, 9, "", 0, "", "")
                + line("North house", "Red Evening", 5, 9, "", 0, "", "")
                + line("North house", "Grey Morning", 0, 9, "", 0, "", "")
                + line("North house", "Grey Morning", 5, -1, "", 0, "", "")
                + line("North house", "Grey Morning", 5, 9, "blooming", 1, "", "")
                + line("North house", "Grey Morning", 5, 9, "rooted", 11, "", "")
                + line("North house", "Grey Morning", 5, 9, "", 0, "501", "")
                + line("North house", "Grey Morning", 5, 9, "", 0, "many", "")
                + nursery.site + ";North house;" + nursery.crop + ";Grey Morning;" + nursery.trayFormat
                + ";5;yesterday;;;;\n"
                + nursery.site + ";North house;;Grey Morning;T7;5;" + today + ";;;;\n"
                + "short;line\n";

        JsonPath report = ask(false, body(csv)).statusCode(200).extract().jsonPath();

        assertThat(report.getInt("rows")).isEqualTo(12);
        assertThat(report.getInt("batches")).isEqualTo(1);
        assertThat(report.getInt("refused")).isEqualTo(11);
        assertThat(report.getList("lines.line", Integer.class)).containsExactly(3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13);
        assertThat(report.getList("lines.kind", String.class))
                .containsExactly(
                        "unknown-house",
                        "unknown-variety",
                        "trays",
                        "in-the-future",
                        "not-a-stage",
                        "before-sticking",
                        "more-than-stuck",
                        "not-whole",
                        "not-a-day",
                        "unknown-tray-format",
                        "cells");
        assertThat(report.getString("lines[0].column")).isEqualTo("House");
        assertThat(report.getString("lines[0].asked")).isEqualTo("Far house");
        assertThat(report.getInt("lines[6].most")).isEqualTo(500);
        assertThat(report.getString("lines[9].asked")).isEqualTo("T7");
    }

    @Test
    void whatIsHardlyLikelyIsSaidAndWrittenAllTheSame() {
        // Callus takes 7 days at 22 °C; ready after one day, and one plant in ten alive.
        String csv = HEAD
                + line("North house", "Grey Morning", 5, 3, "ready", 2, "", "")
                + line("North house", "Grey Morning", 6, 9, "", 0, "60", "");

        JsonPath preview = ask(true, body(csv)).statusCode(200).extract().jsonPath();

        assertThat(preview.getInt("batches")).isEqualTo(2);
        assertThat(preview.getInt("doubtful")).isEqualTo(2);
        assertThat(preview.getList("lines.kind")).containsExactly("implausible-stage", "implausible-plants");
        assertThat(preview.getInt("lines[1].booked")).isEqualTo(600);
        ask(false, body(csv)).statusCode(200).body("batches", equalTo(2));
    }

    @Test
    void aStageWithoutADayCountsAsSeenNow() {
        String csv = HEAD
                + nursery.site + ";North house;" + nursery.crop + ";Grey Morning;" + nursery.trayFormat + ";5;"
                + today.minusDays(20)
                + ";rooted;;;\n";

        ask(false, body(csv)).statusCode(200).body("lines.kind", contains("stage-today"));

        String id = Nursery.get("/api/batches?site=" + nursery.site).getString("batches[0].id");
        assertThat(Nursery.entries(id).getString("[1].happenedAt"))
                .isEqualTo(nursery.now().toString());
    }

    @Test
    void housesAndVarietiesThatNobodyKnowsAreMadeIfThatIsWanted() {
        String csv = HEAD
                + line("East house", "Red Evening", 5, 9, "", 0, "", "").replace(nursery.crop, "")
                + line("East house", "Blue Noon", 5, 3, "ready", 2, "", "")
                + line("East house", "Greyleaf 'Dusk'", 5, 9, "", 0, "", "");
        Map<String, Object> wanted = body(csv);
        wanted.put("makeMissing", true);

        JsonPath report = ask(false, wanted).statusCode(200).extract().jsonPath();

        // The first line does not say of which crop it is; all crops of these tests bear the name that the third begins
        // with.
        assertThat(report.getList("lines.kind")).containsExactly("no-crop", "implausible-stage");
        assertThat(report.getList("made.name"))
                .containsExactly("East house", "Greyleaf 'Blue Noon'", "Greyleaf 'Dusk'");
        assertThat(report.getInt("batches")).isEqualTo(2);
        String house = report.getString("made[0].code");
        assertThat(Nursery.get("/api/houses/" + house).getString("site")).isEqualTo(nursery.site);
        String variety = report.getString("made[1].code");
        assertThat(Nursery.get("/api/varieties/" + variety).getString("crop")).isEqualTo(nursery.crop);
        assertThat(Nursery.get("/api/batches?site=" + nursery.site).getList("batches.house"))
                .containsOnly(house);
    }

    @Test
    void aNameThatSeveralHaveIsNotGuessedAt() {
        Nursery other = Nursery.opened(time);

        // Both nurseries call their only variety so, and this line does not say of which crop it is.
        String csv =
                HEAD + line("North house", "Grey Morning", 5, 9, "", 0, "", "").replace(nursery.crop, "");

        ask(false, body(csv)).statusCode(200).body("batches", equalTo(0)).body("lines.kind", contains("ambiguous"));
        assertThat(Nursery.get("/api/batches?site=" + other.site).getList("batches"))
                .isEmpty();
    }

    @Test
    void aTableThatIsNoneOrDoesNotSayWhetherItIsAPreviewIsRefused() {
        Nursery.send(UUID.randomUUID().toString(), PATH, body(HEAD)).then().statusCode(400);
        ask(true, body("Site;House\nx;y\n")).statusCode(400).body("errors.field", contains("columns"));
        Map<String, Object> broken = body(HEAD);
        broken.put("dateFormat", "no such");
        ask(true, broken).statusCode(400).body("errors.field", contains("dateFormat"));
    }

    /** @param reachedAgo days, where there is a stage */
    private String line(
            String house,
            String variety,
            int trays,
            int stuckAgo,
            String stage,
            int reachedAgo,
            String alive,
            String lot) {
        return "%s;%s;%s;%s;%s;%d;%s;%s;%s;%s;%s%n"
                .formatted(
                        nursery.site,
                        house,
                        nursery.crop,
                        variety,
                        nursery.trayFormat,
                        trays,
                        today.minusDays(stuckAgo),
                        stage,
                        stage.isEmpty() ? "" : today.minusDays(reachedAgo),
                        alive,
                        lot);
    }

    private Map<String, Object> body(String csv) {
        Map<String, Object> body = new HashMap<>();
        body.put("csv", csv);
        body.put("separator", ";");
        Map<String, String> columns = new HashMap<>();
        columns.put("site", "Site");
        columns.put("house", "House");
        columns.put("crop", "Crop");
        columns.put("variety", "Variety");
        columns.put("trayFormat", "Tray");
        columns.put("trays", "Trays");
        columns.put("stuckOn", "Stuck");
        columns.put("stage", "Stage");
        columns.put("reachedOn", "Reached");
        columns.put("alive", "Alive");
        columns.put("lot", "Lot");
        body.put("columns", columns);
        body.put("stages", Map.of("rooted", "ROOT", "ready", "READY"));
        return body;
    }

    private ValidatableResponse ask(boolean dryRun, Map<String, Object> body) {
        return send(UUID.randomUUID().toString(), dryRun, body);
    }

    private static ValidatableResponse send(String key, boolean dryRun, Map<String, Object> body) {
        return Nursery.send(key, PATH + "?dryRun=" + dryRun, body).then();
    }
}
