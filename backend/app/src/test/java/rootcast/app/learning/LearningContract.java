package rootcast.app.learning;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;

import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import rootcast.app.Nursery;
import rootcast.app.Tables;
import rootcast.app.crop.store.Catalogue;

/** Learning a crop's profile, reviewing and adopting it, seen from outside. */
abstract class LearningContract extends GrownCrop {

    @Inject
    Catalogue catalogue;

    @Inject
    DataSource database;

    private List<Map<String, Object>> versions() {
        return Nursery.get("/api/crops/" + nursery.crop + "/profiles").getList("$");
    }

    private double daysInForce() {
        return Nursery.get("/api/crops/" + nursery.crop).getDouble("profile.stages[0].daysAtReference");
    }

    @Test
    void batchesThatWereFasterTeachFewerDays() {
        growFaster();

        JsonPath learned = learned();

        assertThat(learned.getInt("version")).isEqualTo(2);
        assertThat(learned.getInt("profile.version")).isEqualTo(2);
        for (int stage = 0; stage < 3; stage++) {
            String path = "evidence.stages[" + stage + "].";
            double truth = 0.8 * List.of(7, 9, 10).get(stage);
            assertThat(learned.getDouble(path + "daysLearned") / truth).isCloseTo(1, within(0.05));
            assertThat(learned.getDouble(path + "daysLow")).isLessThan(learned.getDouble(path + "daysLearned"));
            assertThat(learned.getDouble(path + "daysHigh")).isGreaterThan(learned.getDouble(path + "daysLearned"));
            assertThat(learned.getInt(path + "observations")).isEqualTo(12);
            assertThat(learned.getDouble("profile.stages[" + stage + "].daysAtReference"))
                    .isEqualTo(learned.getDouble(path + "daysLearned"));
        }
        assertThat(learned.getInt("evidence.finishedBatches")).isEqualTo(12);
        assertThat(learned.getList("evidence.cardinals.identified")).containsOnly(false);
        assertThat(learned.getString("evidence.cardinals[0].why.code")).isEqualTo("too-narrow");
        assertThat(learned.getInt("evidence.cardinals[0].why.values.batches")).isEqualTo(12);
        assertThat(learned.getString("evidence.varieties[0].variety")).isEqualTo(nursery.variety);
        assertThat(learned.getList("evidence.text")).isNotEmpty();
    }

    /** The same batches again are no news, however often the button is pressed. */
    @Test
    void learningAgainFromTheSameBatchesChangesNothing() {
        growFaster();
        JsonPath first = learned();
        adopt(2, Map.of()).statusCode(200);

        JsonPath second = learned();
        adopt(3, Map.of()).statusCode(200);
        JsonPath third = learned();

        for (String figure :
                List.of("stages", "rateSpread", "cellSpread", "roundsDays", "stageShare", "holdDays", "rates")) {
            Object once = first.get("profile." + figure);
            assertThat((Object) second.get("profile." + figure)).as(figure).isEqualTo(once);
            assertThat((Object) third.get("profile." + figure)).as(figure).isEqualTo(once);
        }
        assertThat(second.getDouble("evidence.stages[0].daysBefore"))
                .as("told against the profile in force")
                .isEqualTo(first.getDouble("evidence.stages[0].daysLearned"));
    }

    /** The hold is nobody's to learn; the spread that the form showed beside it had been learned, and is not a statement. */
    @Test
    void whatSomebodyEntersOverALearnedProfileIsTakenForWhatDiffers() {
        growFaster();
        double once = learned().getDouble("profile.rateSpread");
        adopt(2, Map.of()).statusCode(200);
        time.moveOn(Duration.ofHours(1));
        Map<String, Object> crop = Nursery.cropBody(nursery.crop);
        Map<String, Object> profile =
                new LinkedHashMap<>(Nursery.get("/api/crops/" + nursery.crop).getMap("profile"));
        profile.put("holdDays", 12);
        put(with(crop, profile)).statusCode(200).body("profile.version", equalTo(3));

        JsonPath again = learned();

        assertThat(again.getDouble("profile.rateSpread")).isEqualTo(once);
        assertThat(again.getInt("profile.holdDays")).isEqualTo(12);
    }

