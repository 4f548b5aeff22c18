package rootcast.app.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Tables of past readings: looked at first, then taken as they were shown. */
abstract class BackfillContract extends ClimateRequests {

    private static final long SEED = 20260306;

    @Inject
    AgroalDataSource database;

    /** New York, 9 March 2025: 02:30 does not exist. Rows by hand. */
    @Test
    void aTableIsLookedAtFirstAndThenTakenAsItWasShown() {
        String csv = "Time;Medium;RH\n"
                + "09.03.2025 01:30;20,5;80\n"
                + "09.03.2025 02:30;20,5;80\n"
                + "09.03.2025 03:30;20,7;\n"
                + "09.03.2025 04:30;-127;81\n"
                + "09.03.2025 04:30;20,8;81\n"
                + "09.03.2025 05:30;warm;81\n"
                + "yesterday;20;81\n";
        Map<String, Object> body = Map.of(
                "csv", csv,
                "separator", ";",
                "decimal", ",",
                "timeColumn", "Time",
                "timeFormat", "dd.MM.yyyy HH:mm",
                "zone", "America/New_York",
                "columns",
                        List.of(column("Medium", "medium-temperature", "Cel"), column("RH", "relative-humidity", "%")));
        var tables = new Tables(database);
        var before = tables.everything();

        JsonPath preview = nursery.post("/api/readings/csv?dryRun=true", body)
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(tables.everything()).isEqualTo(before);
        JsonPath taken = nursery.post("/api/readings/csv?dryRun=false", body)
                .statusCode(200)
                .extract()
                .jsonPath();

        for (JsonPath report : List.of(preview, taken)) {
            assertThat(report.getInt("rows")).isEqualTo(7);
            assertThat(report.getInt("readings")).isEqualTo(8);
            // medium 20.5, 20.7, 20.8 and humidity 80, 81, 81 at 05:30; 81 again at 04:30 is a repeat
            assertThat(report.getInt("accepted")).isEqualTo(6);
            assertThat(report.getInt("duplicates")).isEqualTo(1);
            assertThat(report.getInt("refused")).isEqualTo(4);
            assertThat(report.getList("lines.line")).containsExactly(3, 5, 7, 8);
            assertThat(report.getString("lines[0].why.code")).isEqualTo("no-such-local-time");
            assertThat(report.getString("lines[1].kind")).isEqualTo("range");
            assertThat(report.getString("lines[2].why.values.text")).isEqualTo("warm");
        }
        // 03:30 in New York is 07:30 UTC after the change
        assertThat(climate("medium-temperature", Instant.parse("2025-03-09T07:00:00Z"), 1)
                        .getDouble("hours[0].value"))
                .isCloseTo(20.7, within(1e-6));
    }

    /** New York, 2 November 2025: 01:30 comes twice, at 05:30 and 06:30 UTC. */
    @Test
    void theHourThatComesTwiceIsReadInTheOrderOfTheTable() {
        String csv =
                "t,m\n2025-11-02T00:30:00,20\n2025-11-02T01:30:00,21\n2025-11-02T01:30:00,22\n2025-11-02T02:30:00,23\n";

        JsonPath report = nursery.post(
                        "/api/readings/csv?dryRun=false",
                        Map.of(
                                "csv",
                                csv,
                                "timeColumn",
                                "t",
                                "zone",
                                "America/New_York",
                                "columns",
                                List.of(column("m", "medium-temperature", "Cel"))))
                .statusCode(200)
                .body("lines.outcome", equalTo(List.of("noted", "noted")))
                .extract()
                .jsonPath();

        assertThat(report.getInt("accepted")).isEqualTo(4);
        JsonPath climate = climate("medium-temperature", Instant.parse("2025-11-02T04:00:00Z"), 4);
        assertThat(climate.getList("hours.value", Double.class)).containsExactly(20.0, 21.0, 22.0, 23.0);
    }

