package rootcast.app.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Sensors, flags, derived quantities and tables of the past, seen from outside. */
abstract class ClimateContract {

    private static final long SEED = 20260305;

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    @Inject
    PutAwayReadings putAway;

    private Nursery nursery;
    private Instant hour;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        hour = time.instant().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(5));
    }

    @Test
    void aSensorIsReadBackAsItWasSetUp() {
        sensor(
                        "a",
                        "light",
                        "lm/[sft_i]",
                        Map.of("topic", nursery.house + "/light", "offset", 2.5, "lightSource", "metal-halide"))
                .statusCode(201);

        JsonPath back = Nursery.get("/api/sensors/" + code("a"));
        assertThat(back.getString("house")).isEqualTo(nursery.house);
        assertThat(back.getString("unit")).isEqualTo("lm/[sft_i]");
        assertThat(back.getDouble("offset")).isEqualTo(2.5);
        assertThat(back.getString("lightSource")).isEqualTo("metal-halide");
    }

    @ParameterizedTest(name = "{0} in {1} on {2} is refused for its {3}")
    @CsvSource({
        "medium-temperature, %, a/b, unit",
        "soil, Cel, a/b, quantity",
        "light, lx, a/+/b, topic",
        "light, lx, a/#, topic",
    })
    void aSensorThatMakesNoSenseIsRefused(String quantity, String unit, String topic, String field) {
        sensor("a", quantity, unit, Map.of("topic", topic)).statusCode(400).body("errors.field", hasItem(field));
    }

    @Test
    void aTopicBelongsToOneSensor() {
        String topic = nursery.house + "/t";
        sensor("a", "ec", "mS/cm", Map.of("topic", topic)).statusCode(201);
        sensor("b", "ec", "mS/cm", Map.of("topic", topic))
                .statusCode(422)
                .body("errors[0].message", containsString(code("a")));
        sensor("c", "ec", "mS/cm", Map.of("house", "nowhere", "topic", topic + "2"))
                .statusCode(422);
    }

    /** By hand: 71.6 °F is 22 °C, and 1.8 °F more is one degree; 1 dS/m is 1 mS/cm; 54 lx of sun are 1 µmol. */
    @ParameterizedTest
    @CsvSource({
        "medium-temperature, [degF], 71.6, 1.8, 23",
        "relative-humidity, %, 82, -2, 80",
        "ec, uS/cm, 1500, 0, 1.5",
        "light, lx, 5400, 0, 100",
        "medium-moisture, {level}, 4, 0, 4",
    })
    void aReadingOfASensorIsPutRightByItsOffsetAndUnit(
            String quantity, String unit, double shown, double offset, double value) {
        sensor("a", quantity, unit, Map.of("offset", offset)).statusCode(201);
        take(List.of(with(reading(quantity, hour, shown), Map.of("unit", unit, "sensor", code("a")))))
                .body("accepted", equalTo(1));

        assertThat(climate(quantity, hour, 1).getDouble("hours[0].value")).isCloseTo(value, within(1e-6));
        JsonPath raw =
                Nursery.get("/api/sensors/" + code("a") + "/readings?from=" + hour + "&to=" + hour.plusSeconds(1));
        assertThat(raw.getDouble("readings[0].sent")).isEqualTo(shown);
        assertThat(raw.getString("readings[0].unit")).isEqualTo(unit);
    }

    /** FAO-56: e°(25 °C) 3.168 kPa (V2), half of it at 50 %; dew point 13.86 °C (C). */
    @Test
    void deficitAndDewPointFollowFromAirAndHumidity() {
        take(List.of(reading("air-temperature", hour, 25), reading("relative-humidity", hour, 50)));
        take(List.of(reading("air-temperature", hour.plusSeconds(3600), 25)));

        JsonPath deficit = climate("vapour-pressure-deficit", hour, 2);
        assertThat(deficit.getString("unit")).isEqualTo("kPa");
        assertThat(deficit.getList("hours")).hasSize(1);
        assertThat(deficit.getDouble("hours[0].value")).isCloseTo(1.584, within(0.001));
        assertThat(climate("dew-point", hour, 2).getDouble("hours[0].value")).isCloseTo(13.86, within(0.05));
    }

    /** Extension table (V): 500 µmol for 12 hours are 21.6 mol. */
    @Test
    void lightAddsUpToTheDayOfTheSite() {
        Instant midnight = time.instant().truncatedTo(ChronoUnit.DAYS).minus(Duration.ofDays(1));
        List<Map<String, Object>> day = new ArrayList<>();
        for (int h = 0; h < 24; h++) {
            day.add(reading("light", midnight.plus(Duration.ofHours(h)), h >= 6 && h < 18 ? 500 : 0));
        }
        take(day);

        JsonPath light = climate("daily-light-integral", midnight, 24);
        assertThat(light.getList("hours")).hasSize(1);
        assertThat(Instant.parse(light.getString("hours[0].at"))).isEqualTo(midnight);
        assertThat(light.getDouble("hours[0].value")).isCloseTo(21.6, within(1e-6));
    }

    @Test
    void aBrokenProbeIsKeptAsideWithItsReason() {
        take(List.of(medium(hour, 21), medium(hour.plusSeconds(60), -127)))
                .body("accepted", equalTo(1))
                .body("rejected[0].flag", equalTo("range"));

        JsonPath climate = climate("medium-temperature", hour, 1);
        assertThat(climate.getDouble("hours[0].value")).isCloseTo(21, within(1e-9));
        assertThat(climate.getList("flags.kind")).containsExactly("range");
        assertThat(climate.getString("flags[0].reason")).contains("-127 °C").contains("-10 °C");
    }

    @Test
    void anotherValueForTheSameMomentIsKeptAsideAndCanBeBroughtIn() {
        take(List.of(medium(hour, 20)));
        take(List.of(medium(hour, 24), medium(hour.plusSeconds(60), 20)))
                .body("rejected[0].flag", equalTo("duplicate"));
        assertThat(meanOf(hour)).isCloseTo(20, within(1e-9));
        JsonPath flags = climate("medium-temperature", hour, 1);
        String id = flags.getString("flags[0].id");

        say(id, "overrule", Map.of("reason", "the logger was set later"))
                .statusCode(200)
                .body("flags", equalTo(1));
        assertThat(meanOf(hour)).isCloseTo(22, within(1e-9));
        JsonPath after = climate("medium-temperature", hour, 1);
        assertThat(after.getBoolean("flags[0].overruled")).isTrue();
        assertThat(after.getString("flags[0].overruledReason")).isEqualTo("the logger was set later");
        take(List.of(medium(hour, 20), medium(hour.plusSeconds(61), 22))).body("duplicates", equalTo(1));

        say(id, "restore", Map.of("reason", "it was not")).statusCode(200);
        assertThat(meanOf(hour)).isCloseTo(62 / 3.0, within(1e-6));
    }

    @Test
    void aSpikeIsTakenOutOnceItsNeighboursAreThereAndCanBeOverruled() {
        double[] values = {20, 20, 28, 20, 20, 20};
        List<Map<String, Object>> readings = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            readings.add(medium(hour.plusSeconds(60L * i), values[i]));
        }
        take(readings.subList(0, 3));
        assertThat(meanOf(hour)).isCloseTo(68 / 3.0, within(1e-6));
        take(readings.subList(3, 6));
        assertThat(meanOf(hour)).isCloseTo(20, within(1e-9));

        String id = climate("medium-temperature", hour, 1).getString("flags.find { it.kind == 'spike' }.id");
        say(id, "overrule", Map.of("reason", "the door stood open")).statusCode(200);
        assertThat(meanOf(hour)).isCloseTo(128 / 6.0, within(1e-6));
    }

    @Test
    void aFlagNeedsAReasonAndMustBeThere() {
        say("00000000-0000-0000-0000-000000000001", "overrule", Map.of("reason", "x"))
                .statusCode(404);
        say("no-id", "restore", Map.of("reason", "x")).statusCode(404);
        say("00000000-0000-0000-0000-000000000001", "overrule", Map.of("reason", " "))
                .statusCode(400);
    }

    @Test
    void threeProbesAreHeardAndTheOneThatStandsAloneIsNot() {
        for (String each : List.of("a", "b", "c")) {
            sensor(each, "medium-temperature", "Cel", Map.of()).statusCode(201);
        }
        take(List.of(
                with(medium(hour, 21), Map.of("sensor", code("a"))),
                with(medium(hour, 22), Map.of("sensor", code("b"))),
                with(medium(hour, 35), Map.of("sensor", code("c")))));

        JsonPath climate = climate("medium-temperature", hour, 1);
        assertThat(climate.getDouble("hours[0].value")).isCloseTo(21.5, within(1e-9));
        assertThat(climate.getString("flags[0].kind")).isEqualTo("disagreement");
        assertThat(climate.getString("flags[0].sensor")).isEqualTo(code("c"));
        JsonPath health = Nursery.get("/api/houses/" + nursery.house + "/sensors");
        assertThat(health.getInt("find { it.sensor == '" + code("c") + "' }.flags.disagreement"))
                .isEqualTo(1);
    }

    @Test
    void anyOrderOfArrivalGivesTheSameHoursAndFlags() {
        var random = new Random(SEED);
        Nursery other = Nursery.opened(time);
        List<Map<String, Object>> readings = new ArrayList<>();
        for (int i = 0; i < 600; i++) {
            double value = random.nextInt(12) == 0 ? 33 : 21 + random.nextInt(3);
            readings.add(medium(hour.plusSeconds(20L * i), value));
        }
        for (int from = 0; from < 600; from += 200) {
            take(readings.subList(from, from + 200));
        }
        List<Map<String, Object>> shuffled = new ArrayList<>();
        readings.forEach(each -> shuffled.add(with(each, Map.of("house", other.house))));
        Collections.shuffle(shuffled, random);
        for (int from = 0; from < 600; from += 60) {
            take(shuffled.subList(from, from + 60));
        }

        JsonPath inOrder = climate("medium-temperature", hour, 4);
        JsonPath mixed = Nursery.get(path(other.house, "medium-temperature", hour, 4));
        assertThat(mixed.getList("hours")).as("seed %d", SEED).isEqualTo(inOrder.getList("hours"));
        assertThat(mixed.getList("flags.reason")).isEqualTo(inOrder.getList("flags.reason"));
        assertThat(inOrder.getList("flags.kind")).contains("spike");
    }

    @Test
    void readingsThatWerePutAwayLeaveTheirHours() throws Exception {
        take(List.of(medium(hour, 20), medium(hour.plusSeconds(60), 22)));
        new Tables(database)
                .execute(
                        "update reading set recorded_at = timestamp with time zone '2020-01-01 00:00:00+00' where house = '"
                                + nursery.house + "'");

        assertThat(putAway.putAway()).isEqualTo(2);

        assertThat(meanOf(hour)).isCloseTo(21, within(1e-9));
        take(List.of(medium(hour, 20))).statusCode(422).body("rejected[0].reason", containsString("put away"));
        take(List.of(medium(hour.plusSeconds(3600), 25))).statusCode(200);
        assertThat(meanOf(hour)).isCloseTo(21, within(1e-9));
    }

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
            assertThat(report.getString("lines[0].reason")).contains("does not exist");
            assertThat(report.getString("lines[1].kind")).isEqualTo("range");
            assertThat(report.getString("lines[2].reason")).contains("warm");
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

    private String code(String name) {
        return nursery.house + "-" + name;
    }

    private ValidatableResponse sensor(String name, String quantity, String unit, Map<String, ?> more) {
        Map<String, Object> body =
                new HashMap<>(Map.of("code", code(name), "house", nursery.house, "quantity", quantity, "unit", unit));
        body.putAll(more);
        return nursery.post("/api/sensors", body);
    }

    private ValidatableResponse say(String flag, String what, Map<String, ?> word) {
        return nursery.post("/api/flags/" + flag + "/" + what, word);
    }

    private ValidatableResponse take(List<Map<String, Object>> readings) {
        return nursery.post("/api/readings", readings);
    }

    private Map<String, Object> medium(Instant at, double value) {
        return reading("medium-temperature", at, value);
    }

    private Map<String, Object> reading(String quantity, Instant at, double value) {
        Map<String, String> units = Map.of(
                "medium-temperature", "Cel",
                "air-temperature", "Cel",
                "relative-humidity", "%",
                "light", "umol/m2/s",
                "medium-moisture", "{level}",
                "ec", "mS/cm");
        return Map.of(
                "house",
                nursery.house,
                "quantity",
                quantity,
                "value",
                value,
                "unit",
                units.get(quantity),
                "at",
                at.toString());
    }

    private static Map<String, Object> with(Map<String, Object> reading, Map<String, ?> fields) {
        Map<String, Object> changed = new HashMap<>(reading);
        changed.putAll(fields);
        return changed;
    }

    private double meanOf(Instant hourStart) {
        return climate("medium-temperature", hourStart, 1).getDouble("hours[0].value");
    }

    private JsonPath climate(String quantity, Instant from, int hours) {
        return Nursery.get(path(nursery.house, quantity, from, hours));
    }

    private static String path(String house, String quantity, Instant from, int hours) {
        return "/api/houses/%s/climate?quantity=%s&from=%s&to=%s"
                .formatted(house, quantity, from, from.plus(Duration.ofHours(hours)));
    }
}
