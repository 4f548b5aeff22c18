package rootcast.app.site;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/**
 * Where batches of a house go on to, from set-up to the dates.
 *
 * <p>By hand: at 22 °C the three stages take 7, 9 and 10 days. At 16 °C the beta function of 8, 27 and 36 °C is
 * (20/9) · (8/19)^(19/9) = 0.35787, at 22 °C (14/9) · (14/19)^(19/9) = 0.81639 (Yin et al. 1995), so the last stage takes
 * 10 · 0.81639 / 0.35787 = 22.813 days there.
 */
abstract class UsualMovesContract {

    private static final double ROOTED_DAYS = 16;
    private static final double LAST_STAGE_AT_16_C = 22.813;

    @Inject
    HandSetClock time;

    private Nursery nursery;
    private String batch;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        put(nursery.house, 22, null).statusCode(200);
        put(nursery.otherHouse, 16, null).statusCode(200);
        batch = nursery.stuck(10, Duration.ofDays(1));
    }

    private ValidatableResponse put(String house, double mediumC, @Nullable Object next) {
        Map<String, Object> body = new HashMap<>();
        body.put("code", house);
        body.put("site", nursery.site);
        body.put("name", "House " + house);
        body.put("mediumSetpointC", mediumC);
        body.put("next", next);
        return given().contentType(ContentType.JSON)
                .body(body)
                .put("/api/houses/" + house)
                .then();
    }

    private Map<String, String> toTheOther(String onceReached) {
        return Map.of("house", nursery.otherHouse, "onceReached", onceReached);
    }

    private static double daysUntilReady(JsonPath batch) {
        Instant ready = Instant.parse(batch.getString("outlook.readyAt.p50"));
        return Duration.between(Instant.parse(batch.getString("stuckAt")), ready)
                        .toSeconds()
                / 86_400.0;
    }

    @Test
    void theDatesCountOnAMoveThatIsStillToCome() {
        assertThat(daysUntilReady(Nursery.batch(batch))).isCloseTo(26, within(0.01));

        put(nursery.house, 22, toTheOther("ROOT")).statusCode(200).body("next.house", equalTo(nursery.otherHouse));

        JsonPath after = Nursery.batch(batch);
        assertThat(daysUntilReady(after)).isCloseTo(ROOTED_DAYS + LAST_STAGE_AT_16_C, within(0.01));
        assertThat(after.getList("outlook.moves.house")).containsExactly(nursery.otherHouse);
        assertThat(Duration.between(
                        Instant.parse(after.getString("stuckAt")),
                        Instant.parse(after.getString("outlook.moves[0].at"))))
                .isBetween(Duration.ofHours(16 * 24 - 1), Duration.ofHours(16 * 24 + 1));
    }

    /** One hour later the dates are those of a rebuild, and the boards of before are as they were. */
    @Test
    void lookingBackKnowsNothingOfWhatWasSaidLater() {
        Instant before = time.instant();
        time.moveOn(Duration.ofHours(2));
        put(nursery.house, 22, toTheOther("ROOT")).statusCode(200);

        assertThat(daysUntilReady(Nursery.get("/api/batches/" + batch + "?asOf=" + before)))
                .isCloseTo(26, within(0.01));
        assertThat(daysUntilReady(Nursery.get("/api/batches/" + batch + "?asOf=" + time.instant())))
                .isCloseTo(ROOTED_DAYS + LAST_STAGE_AT_16_C, within(0.01));
    }

    @Test
    void takingItBackBringsTheDatesBack() {
        put(nursery.house, 22, toTheOther("ROOT")).statusCode(200);
        put(nursery.house, 22, null).statusCode(200).body("next", nullValue());

        assertThat(daysUntilReady(Nursery.batch(batch))).isCloseTo(26, within(0.01));
        assertThat(Nursery.batch(batch).getList("outlook.moves")).isEmpty();
    }

    /** The readings of the house it will stand in move its dates too. */
    @Test
    void aSetPointOfTheNextHouseMovesTheDates() {
        put(nursery.house, 22, toTheOther("ROOT")).statusCode(200);
        put(nursery.otherHouse, 22, null).statusCode(200);

        assertThat(daysUntilReady(Nursery.batch(batch))).isCloseTo(26, within(0.01));
    }

    @Test
    void onlyAnotherHouseOfTheSiteWillDo() {
        Nursery elsewhere = Nursery.opened(time);

        put(nursery.house, 22, Map.of("house", nursery.house, "onceReached", "ROOT"))
                .statusCode(422)
                .body("errors.field", contains("next.house"))
                .body("errors.code", contains("other-than"));
        put(nursery.house, 22, Map.of("house", elsewhere.house, "onceReached", "ROOT"))
                .statusCode(422)
                .body("errors.code", contains("other-site"));
        put(nursery.house, 22, Map.of("house", "nowhere", "onceReached", "ROOT"))
                .statusCode(422)
                .body("errors.field", contains("next.house"));
        put(nursery.house, 22, toTheOther("READY")).statusCode(400);
        put(nursery.house, 22, Map.of("house", nursery.otherHouse)).statusCode(400);
    }
}