    /**
     * March of the Seattle hourly normals (seed/demo/weather, NOAA, °C), put on March 2025, in which clocks change: once as
     * JSON in °C and in no order, once as a table of local times in °F. Every one of the 743 hours must come back.
     */
    @Test
    void aRealMonthComesBackHourByHourInBothUnitsAcrossTheClockChange() throws Exception {
        ZoneId zone = ZoneId.of("America/Los_Angeles");
        Instant start = LocalDate.of(2025, 3, 1).atStartOfDay(zone).toInstant();
        List<Double> celsius = marchNormals().subList(0, 743);
        Nursery other = Nursery.opened(time);
        List<Map<String, Object>> readings = new ArrayList<>();
        StringBuilder csv = new StringBuilder("time,air\n");
        for (int h = 0; h < celsius.size(); h++) {
            Instant at = start.plus(Duration.ofHours(h));
            readings.add(reading("air-temperature", at, celsius.get(h)));
            csv.append(LocalDateTime.ofInstant(at, zone))
                    .append(',')
                    .append(String.format(Locale.ROOT, "%.2f", celsius.get(h) * 1.8 + 32))
                    .append('\n');
        }
        Collections.shuffle(readings, new Random(SEED));
        take(readings).body("accepted", equalTo(743));
        nursery.post(
                        "/api/readings/csv?dryRun=false",
                        Map.of(
                                "csv", csv.toString(),
                                "timeColumn", "time",
                                "zone", zone.getId(),
                                "columns",
                                        List.of(Map.of(
                                                "column", "air",
                                                "house", other.house,
                                                "quantity", "air-temperature",
                                                "unit", "[degF]"))))
                .statusCode(200)
                .body("accepted", equalTo(743))
                .body("refused", equalTo(0));

        for (String house : List.of(nursery.house, other.house)) {
            List<Double> back =
                    Nursery.get(path(house, "air-temperature", start, 743)).getList("hours.value", Double.class);
            assertThat(back).hasSize(743);
            for (int h = 0; h < 743; h++) {
                // hundredths of a degree Fahrenheit are 0.003 °C at the most
                assertThat(back.get(h)).as("%s, hour %d", house, h).isCloseTo(celsius.get(h), within(0.003));
            }
        }
    }

    /** Two houses an hour apart: 08:00 of 1 March 2025 is 13:00 UTC in New York and 14:00 UTC in Chicago. */
    @Test
    void dayAndTimeOfDayStandApartAndEachHouseIsReadByTheClockOfItsSite() {
        String newYork = houseAt("America/New_York");
        String chicago = houseAt("America/Chicago");
        Map<String, Object> body = Map.of(
                "csv", "day,clock,east,west\n3/1/2025,8:00 AM,20,30\n3/1/2025,9:00 AM,21,\n2/30/2025,9:00 AM,22,32\n",
                "timeColumn", "day",
                "clockColumn", "clock",
                "timeFormat", "M/d/yyyy h:mm a",
                "clockOfSite", true,
                "columns", List.of(of(newYork, "east"), of(chicago, "west")));

        JsonPath report = taken(body);

        assertThat(report.getInt("accepted")).isEqualTo(3);
        assertThat(report.getList("lines.line")).containsExactly(4);
        assertThat(report.getString("lines[0].why.values.text")).isEqualTo("2/30/2025 9:00 AM");
        assertThat(report.getString("spans.find { it.timeZone == 'America/New_York' }.first"))
                .isEqualTo("2025-03-01T13:00:00Z");
        assertThat(report.getString("spans.find { it.timeZone == 'America/New_York' }.last"))
                .isEqualTo("2025-03-01T14:00:00Z");
        assertThat(report.getString("spans.find { it.timeZone == 'America/Chicago' }.first"))
                .isEqualTo("2025-03-01T14:00:00Z");
        assertThat(Nursery.get(path(chicago, "medium-temperature", Instant.parse("2025-03-01T14:00:00Z"), 1))
                        .getDouble("hours[0].value"))
                .isCloseTo(30, within(1e-6));

        JsonPath byHand = taken(with(without(body, "clockOfSite"), Map.of("zone", "America/Denver")));
        assertThat(byHand.getList("spans.first")).containsOnly("2025-03-01T15:00:00Z");
    }

    /** The hour that comes twice, once per house: 01:30 of the second house is again the first pass. */
    @Test
    void aLongTableNamesTheHouseOrTheSensorOfEachLine() {
        String first = houseAt("America/New_York");
        String second = houseAt("America/New_York");
        String houses = "t,house,m\n"
                + "2025-11-02T01:30,%1$s,21\n2025-11-02T02:30,%1$s,22\n".formatted(first)
                + "2025-11-02T01:30,%1$s,31\n2025-11-02T01:45,nowhere,5\n".formatted(second);
        JsonPath byHouse = taken(Map.of(
                "csv",
                houses,
                "timeColumn",
                "t",
                "clockOfSite",
                true,
                "houseColumn",
                "house",
                "columns",
                List.of(Map.of("column", "m", "quantity", "medium-temperature", "unit", "Cel"))));

        assertThat(byHouse.getInt("accepted")).isEqualTo(3);
        assertThat(byHouse.getList("lines.why.code")).containsExactly("first-of-two", "first-of-two", "unknown-house");
        assertThat(byHouse.getString("lines[2].column")).isEqualTo("house");
        assertThat(Nursery.get(path(second, "medium-temperature", Instant.parse("2025-11-02T05:00:00Z"), 1))
                        .getDouble("hours[0].value"))
                .isCloseTo(31, within(1e-6));

        sensor("air", "air-temperature", "[degF]", Map.of()).statusCode(201);
        JsonPath bySensor = taken(Map.of(
                "csv",
                "t,who,value\n2025-11-03T12:00:00Z,%s,68\n".formatted(code("air")),
                "timeColumn",
                "t",
                "sensorColumn",
                "who",
                "columns",
                List.of(Map.of("column", "value"))));
        assertThat(bySensor.getInt("accepted")).isEqualTo(1);
        // 68 °F are 20 °C
        assertThat(Nursery.get(path(nursery.house, "air-temperature", Instant.parse("2025-11-03T12:00:00Z"), 1))
                        .getDouble("hours[0].value"))
                .isCloseTo(20, within(1e-6));
    }

