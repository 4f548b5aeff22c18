package rootcast.app.rounds;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;

import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** The daily round, seen from outside. Rhythms are common practice (CP, no source). */
abstract class RoundsContract {

    @Inject
    HandSetClock time;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    @Test
    void aBatchStuckYesterdayHasItsFirstTasks() {
        String batch = nursery.stuck(10, Duration.ofDays(1));

        JsonPath round = round();

        assertThat(round.getList("findAll { it.state == 'due' }.task"))
                .containsExactlyInAnyOrder("scouting", "moisture-check", "prevention");
        assertThat(round.getList("findAll { it.state == 'carried-over' }.task"))
                .as("of the day of sticking")
                .containsExactlyInAnyOrder("arrival-check", "wetting-agent", "draught-look");
        assertThat(round.getString("find { it.task == 'scouting' }.batch")).isNull();
        assertThat(round.getString("find { it.task == 'scouting' }.house")).isEqualTo(nursery.house);
        assertThat(round.getString("find { it.task == 'moisture-check' }.batch"))
                .isEqualTo(batch);
        assertThat(round.getString("find { it.task == 'moisture-check' }.dueOn"))
                .isEqualTo(nursery.today().toString());
        assertThat(round.getString("find { it.task == 'prevention' }.varietyName"))
                .isEqualTo("Grey Morning");
    }

    @Test
    void whatWasNotDoneIsCarriedOver() {
        nursery.stuck(10, Duration.ofDays(4));

        JsonPath round = round();

        assertThat(round.getString("find { it.task == 'prevention' }.state")).isEqualTo("carried-over");
        assertThat(round.getString("find { it.task == 'prevention' }.dueOn"))
                .isEqualTo(nursery.today().minusDays(3).toString());
        assertThat(round.getString("find { it.task == 'wean-mist' }.state")).isEqualTo("due");
    }

    @Test
    void aLaterDayShowsWhatWillBeDueByThen() {
        nursery.stuck(10, Duration.ofDays(1));

        assertThat(round().getList("task")).doesNotContain("count");
        JsonPath later = Nursery.get(
                "/api/rounds?site=" + nursery.site + "&on=" + nursery.today().plusDays(6));
        assertThat(later.getList("task")).contains("count", "wean-mist");
    }

    @Test
    void doingALookEntersItAndAsksAgainTwoDaysLater() {
        String batch = nursery.stuck(10, Duration.ofDays(7));
        String item = item("look-callus");
        assertThat(item).isEqualTo("look-callus." + batch + ".1");

        done(item, Map.of("cells", 40, "reached", 10))
                .statusCode(200)
                .body("state", equalTo("done"))
                .body("entries", hasSize(1));

        JsonPath entries = Nursery.get("/api/batches/" + batch + "/entries");
        assertThat(entries.getList("kind")).containsExactly("stick", "look");
        assertThat(entries.getInt("[1].cells")).isEqualTo(40);
        assertThat(entries.getInt("[1].reached")).isEqualTo(10);
        assertThat(round().getString("find { it.id == '" + item + "' }.state")).isEqualTo("done");
        JsonPath inTwoDays = Nursery.get(
                "/api/rounds?site=" + nursery.site + "&on=" + nursery.today().plusDays(2));
        assertThat(inTwoDays.getList("id"))
                .contains("look-callus." + batch + ".2")
                .doesNotContain(item);
    }

    @Test
    void aLookThatSawTheStageEntersThatTooAndMistAndFeedFollow() {
        String batch = nursery.stuck(10, Duration.ofDays(7));

        done(item("look-callus"), Map.of("cells", 40, "reached", 39, "stageReached", true))
                .statusCode(200)
                .body("entries", hasSize(2));

        assertThat(Nursery.batch(batch).getString("stage")).isEqualTo("CALLUS");
        assertThat(round().getList("task"))
                .contains("night-mist-off", "feed-step")
                .doesNotContain("wean-mist");
    }

    @Test
    void undoReversesWhatWasEnteredAndTheItemIsDueAgain() {
        String batch = nursery.stuck(10, Duration.ofDays(7));
        String item = item("look-callus");
        done(item, Map.of("cells", 40, "reached", 39, "stageReached", true)).statusCode(200);

        post(item, "undo", Map.of("reason", "wrong bench")).statusCode(200);

        assertThat(Nursery.batch(batch).getString("stage")).isEqualTo("STICK");
        assertThat(item("look-callus")).isEqualTo(item);
        assertThat(Nursery.get("/api/batches/" + batch + "/entries").getList("kind"))
                .containsExactlyInAnyOrder("stick", "look", "stage", "reversal", "reversal");
        post(item, "undo", Map.of("reason", "again")).statusCode(404);
    }

