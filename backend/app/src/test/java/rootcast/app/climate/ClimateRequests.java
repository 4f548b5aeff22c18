package rootcast.app.climate;

import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** Sensors, readings and what a house answers, as an outside program asks for them. */
abstract class ClimateRequests {

    @Inject
    HandSetClock time;

    Nursery nursery;
    Instant hour;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        hour = time.instant().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(5));
    }

    String code(String name) {
        return nursery.house + "-" + name;
    }

    ValidatableResponse sensor(String name, String quantity, String unit, Map<String, ?> more) {
        Map<String, Object> body =
                new HashMap<>(Map.of("code", code(name), "house", nursery.house, "quantity", quantity, "unit", unit));
        body.putAll(more);
        return nursery.post("/api/sensors", body);
    }

    ValidatableResponse say(String flag, String what, Map<String, ?> word) {
        return nursery.post("/api/flags/" + flag + "/" + what, word);
    }

    ValidatableResponse take(List<Map<String, Object>> readings) {
        return nursery.post("/api/readings", readings);
    }

    Map<String, Object> medium(Instant at, double value) {
        return reading("medium-temperature", at, value);
    }

    Map<String, Object> reading(String quantity, Instant at, double value) {
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

    static Map<String, Object> with(Map<String, Object> reading, Map<String, ?> fields) {
        Map<String, Object> changed = new HashMap<>(reading);
        changed.putAll(fields);
        return changed;
    }

    double meanOf(Instant hourStart) {
        return climate("medium-temperature", hourStart, 1).getDouble("hours[0].value");
    }

    JsonPath climate(String quantity, Instant from, int hours) {
        return Nursery.get(path(nursery.house, quantity, from, hours));
    }

    static String path(String house, String quantity, Instant from, int hours) {
        return "/api/houses/%s/climate?quantity=%s&from=%s&to=%s"
                .formatted(house, quantity, from, from.plus(Duration.ofHours(hours)));
    }
}