    @Test
    void anOffsetThatCannotBeTrueIsRefusedOnItsLineAndOneOfTheOtherSeasonIsNamed() {
        String newYork = houseAt("America/New_York");

        JsonPath report = taken(Map.of(
                "csv", """
                        t,m
                        2025-07-01T08:00:00-04:00,20
                        2025-07-01T08:10:00-05:00,20
                        2025-07-01T08:20:00+09:00,20
                        2025-07-01T08:30:00+15:30,20
                        2025-07-01T14:00:00Z,20
                        2025-07-01T14:10:00,20
                        """,
                "timeColumn", "t",
                "columns", List.of(of(newYork, "m"))));

        assertThat(report.getInt("accepted")).isEqualTo(3);
        assertThat(report.getList("lines.line")).containsExactly(3, 4, 5, 7);
        assertThat(report.getList("lines.outcome")).containsExactly("noted", "refused", "refused", "refused");
        assertThat(report.getList("lines.why.code"))
                .containsExactly("offset-of-another-season", "offset-of-elsewhere", "impossible-offset", "no-offset");
        assertThat(report.getString("lines[1].why.values.zone")).isEqualTo("America/New_York");
        assertThat(report.getString("lines[2].why.values.offset")).isEqualTo("+15:30");
    }

    private JsonPath taken(Map<String, Object> body) {
        return nursery.post("/api/readings/csv?dryRun=false", body)
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private static Map<String, Object> without(Map<String, Object> body, String field) {
        Map<String, Object> rest = new HashMap<>(body);
        rest.remove(field);
        return rest;
    }

    /** A house of a site of its own. */
    private String houseAt(String zone) {
        Nursery other = Nursery.opened(time);
        String site = other.site + "Z";
        nursery.post("/api/sites", Map.of("code", site, "name", "Site " + site, "timeZone", zone))
                .statusCode(201);
        nursery.post("/api/houses", Map.of("code", site + "-H", "site", site, "name", "House of " + site))
                .statusCode(201);
        return site + "-H";
    }

    private static Map<String, Object> of(String house, String header) {
        return Map.of("column", header, "house", house, "quantity", "medium-temperature", "unit", "Cel");
    }

    private static List<Double> marchNormals() throws IOException {
        Path file = Path.of(System.getProperty("repository.root"), "seed", "demo", "weather", "hourly-normals.csv");
        return Files.readAllLines(file).stream()
                .filter(line -> line.startsWith("2010-03-") || line.startsWith("2010-04-01"))
                .map(line -> Double.valueOf(line.split(",")[1]))
                .toList();
    }

    @Test
    void aTableThatDoesNotFitIsRefused() {
        Map<String, Object> good = Map.of(
                "csv", "t,m\n2026-03-01T00:30:00Z,20\n",
                "timeColumn", "t",
                "columns", List.of(column("m", "medium-temperature", "Cel")));
        nursery.post("/api/readings/csv", good).statusCode(400);
        for (Map<String, Object> bad : List.<Map<String, Object>>of(
                Map.of("timeColumn", "x"),
                Map.of("decimal", ";"),
                Map.of("separator", "."),
                Map.of("zone", "Mars"),
                Map.of("zone", "UTC", "clockOfSite", true),
                Map.of("clockColumn", "x"),
                Map.of("houseColumn", "t"),
                Map.of("houseColumn", "t", "sensorColumn", "t"),
                Map.of("timeFormat", "q{"),
                Map.of("columns", List.of(column("m", "medium-temperature", "%"))),
                Map.of("csv", "t,m\n\"2026"))) {
            nursery.post("/api/readings/csv?dryRun=true", with(good, bad)).statusCode(400);
        }
        nursery.post(
                        "/api/readings/csv?dryRun=true",
                        with(good, Map.of("columns", List.of(Map.of("column", "m", "sensor", "none")))))
                .statusCode(422)
                .body("errors", hasSize(1));
    }

    private Map<String, Object> column(String header, String quantity, String unit) {
        return Map.of("column", header, "house", nursery.house, "quantity", quantity, "unit", unit);
    }
}