    @Test
    void theSameKeyTwiceDoesItOnceAndAnotherKeyIsTold() {
        String batch = nursery.stuck(10, Duration.ofDays(7));
        String item = item("count");
        String path = "/api/rounds/" + item + "/done";
        Map<String, Object> body = Map.of("happenedAt", nursery.now().toString(), "plants", 990);
        String key = UUID.randomUUID().toString();

        String first =
                Nursery.send(key, path, body).then().statusCode(200).extract().asString();
        String again =
                Nursery.send(key, path, body).then().statusCode(200).extract().asString();
        assertThat(again).isEqualTo(first);
        Nursery.send(UUID.randomUUID().toString(), path, body)
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/already-closed"));

        assertThat(Nursery.get("/api/batches/" + batch + "/entries").getList("kind"))
                .containsExactly("stick", "count");
    }

    @Test
    void aSampledCountIsACountToo() {
        String batch = nursery.stuck(10, Duration.ofDays(7));

        done(item("count"), Map.of("sampledTrays", 2, "sampledCells", 100, "blanks", 4))
                .statusCode(200);

        assertThat(Nursery.batch(batch).getInt("lastCount.sampledCells")).isEqualTo(100);
    }

    @Test
    void trapCountsAndMoistureAreAskedForAndChecked() {
        nursery.stuck(10, Duration.ofDays(1));

        done(item("scouting"), Map.of()).statusCode(400).body("errors.field", hasItem("fungusGnats"));
        done(item("scouting"), Map.of("fungusGnats", -1, "shoreFlies", 0)).statusCode(422);
        done(item("scouting"), Map.of("fungusGnats", 3, "shoreFlies", 0, "level", 4))
                .statusCode(400)
                .body("errors.field", hasItem("level"));
        done(item("moisture-check"), Map.of("level", 6)).statusCode(422);
        done(item("scouting"), Map.of("fungusGnats", 3, "shoreFlies", 0)).statusCode(200);
        done(item("moisture-check"), Map.of("level", 4)).statusCode(200);
    }

    @Test
    void aClosedItemSaysWhatWasFoundByWhomAndWhen() {
        nursery.stuck(10, Duration.ofDays(7));
        String count = item("count");
        String scouting = item("scouting");
        String prevention = item("prevention");
        done(count, Map.of("plants", 990)).statusCode(200);
        done(scouting, Map.of("fungusGnats", 3, "shoreFlies", 0, "thrips", 7, "traps", 4))
                .statusCode(200);
        post(prevention, "skipped", Map.of("reason", "organic house")).statusCode(200);

        JsonPath round = round();
        String counted = "find { it.id == '" + count + "' }.";
        assertThat(round.getInt(counted + "alive")).isEqualTo(990);
        assertThat(round.getInt(counted + "answer.done.plants")).isEqualTo(990);
        assertThat(round.getString(counted + "answer.by")).isNotBlank();
        assertThat(round.getString(counted + "answer.at"))
                .isEqualTo(nursery.now().toString());
        String scouted = "find { it.id == '" + scouting + "' }.answer.done.";
        assertThat(round.getInt(scouted + "thrips")).isEqualTo(7);
        assertThat(round.getInt(scouted + "traps")).isEqualTo(4);
        assertThat(round.getString("find { it.id == '" + prevention + "' }.answer.reason"))
                .isEqualTo("organic house");
        assertThat(round.getString("find { it.task == 'moisture-check' }.answer"))
                .isNull();
    }

    @Test
    void aCountThatIsHardlyLikelyIsAskedAboutAndClosesNothingUntilConfirmed() {
        String batch = nursery.stuck(10, Duration.ofDays(7));
        String item = item("count");

        done(item, Map.of("plants", 99, "confirmed", false))
                .statusCode(409)
                .body("type", equalTo("/problems/implausible-plants"));
        assertThat(item("count")).isEqualTo(item);
        done(item, Map.of("plants", 99, "confirmed", true)).statusCode(200);
        assertThat(Nursery.batch(batch).getInt("plants.alive")).isEqualTo(99);
    }

