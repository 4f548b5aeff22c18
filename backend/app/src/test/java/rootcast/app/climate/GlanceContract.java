package rootcast.app.climate;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.path.json.JsonPath;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.app.Nursery;

/** All houses in one answer: what each of them answers by itself, to the letter. */
abstract class GlanceContract extends ClimateRequests {

    private static final List<String> QUANTITIES =
            List.of("medium-temperature", "air-temperature", "vapour-pressure-deficit");

    @Test
    void saysOfEachHouseWhatTheHouseItselfSays() {
        for (String each : List.of("a", "b", "c")) {
            sensor(each, "medium-temperature", "Cel", Map.of()).statusCode(201);
        }
        List<Map<String, Object>> readings = new ArrayList<>(List.of(
                with(medium(hour, 21), Map.of("sensor", code("a"))),
                with(medium(hour, 22), Map.of("sensor", code("b"))),
                // stands alone among three, so that the newest good one is another
                with(medium(hour.plusSeconds(5), 35), Map.of("sensor", code("c"))),
                reading("air-temperature", hour, 20),
                reading("relative-humidity", hour, 80),
                with(reading("air-temperature", hour, 12), Map.of("house", nursery.otherHouse))));
        // silent for days, and its last reading a spike
        double[] old = {20, 20, 20, 20, 20, 28, 20, 20};
        for (int i = 0; i < old.length; i++) {
            readings.add(with(
                    medium(hour.minus(Duration.ofDays(4)).plusSeconds(60L * i), old[i]),
                    Map.of("house", nursery.otherHouse)));
        }
        take(readings).statusCode(200).body("accepted", equalTo(readings.size()));
        Instant until = hour.plus(Duration.ofHours(2));

        JsonPath all = Nursery.get("/api/climate?site=%s&quantities=%s&from=%s&to=%s"
                .formatted(nursery.site, String.join(",", QUANTITIES), hour, until));

        assertThat(all.getList("houses.house")).containsExactlyInAnyOrder(nursery.house, nursery.otherHouse);
        for (String house : List.of(nursery.house, nursery.otherHouse)) {
            String of = "houses.find { it.house == '" + house + "' }";
            List<Object> own = Nursery.get("/api/houses/" + house + "/now").getList("quantities");
            assertThat(own).isNotEmpty();
            assertThat(all.getList(of + ".quantities")).isEqualTo(own);
            for (String quantity : QUANTITIES) {
                assertThat(all.getList(of + ".series.find { it.quantity == '" + quantity + "' }.hours"))
                        .isEqualTo(Nursery.get(path(house, quantity, hour, 2)).getList("hours"));
            }
        }
        assertThat(all.getFloat("houses.find { it.house == '" + nursery.house
                        + "' }.quantities.find { it.quantity == 'medium-temperature' }.value"))
                .isIn(21f, 22f);
    }

    @Test
    void withoutQuantitiesThereAreNoHoursAndAnUnknownSiteIsNotFound() {
        take(List.of(medium(hour, 21))).statusCode(200);

        JsonPath all = Nursery.get("/api/climate?site=" + nursery.site);
        assertThat(all.getList("houses[0].series")).isEmpty();
        given().get("/api/climate?site=nowhere").then().statusCode(404).body("asked", equalTo("nowhere"));
        given().get("/api/climate?quantities=warmth").then().statusCode(400);
        given().get("/api/climate?from=2026-01-01T00:00:00Z&to=2026-02-01T00:00:00Z")
                .then()
                .statusCode(400);
    }
}