    @Test
    void aProposalChangesNothingUntilItIsAdopted() {
        growFaster();
        String batch = nursery.stuck(2, Duration.ofDays(1));
        String before = Nursery.batch(batch).getString("outlook.readyAt.p50");

        learned();
        assertThat(daysInForce()).isEqualTo(7);
        assertThat(Nursery.batch(batch).getString("outlook.readyAt.p50")).isEqualTo(before);

        adopt(2, Map.of())
                .statusCode(200)
                .body("version", equalTo(2))
                .body("origin", equalTo("learned"))
                .body("inForce", equalTo(true))
                .body("pinned", equalTo(false))
                .body("evidence.finishedBatches", equalTo(12));
        assertThat(daysInForce()).isCloseTo(5.6, within(0.3));
        Instant after = Instant.parse(Nursery.batch(batch).getString("outlook.readyAt.p50"));
        assertThat(Duration.between(after, Instant.parse(before)).toHours() / 24.0)
                .isCloseTo(5.2, within(0.8));
    }

    @Test
    void versionsAreListedNewestFirstWithWhatTheyRestOn() {
        learned();

        List<Map<String, Object>> versions = versions();

        assertThat(versions).extracting(version -> version.get("version")).containsExactly(2, 1);
        assertThat(versions.get(0)).containsEntry("origin", "learned").containsEntry("inForce", false);
        assertThat(versions.get(0).get("adoptedAt")).isNull();
        assertThat(versions.get(0).get("evidence")).isNotNull();
        assertThat(versions.get(1)).containsEntry("origin", "entered").containsEntry("inForce", true);
        assertThat(versions.get(1).get("adoptedAt")).isNotNull();
        assertThat(versions.get(1).get("evidence")).isNull();
    }

    @Test
    void withoutABatchTheProposalSaysWhatTheProfileSays() {
        JsonPath learned = learned();

        assertThat(learned.getList("profile.stages.daysAtReference", Double.class))
                .containsExactly(7.0, 9.0, 10.0);
        assertThat(learned.getInt("evidence.finishedBatches")).isZero();
    }

    @Test
    void aPinnedVersionStaysInForceUntilItIsAdoptedWithoutThePin() {
        learned();
        adopt(1, Map.of("pinned", true)).statusCode(200).body("pinned", equalTo(true));

        var tables = new Tables(database);
        var before = tables.everything();
        adopt(2, Map.of())
                .statusCode(409)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/profile-pinned"))
                .body("pinned", equalTo(1))
                .body("asked", equalTo(2));
        put(Nursery.cropBody(nursery.crop, 8)).statusCode(409).body("type", equalTo("/problems/profile-pinned"));
        assertThat(tables.everything()).isEqualTo(before);

        adopt(1, Map.of("pinned", false)).statusCode(200).body("pinned", equalTo(false));
        adopt(2, Map.of()).statusCode(200).body("inForce", equalTo(true));
    }

    @Test
    void anEarlierVersionCanBeReturnedTo() {
        put(Nursery.cropBody(nursery.crop, 8)).statusCode(200).body("profile.version", equalTo(2));

        adopt(1, Map.of()).statusCode(200);

        assertThat(daysInForce()).isEqualTo(7);
        assertThat(versions()).extracting(version -> version.get("inForce")).containsExactly(false, true);
    }