    @Test
    void aRefusedEntryClosesNothing() {
        nursery.stuck(10, Duration.ofDays(7));
        String item = item("count");

        done(item, Map.of("plants", 5_000)).statusCode(422).body("type", equalTo("/problems/more-than-stuck"));

        assertThat(item("count")).isEqualTo(item);
    }

    @Test
    void aBoxIsCheckedWithWhatIsKnownOfIt() {
        nursery.stuck(10, Duration.ofHours(3));
        String item = item("arrival-check");

        done(item, Map.of()).statusCode(400).body("errors[0].field", equalTo("condition"));
        done(item, Map.of("condition", "sleepy")).statusCode(422).body("detail", containsString("wilted"));
        done(item, Map.of("condition", "wilted", "boxC", 90)).statusCode(422);
        done(item, Map.of("condition", "wilted", "boxC", 11.5, "standbyHours", 6))
                .statusCode(200);
        assertThat(round().getString("find { it.id == '" + item + "' }.state")).isEqualTo("done");
    }

    @Test
    void skippingNeedsAReason() {
        nursery.stuck(10, Duration.ofDays(2));
        String item = item("prevention");

        post(item, "skipped", Map.of("reason", " ")).statusCode(400);
        post(item, "skipped", Map.of("reason", "organic house")).statusCode(200).body("state", equalTo("skipped"));

        assertThat(round().getString("find { it.id == '" + item + "' }.state")).isEqualTo("skipped");
    }

    @Test
    void whatIsUnknownOrStillToComeIsRefused() {
        nursery.stuck(10, Duration.ofDays(2));
        given().get("/api/rounds").then().statusCode(400).body("errors[0].field", equalTo("site"));
        given().get("/api/rounds?site=nowhere").then().statusCode(404);
        given().get("/api/rounds?site=" + nursery.site + "&on=tomorrow").then().statusCode(400);
        done("look-callus.no-such-batch.1", Map.of("cells", 1, "reached", 0)).statusCode(404);
        done("dance." + nursery.house, Map.of()).statusCode(404);
        Map<String, Object> tomorrow = Map.of(
                "happenedAt", nursery.now().plus(Duration.ofDays(1)).toString(), "fungusGnats", 0, "shoreFlies", 0);
        post(item("scouting"), "done", tomorrow).statusCode(422).body("type", equalTo("/problems/in-the-future"));
    }

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
    void housesComeInTheOrderPeopleWalk() {
        nursery.stuck(10, Duration.ofDays(2));
        Map<String, Object> other = new HashMap<>(nursery.stickBody(5, Duration.ofDays(2)));
        other.put("house", nursery.otherHouse);
        nursery.post("/api/batches", other).statusCode(201);
        assertThat(round().<String>getList("house").get(0)).isEqualTo(nursery.house);

        walk(List.of(nursery.otherHouse, nursery.house))
                .statusCode(200)
                .body("house", equalTo(List.of(nursery.otherHouse, nursery.house)));

        List<String> houses = round().getList("house");
        assertThat(houses.get(0)).isEqualTo(nursery.otherHouse);
        assertThat(houses.get(houses.size() - 1)).isEqualTo(nursery.house);
        walk(List.of("elsewhere")).statusCode(422).body("detail", containsString("once"));
        walk(List.of(nursery.house, nursery.house)).statusCode(422);
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

    private JsonPath round() {
        return Nursery.get("/api/rounds?site=" + nursery.site);
    }

    /** Id of the only item of its kind. */
    private String item(String task) {
        List<String> ids = round().getList("findAll { it.task == '" + task + "' }.id");
        assertThat(ids).as(task).hasSize(1);
        return ids.get(0);
    }

    private ValidatableResponse done(String item, Map<String, ?> fields) {
        Map<String, Object> body = new HashMap<>(fields);
        body.put("happenedAt", nursery.now().toString());
        return post(item, "done", body);
    }

    private ValidatableResponse post(String item, String verb, Map<String, ?> body) {
        return nursery.post("/api/rounds/" + item + "/" + verb, body);
    }

    private ValidatableResponse walk(List<String> houses) {
        return given().contentType(ContentType.JSON)
                .body(Map.of("houses", houses))
                .put("/api/rounds/houses?site=" + nursery.site)
                .then();
    }
}
