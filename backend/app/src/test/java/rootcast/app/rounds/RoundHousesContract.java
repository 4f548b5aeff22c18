package rootcast.app.rounds;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.app.Nursery;

/** What rounds say of houses: which are closed, who is to leave one and where to. */
abstract class RoundHousesContract extends OnRounds {

    @Test
    void aTreatedHouseBlocksItsRoundUntilItMayBeEntered() {
        nursery.stuck(10, Duration.ofDays(2));
        String item = item("moisture-check");
        nursery.post("/api/treatments", treatment(12)).statusCode(201);

        JsonPath blocked = round();
        assertThat(blocked.getList("findAll { it.state != 'done' }.state")).containsOnly("blocked");
        assertThat(blocked.getList("blockedUntil"))
                .containsOnly(nursery.now().plus(Duration.ofHours(11)).toString());
        done(item, Map.of("level", 4)).statusCode(409).body("type", equalTo("/problems/house-closed"));
        assertThat(Nursery.get("/api/rounds/houses?site=" + nursery.site)
                        .getString("find { it.house == '" + nursery.house + "' }.blockedUntil"))
                .isEqualTo(nursery.now().plus(Duration.ofHours(11)).toString());

        Map<String, Object> before =
                Map.of("happenedAt", nursery.now().minus(Duration.ofHours(2)).toString(), "level", 4);
        post(item, "done", before).statusCode(200);
    }

    @Test
    void noBatchIsCarriedIntoAHouseThatIsClosed() {
        String rooted = nursery.stuck(3, Duration.ofDays(20));
        nursery.enter(rooted, nursery.entry("stage", Map.of("stage", "ROOT"))).statusCode(201);
        nursery.stuck(10, Duration.ofDays(1));
        String item = item("move");
        assertThat(round().getList("find { it.id == '" + item + "' }.fits")).containsExactly(nursery.otherHouse);
        Map<String, Object> other = new HashMap<>(treatment(12));
        other.put("house", nursery.otherHouse);
        nursery.post("/api/treatments", other).statusCode(201);

        assertThat(round().getList("findAll { it.task == 'move' }"))
                .as("it would lead there")
                .isEmpty();
        String move = "find { it.house == '" + nursery.house + "' }.clashes[0].move[0]";
        JsonPath houses = Nursery.get("/api/rounds/houses?site=" + nursery.site);
        assertThat(houses.getList(move + ".fits")).isEmpty();
        assertThat(houses.getList(move + ".later.house")).containsExactly(nursery.otherHouse);
        assertThat(houses.getString(move + ".later[0].product")).isEqualTo(other.get("product"));
        assertThat(houses.getString(move + ".later[0].until"))
                .isEqualTo(nursery.now().plus(Duration.ofHours(11)).toString());
        assertThat(houses.getString(move + ".nearest")).isNull();
    }

    @Test
    void aRootedBatchIsAskedForWhereItsHouseSendsThemUntilItWasCarriedThere() {
        String batch = nursery.stuck(3, Duration.ofDays(20));
        given().contentType(ContentType.JSON)
                .body(Map.of(
                        "code",
                        nursery.house,
                        "site",
                        nursery.site,
                        "name",
                        "Rooting",
                        "mediumSetpointC",
                        22,
                        "next",
                        Map.of("house", nursery.otherHouse, "onceReached", "ROOT")))
                .put("/api/houses/" + nursery.house)
                .then()
                .statusCode(200);
        assertThat(round().getList("task")).doesNotContain("move");
        nursery.enter(batch, nursery.entry("stage", Map.of("stage", "ROOT"))).statusCode(201);

        String item = item("move");
        String asked = "find { it.id == '" + item + "' }.";
        assertThat(round().getString(asked + "state")).isEqualTo("due");
        assertThat(round().getString(asked + "why.code")).isEqualTo("usual-move");
        assertThat(round().getString(asked + "why.values.house")).isEqualTo(nursery.otherHouse);
        assertThat(round().getList(asked + "fits")).containsExactly(nursery.otherHouse);

        Map<String, Object> other = new HashMap<>(treatment(12));
        other.put("house", nursery.otherHouse);
        String treated =
                nursery.post("/api/treatments", other).statusCode(201).extract().path("id");
        assertThat(round().getList("task")).as("closed").doesNotContain("move");
        nursery.post("/api/treatments/" + treated + "/reversal", Map.of("reason", "not sprayed"));

        done(item, Map.of("house", nursery.otherHouse)).statusCode(200);
        assertThat(Nursery.batch(batch).getString("house")).isEqualTo(nursery.otherHouse);
        assertThat(round().getList("findAll { it.state == 'due' }.task")).doesNotContain("move");
    }

    @Test
    void batchesThatClashAreNamedWithTheOneToMoveAndWhereItFits() {
        String rooted = nursery.stuck(3, Duration.ofDays(20));
        nursery.enter(rooted, nursery.entry("stage", Map.of("stage", "ROOT"))).statusCode(201);
        String fresh = nursery.stuck(10, Duration.ofDays(1));

        JsonPath house = Nursery.get("/api/rounds/houses?site=" + nursery.site);
        String clash = "find { it.house == '" + nursery.house + "' }.clashes[0]";
        assertThat(house.getString(clash + ".quantity")).isEqualTo("mist");
        assertThat(house.getList(clash + ".mist")).containsExactly("RUNNING");
        assertThat(house.getList(clash + ".stay")).containsExactly(fresh);
        assertThat(house.getList(clash + ".move.batch")).containsExactly(rooted);
        assertThat(house.getList(clash + ".move[0].fits")).containsExactly(nursery.otherHouse);

        done(item("move"), Map.of("house", nursery.otherHouse)).statusCode(200);

        assertThat(Nursery.batch(rooted).getString("house")).isEqualTo(nursery.otherHouse);
        assertThat(Nursery.get("/api/rounds/houses?site=" + nursery.site).getList("clashes.flatten()"))
                .isEmpty();
    }

    @Test
    void aDoneTreatmentForPreventionSettlesPrevention() {
        nursery.stuck(10, Duration.ofDays(2));
        assertThat(round().getList("task")).contains("prevention");

        nursery.post("/api/treatments", treatment(0)).statusCode(201);

        assertThat(round().getList("task")).doesNotContain("prevention");
    }

    private Map<String, Object> treatment(double reentryHours) {
        return Map.of(
                "house",
                nursery.house,
                "purpose",
                "prevention",
                "product",
                "as on the record sheet",
                "rate",
                "as on the label",
                "appliedBy",
                "K.",
                "appliedAt",
                nursery.now().minus(Duration.ofHours(1)).toString(),
                "reentryHours",
                reentryHours);
    }
}