    @Test
    void aChangedProfileIsInForceAtOnceAndThePastKnowsWhatWasInForceThen() {
        Instant first = time.instant();
        time.moveOn(Duration.ofHours(2));
        put(Nursery.cropBody(nursery.crop, 8)).statusCode(200);
        Instant second = time.instant();
        time.moveOn(Duration.ofHours(2));
        adopt(1, Map.of()).statusCode(200);

        assertThat(versionAt(first.minus(Duration.ofDays(90)))).isEqualTo(1);
        assertThat(versionAt(first)).isEqualTo(1);
        assertThat(versionAt(second.minusMillis(1))).isEqualTo(1);
        assertThat(versionAt(second)).isEqualTo(2);
        assertThat(versionAt(time.instant().minusMillis(1))).isEqualTo(2);
        assertThat(versionAt(time.instant())).isEqualTo(1);
    }

    private int versionAt(Instant at) {
        return catalogue.profileInForce(nursery.crop, at).orElseThrow().version();
    }

    @Test
    void whatIsLearnedBesideTheStagesIsKeptAndStaysWhenItIsNotSent() {
        Map<String, Object> crop = Nursery.cropBody(nursery.crop, 8);
        @SuppressWarnings("unchecked")
        Map<String, Object> profile = new LinkedHashMap<>((Map<String, Object>) crop.get("profile"));
        profile.put("cellSpread", 0.2);
        profile.put("roundsDays", 4.5);
        profile.put("stageShare", 0.4);
        profile.put("cellsDiffer", 0.15);
        profile.put("daysDoubt", 0.06);
        profile.put("enteredShare", 0.8);
        profile.put("calledShare", 0.7);
        profile.put("rates", Map.of("varieties", Map.of(nursery.variety, 1.1), "sites", Map.of()));
        put(with(crop, profile)).statusCode(200).body("profile.cellSpread", equalTo(0.2f));

        Map<String, Object> stagesAlone = new LinkedHashMap<>(profile);
        stagesAlone.keySet().retainAll(List.of("stages", "rateSpread", "holdDays"));
        put(with(crop, stagesAlone)).statusCode(200);

        JsonPath now = Nursery.get("/api/crops/" + nursery.crop);
        assertThat(now.getDouble("profile.cellSpread")).isEqualTo(0.2);
        assertThat(now.getDouble("profile.roundsDays")).isEqualTo(4.5);
        assertThat(now.getDouble("profile.stageShare")).isEqualTo(0.4);
        assertThat(now.getDouble("profile.cellsDiffer")).isEqualTo(0.15);
        assertThat(now.getDouble("profile.calledShare")).isEqualTo(0.7);
        assertThat(now.getMap("profile.rates.varieties", String.class, Double.class))
                .isEqualTo(Map.of(nursery.variety, 1.1));
        profile.put("roundsDays", 40);
        put(with(crop, profile)).statusCode(422).body("errors.field", hasItem("profile.roundsDays"));
        profile.put("roundsDays", 4.5);
        profile.put("rates", Map.of("varieties", Map.of(nursery.variety, 9)));
        put(with(crop, profile)).statusCode(422).body("type", equalTo("/problems/not-allowed"));
    }

    @Test
    void askedTwiceWithOneKeyTheBatchesAreLearnedFromOnce() {
        String key = UUID.randomUUID().toString();
        String path = "/api/crops/" + nursery.crop + "/learning";
        String first = given().header("Idempotency-Key", key).post(path).asString();
        String second = given().header("Idempotency-Key", key).post(path).asString();

        assertThat(second).isEqualTo(first);
        assertThat(versions()).hasSize(2);
    }

    @Test
    void whatIsNotThereIsNotFound() {
        given().post("/api/crops/nobody/learning").then().statusCode(404);
        given().get("/api/crops/nobody/profiles").then().statusCode(404);
        nursery.post("/api/crops/nobody/profiles/1/adoption", Map.of()).statusCode(404);
        adopt(7, Map.of()).statusCode(404).body("type", equalTo("/problems/not-found"));
        adopt(1, Map.of("pined", true)).statusCode(400);
    }

    @Test
    void anAdoptionNeedsNoBody() {
        given().post("/api/crops/" + nursery.crop + "/profiles/1/adoption")
                .then()
                .statusCode(200)
                .body("evidence", nullValue());
    }
}
