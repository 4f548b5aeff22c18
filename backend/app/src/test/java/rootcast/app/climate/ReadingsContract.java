package rootcast.app.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Readings by HTTP, seen from outside. */
abstract class ReadingsContract {

    private static final long SEED = 20260302;

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    private Nursery nursery;
    private Instant hour;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        hour = time.instant().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(5));
    }

    @Test
    void oneReadingMayComeByItself() {
        take(reading(hour, 22)).statusCode(200).body("accepted", equalTo(1)).body("rejected", empty());
    }

    @Test
    void aListIsTakenInAnyOrderAndMakesTheMeanOfItsHour() {
        // 20, 21 and 25 °C make 22 °C by hand; the fourth lies in the next hour.
        take(List.of(
                        reading(hour.plusSeconds(3599), 25),
                        reading(hour, 20),
                        reading(hour.plusSeconds(3600), 30),
                        reading(hour.plusSeconds(1800), 21)))
                .statusCode(200)
                .body("accepted", equalTo(4));

        JsonPath climate = climate(nursery.house, hour, 2);
        assertThat(climate.getString("unit")).isEqualTo("Cel");
        assertThat(climate.getList("hours.source")).containsExactly("measured", "measured");
        assertThat(climate.getDouble("hours[0].value")).isCloseTo(22, within(1e-6));
        assertThat(climate.getDouble("hours[1].value")).isCloseTo(30, within(1e-6));
    }

    @ParameterizedTest(name = "{0} °F is {1} °C")
    @CsvSource({"32, 0", "72.5, 22.5", "50, 10", "140, 60", "14, -10"})
    void fahrenheitIsTakenByItsUcumCode(double fahrenheit, double celsius) {
        take(with(reading(hour, fahrenheit), "unit", "[degF]")).statusCode(200).body("accepted", equalTo(1));

        assertThat(climate(nursery.house, hour, 1).getDouble("hours[0].value")).isCloseTo(celsius, within(1e-6));
    }

    @Test
    void theSameReadingAgainIsADuplicateAndCountsOnce() {
        take(List.of(reading(hour, 20), reading(hour.plusSeconds(60), 24))).statusCode(200);
        take(List.of(reading(hour, 20), reading(hour, 20), reading(hour.plusSeconds(120), 28)))
                .statusCode(200)
                .body("accepted", equalTo(1))
                .body("duplicates", equalTo(2));

        assertThat(climate(nursery.house, hour, 1).getDouble("hours[0].value")).isCloseTo(24, within(1e-6));
    }

    @Test
    void anotherValueForTheSameMomentIsRejectedAndTheFirstStays() {
        take(reading(hour, 20)).statusCode(200);
        take(List.of(reading(hour, 21), reading(hour.plusSeconds(1), 20)))
                .statusCode(200)
                .body("accepted", equalTo(1))
                .body("rejected.index", contains(0))
                .body("rejected[0].reason", containsString("20.0"));

        assertThat(climate(nursery.house, hour, 1).getDouble("hours[0].value")).isCloseTo(20, within(1e-6));
    }

    @Test
    void airAndMediumAreKeptApart() {
        take(List.of(reading(hour, 22), with(reading(hour, 15), "quantity", "air-temperature")))
                .statusCode(200)
                .body("accepted", equalTo(2));

        JsonPath now = Nursery.get("/api/houses/" + nursery.house + "/now");
        assertThat(now.getList("quantities.quantity"))
                .containsExactlyInAnyOrder("medium-temperature", "air-temperature");
        assertThat(now.getFloat("quantities.find { it.quantity == 'air-temperature' }.valueC"))
                .isEqualTo(15f);
    }

    @ParameterizedTest(name = "{0} {1}: taken is {2}")
    @CsvSource({
        "medium-temperature, -10, true",
        "medium-temperature, -10.1, false",
        "medium-temperature, 60, true",
        "medium-temperature, 60.1, false",
        "air-temperature, -40, true",
        "air-temperature, 70.5, false",
        "soil-moisture, 20, false",
    })
    void anAbsurdValueIsRejected(String quantity, double value, boolean taken) {
        // Limits of the medium: the issue, -10 to 60 °C. Those of the air: facts-operations H, widened for a closed
        // house.
        var answer = take(with(reading(hour, value), "quantity", quantity));
        if (taken) {
            answer.statusCode(200).body("accepted", equalTo(1));
        } else {
            answer.statusCode(422).body("rejected.index", contains(0));
        }
    }

    @Test
    void whatIsGoodIsTakenAndWhatIsNotIsNamedByItsPlace() {
        Instant now = time.instant();
        List<Object> mixed = new ArrayList<>(List.of(
                reading(hour, 22),
                with(reading(hour, 22), "house", "nowhere"),
                reading(now.plusSeconds(180), 22),
                reading(now.plusSeconds(60), 22),
                with(reading(hour, 22), "unit", "C"),
                with(reading(hour, 22), "value", "warm"),
                with(reading(hour, 22), "sensor", "blue"),
                Map.of("house", nursery.house)));
        mixed.add(null);
        mixed.add(17);

        take(mixed)
                .statusCode(200)
                .body("accepted", equalTo(2))
                .body("duplicates", equalTo(0))
                .body("rejected.index", contains(1, 2, 4, 5, 6, 7, 8, 9))
                .body("rejected[0].reason", containsString("nowhere"))
                .body("rejected[1].reason", containsString("still to come"))
                .body("rejected[2].reason", containsString("Cel"));
    }

    @Test
    void ifNothingIsGoodTheAnswerIsAProblemAndNothingIsWritten() {
        var tables = new Tables(database);
        var before = tables.everything();

        take(List.of(reading(hour, 200), with(reading(hour, 22), "house", "nowhere")))
                .statusCode(422)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/no-reading-taken"))
                .body("rejected", hasSize(2));

        assertThat(tables.everything()).isEqualTo(before);
    }

    @Test
    void anEmptyListTakesNothing() {
        take(List.of()).statusCode(200).body("accepted", equalTo(0)).body("duplicates", equalTo(0));
    }

    @Test
    void hoursWithoutAReadingAreSaidToBeFilledAndAreNotZero() {
        take(List.of(reading(hour, 22), reading(hour.plus(Duration.ofHours(2)), 22)))
                .statusCode(200);

        JsonPath climate = climate(nursery.house, hour, 3);
        assertThat(climate.getList("hours.source")).containsExactly("measured", "filled", "measured");
        assertThat(climate.getDouble("hours[1].value")).isCloseTo(22, within(1e-6));
    }

    @Test
    void theSameReadingsGiveTheSameOutlookWhateverOrderTheyCameIn() {
        List<Map<String, Object>> readings = new ArrayList<>();
        var random = new Random(SEED);
        for (int minutes = 10 * 24 * 60; minutes > 0; minutes -= 60) {
            readings.add(reading(time.instant().minus(Duration.ofMinutes(minutes)), 18 + 6 * random.nextDouble()));
        }
        String batch = nursery.stuck(10, Duration.ofDays(10));
        take(readings).statusCode(200).body("accepted", equalTo(240));

        Nursery other = Nursery.opened(time);
        String otherBatch = other.stuck(10, Duration.ofDays(10));
        List<Map<String, Object>> shuffled = new ArrayList<>();
        readings.forEach(reading -> shuffled.add(with(reading, "house", other.house)));
        Collections.shuffle(shuffled, random);
        for (int from = 0; from < shuffled.size(); from += 60) {
            take(shuffled.subList(from, from + 60)).statusCode(200).body("accepted", equalTo(60));
        }

        for (String date : List.of("callusedAt", "rootedAt", "readyAt", "saleableTrays")) {
            assertThat((Object) Nursery.batch(otherBatch).get("outlook." + date))
                    .as("%s, seed %d", date, SEED)
                    .isEqualTo(Nursery.batch(batch).get("outlook." + date));
        }
    }

    @Test
    void theClimateOfAHouseThatIsNotThereIsNotFound() {
        for (String path : List.of("/climate", "/now")) {
            io.restassured.RestAssured.get("/api/houses/nowhere" + path)
                    .then()
                    .statusCode(404)
                    .body("asked", equalTo("nowhere"));
        }
    }

    private ValidatableResponse take(Object body) {
        return nursery.post("/api/readings", body);
    }

    private Map<String, Object> reading(Instant at, double value) {
        return Map.of(
                "house",
                nursery.house,
                "quantity",
                "medium-temperature",
                "value",
                value,
                "unit",
                "Cel",
                "at",
                at.toString());
    }

    private static Map<String, Object> with(Map<String, Object> reading, String field, Object value) {
        Map<String, Object> changed = new HashMap<>(reading);
        changed.put(field, value);
        return changed;
    }

    private static JsonPath climate(String house, Instant from, int hours) {
        return Nursery.get(
                "/api/houses/%s/climate?from=%s&to=%s".formatted(house, from, from.plus(Duration.ofHours(hours))));
    }
}
