package rootcast.app.learning;

import static io.restassured.RestAssured.given;

import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import rootcast.app.FinishedBatches;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** A crop whose profile says 7, 9 and 10 days, the batches that it may be learned from, and what is done with versions. */
abstract class GrownCrop {

    @Inject
    HandSetClock time;

    Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    /** Twelve batches that took 0.8 of the profile's days, give or take 10 %. */
    void growFaster() {
        for (int i = 0; i < 12; i++) {
            double pace = 0.8 * (1 + (i % 5 - 2) * 0.05);
            FinishedBatches.seen(nursery, 60 - i, 7 * pace, 9 * pace, 10 * pace);
        }
    }

    JsonPath learned() {
        return nursery.post("/api/crops/" + nursery.crop + "/learning", "")
                .statusCode(201)
                .extract()
                .jsonPath();
    }

    ValidatableResponse adopt(int version, Map<String, Object> body) {
        return nursery.post("/api/crops/" + nursery.crop + "/profiles/" + version + "/adoption", body);
    }

    ValidatableResponse put(Map<String, Object> body) {
        return given().contentType(ContentType.JSON)
                .body(body)
                .put("/api/crops/" + nursery.crop)
                .then();
    }

    static Map<String, Object> with(Map<String, Object> crop, Map<String, Object> profile) {
        Map<String, Object> body = new LinkedHashMap<>(crop);
        body.put("profile", profile);
        return body;
    }
}
