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
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rootcast.app.Nursery;

/** The daily round, seen from outside. Rhythms are common practice (CP, no source). */
abstract class RoundsContract extends OnRounds {

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

    private ValidatableResponse walk(List<String> houses) {
        return given().contentType(ContentType.JSON)
                .body(Map.of("houses", houses))
                .put("/api/rounds/houses?site=" + nursery.site)
                .then();
    }
}
