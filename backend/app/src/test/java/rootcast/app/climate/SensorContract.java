package rootcast.app.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.restassured.path.json.JsonPath;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.app.Nursery;

/** What a sensor is and what its numbers mean, seen from outside. */
abstract class SensorContract extends ClimateRequests {

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

    /** By hand: 25 % is half-way from level 2 (20) to 3 (30); wetter than level 5 (50) is 5, drier than level 1 (10) is 1. */
    @Test
    void aMoistureProbeIsReadThroughTheLevelsItWasMappedTo() {
        sensor("a", "medium-moisture", "%", Map.of("levels", List.of(10, 20, 30, 40, 50)))
                .statusCode(201);
        take(List.of(moisture(hour, 25), moisture(hour.plusSeconds(3600), 70), moisture(hour.plusSeconds(7200), 4)))
                .body("accepted", equalTo(3));

        assertThat(climate("medium-moisture", hour, 3).getList("hours.value", Double.class))
                .containsExactly(2.5, 5.0, 1.0);
        assertThat(Nursery.get("/api/sensors/" + code("a")).getList("levels", Double.class))
                .containsExactly(10.0, 20.0, 30.0, 40.0, 50.0);
    }

    private Map<String, Object> moisture(Instant at, double percent) {
        return with(reading("medium-moisture", at, percent), Map.of("unit", "%", "sensor", code("a")));
    }

    @Test
    void aMoistureProbeWithoutLevelsThatGoOneWayIsRefusedAndSoAreLevelsWithoutUse() {
        for (Map<String, ?> bad : List.<Map<String, ?>>of(
                Map.of(),
                Map.of("levels", List.of(10, 20, 30, 40)),
                Map.of("levels", List.of(10, 20, 20, 40, 50)),
                Map.of("levels", List.of(50, 40, 45, 20, 10)))) {
            sensor("a", "medium-moisture", "kPa", bad).statusCode(400).body("errors.field", hasItem("levels"));
        }
        sensor("a", "medium-moisture", "{level}", Map.of("levels", List.of(1, 2, 3, 4, 5)))
                .statusCode(400)
                .body("errors.field", hasItem("levels"));
        take(List.of(with(reading("medium-moisture", hour, 30), Map.of("unit", "%"))))
                .body("rejected[0].reason", containsString("%"));
    }
}
