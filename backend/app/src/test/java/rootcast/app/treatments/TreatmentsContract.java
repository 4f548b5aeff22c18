package rootcast.app.treatments;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** The record of treatments, seen from outside. Products and rates are whatever the label says: free text. */
abstract class TreatmentsContract {

    @Inject
    HandSetClock time;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    @Test
    void aTreatmentClosesTheHouseForItsReentryInterval() {
        Instant applied = nursery.now().minus(Duration.ofHours(3));

        String id = nursery.post("/api/treatments", body(applied, 4))
                .statusCode(201)
                .body("closed", equalTo(true))
                .body("reentryAt", equalTo(applied.plus(Duration.ofHours(4)).toString()))
                .body("rate", equalTo("two measures to the can"))
                .body("cautions", hasItem(containsString("label")))
                .extract()
                .path("id");

        assertThat(Nursery.get("/api/treatments?house=" + nursery.house).getList("id"))
                .containsExactly(id);
        assertThat(Nursery.get("/api/treatments?site=" + nursery.site).getList("id"))
                .containsExactly(id);
        assertThat(Nursery.get("/api/treatments?house=" + nursery.otherHouse).getList("id"))
                .isEmpty();
    }

    @Test
    void whoeverShowsAHouseIsToldUntilWhenAndByWhatItIsClosed() {
        Instant applied = nursery.now().minus(Duration.ofHours(3));
        String closedHouses = "/api/treatments/closed-houses?site=" + nursery.site;
        assertThat(Nursery.get(closedHouses).getList("$")).isEmpty();

        nursery.post("/api/treatments", body(applied.minus(Duration.ofHours(9)), 4))
                .statusCode(201);
        assertThat(Nursery.get(closedHouses).getList("$"))
                .as("its interval has passed")
                .isEmpty();
        nursery.post("/api/treatments", body(applied, 4)).statusCode(201);

        assertThat(Nursery.get(closedHouses).getList("house")).containsExactly(nursery.house);
        assertThat(Nursery.get(closedHouses).getString("[0].product")).isEqualTo("what the sheet says");
        assertThat(Nursery.get(closedHouses).getString("[0].until"))
                .isEqualTo(applied.plus(Duration.ofHours(4)).toString());
    }

    @Test
    void whatLocalRulesAskForIsKeptAndNothingOfItIsNeeded() {
        Map<String, Object> body = body(nursery.now(), 4);
        body.put("target", "thrips");
        body.put("totalUsed", "350 mL");
        body.put("areaM2", 120.5);
        body.put("registrationNumber", "R-1");
        body.put("licenceNumber", " ");
        body.put("weather", "calm, 19 °C");
        String id =
                nursery.post("/api/treatments", body).statusCode(201).extract().path("id");

        JsonPath kept = Nursery.get("/api/treatments/" + id);
        assertThat(kept.getString("target")).isEqualTo("thrips");
        assertThat(kept.getString("totalUsed")).isEqualTo("350 mL");
        assertThat(kept.getDouble("areaM2")).isEqualTo(120.5);
        assertThat(kept.getString("registrationNumber")).isEqualTo("R-1");
        assertThat(kept.getString("licenceNumber")).as("blank is not said").isNull();
        assertThat(kept.getString("weather")).isEqualTo("calm, 19 °C");
        body.put("areaM2", 0);
        nursery.post("/api/treatments", body).statusCode(422).body("errors[0].field", equalTo("areaM2"));
    }

    @Test
    void onceTheIntervalHasPassedItIsOnlyARecord() {
        nursery.post("/api/treatments", body(nursery.now().minus(Duration.ofHours(5)), 4.5))
                .statusCode(201)
                .body("closed", equalTo(false))
                .body("reentryHours", equalTo(4.5f));
    }

    @Test
    void aReversedOneClosesNothingAndStaysOnRecord() {
        String id = nursery.post("/api/treatments", body(nursery.now(), 12))
                .extract()
                .path("id");

        nursery.post("/api/treatments/" + id + "/reversal", Map.of("reason", "wrong house"))
                .statusCode(200)
                .body("closed", equalTo(false))
                .body("reversalReason", equalTo("wrong house"));

        nursery.post("/api/treatments/" + id + "/reversal", Map.of("reason", "again"))
                .statusCode(409);
        assertThat(Nursery.get("/api/treatments?house=" + nursery.house).getList("id"))
                .containsExactly(id);
        assertThat(Nursery.get("/api/rounds/houses?site=" + nursery.site).getList("blockedUntil"))
                .containsOnlyNulls();
        assertThat(Nursery.get("/api/treatments/closed-houses?site=" + nursery.site)
                        .getList("$"))
                .isEmpty();
    }

    @Test
    void oneBatchMayBeNamedIfItStandsOnTheSite() {
        String batch = nursery.stuck(4, Duration.ofDays(1));
        Map<String, Object> body = body(nursery.now(), 0);
        body.put("batch", batch);
        nursery.post("/api/treatments", body).statusCode(201).body("batch", equalTo(batch));

        String elsewhere = Nursery.opened(time).stuck(4, Duration.ofDays(1));
        body.put("batch", elsewhere);
        nursery.post("/api/treatments", body).statusCode(422).body("detail", containsString(nursery.site));
    }

    @Test
    void whatIsMissingOrCannotBeIsRefused() {
        Map<String, Object> body = body(nursery.now(), 4);
        body.remove("rate");
        nursery.post("/api/treatments", body).statusCode(400).body("errors[0].field", equalTo("rate"));
        nursery.post("/api/treatments", body(nursery.now().plusSeconds(60), 4))
                .statusCode(422)
                .body("type", equalTo("/problems/in-the-future"));
        nursery.post("/api/treatments", body(nursery.now(), -1)).statusCode(422);
        nursery.post("/api/treatments", body(nursery.now(), 1_000)).statusCode(422);
        Map<String, Object> elsewhere = body(nursery.now(), 4);
        elsewhere.put("house", "nowhere");
        nursery.post("/api/treatments", elsewhere).statusCode(422).body("type", equalTo("/problems/unknown-code"));
        Map<String, Object> odd = body(nursery.now(), 4);
        odd.put("purpose", "magic");
        nursery.post("/api/treatments", odd).statusCode(422).body("detail", containsString("growth-regulation"));
        given().get("/api/treatments/00000000-0000-4000-8000-000000000000")
                .then()
                .statusCode(404);
    }

    private Map<String, Object> body(Instant appliedAt, double reentryHours) {
        Map<String, Object> body = new HashMap<>();
        body.put("house", nursery.house);
        body.put("product", "what the sheet says");
        body.put("rate", "two measures to the can");
        body.put("appliedBy", "K.");
        body.put("appliedAt", appliedAt.toString());
        body.put("reentryHours", reentryHours);
        return body;
    }
}
