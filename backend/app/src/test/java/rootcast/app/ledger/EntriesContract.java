package rootcast.app.ledger;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.notNullValue;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** Sticking batches and writing down what happens to them, seen from outside. Figures are worked by hand. */
abstract class EntriesContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    @Test
    void aBatchHoldsEveryCellOfItsTraysUnlessToldOtherwise() {
        nursery.post("/api/batches", nursery.stickBody(3, Duration.ofDays(1)))
                .statusCode(201)
                .body("id", notNullValue())
                .body("position", notNullValue())
                .body("site", equalTo(nursery.site))
                .body("house", equalTo(nursery.house))
                .body("variety", equalTo(nursery.variety))
                .body("trayFormat", equalTo(nursery.trayFormat))
                .body("trays", equalTo(3))
                .body("plants", equalTo(300));

        nursery.post("/api/batches", nursery.stickWith("plants", 87))
                .statusCode(201)
                .body("plants", equalTo(87));
    }

    @Test
    void aStuckBatchStandsAtStickWithAnOutlook() {
        JsonPath batch = Nursery.batch(nursery.stuck(2, Duration.ofDays(1)));

        assertThat(batch.getString("stage")).isEqualTo("STICK");
        assertThat(batch.getInt("trays")).isEqualTo(2);
        assertThat(batch.getMap("plants")).isEqualTo(Map.of("stuck", 200, "alive", 200, "lost", 0, "shipped", 0));
        assertThat(batch.getMap("lostByCause")).isEmpty();
        for (String date : List.of("callusedAt", "rootedAt", "readyAt")) {
            Instant p10 = Instant.parse(batch.getString("outlook." + date + ".p10"));
            Instant p50 = Instant.parse(batch.getString("outlook." + date + ".p50"));
            Instant p90 = Instant.parse(batch.getString("outlook." + date + ".p90"));
            assertThat(p10).isBefore(p50);
            assertThat(p50).isBefore(p90);
        }
    }

    @Test
    void aLossIsBookedUnderItsCause() {
        String batch = nursery.stuck(2, Duration.ofDays(5));

        nursery.enter(batch, "loss", Map.of("plants", 7, "cause", "rot", "note", "wet corner"))
                .statusCode(201)
                .body("id", notNullValue())
                .body("kind", equalTo("loss"))
                .body("alive", equalTo(193))
                .body("trays", equalTo(2));
        nursery.enter(batch, "loss", Map.of("plants", 3, "cause", "damping-off"))
                .statusCode(201);

        JsonPath after = Nursery.batch(batch);
        assertThat(after.getMap("plants")).isEqualTo(Map.of("stuck", 200, "alive", 190, "lost", 10, "shipped", 0));
        assertThat(after.getMap("lostByCause")).isEqualTo(Map.of("rot", 7, "damping-off", 3));
    }

    @ParameterizedTest
    @ValueSource(strings = {"dry-down", "rot", "botrytis", "damping-off", "no-root", "pest", "damage", "other"})
    void everyCauseOfTheTradeIsTaken(String cause) {
        String batch = nursery.stuck(1, Duration.ofDays(5));

        nursery.enter(batch, "loss", Map.of("plants", 1, "cause", cause)).statusCode(201);

        assertThat(Nursery.batch(batch).getMap("lostByCause")).isEqualTo(Map.of(cause, 1));
    }

    @Test
    void aCountPostsTheDifferenceUnderItsOwnCause() {
        String batch = nursery.stuck(2, Duration.ofDays(5));
        nursery.enter(batch, "loss", Map.of("plants", 10, "cause", "pest")).statusCode(201);

        nursery.enter(batch, "count", Map.of("plants", 182)).statusCode(201).body("alive", equalTo(182));

        assertThat(Nursery.batch(batch).getMap("lostByCause")).isEqualTo(Map.of("pest", 10, "count-difference", 8));
        assertThat(Nursery.batch(batch).getInt("lastCount.alive")).isEqualTo(182);
    }

    @Test
    void aSampledCountStandsForTheRest() {
        // 5 blanks in 50 cells are a tenth; 200 places less a tenth are 180.
        String batch = nursery.stuck(2, Duration.ofDays(5));

        nursery.enter(batch, "count", Map.of("sampledTrays", 1, "sampledCells", 50, "blanks", 5))
                .statusCode(201)
                .body("alive", equalTo(180));

        assertThat(Nursery.batch(batch).getInt("lastCount.sampledCells")).isEqualTo(50);
    }

    @Test
    void stagesAreReachedInOrderAndMayBeSkipped() {
        String batch = nursery.stuck(1, Duration.ofDays(20));

        nursery.enter(batch, "stage", Map.of("stage", "CALLUS")).statusCode(201).body("stage", equalTo("CALLUS"));
        nursery.enter(batch, "stage", Map.of("stage", "READY")).statusCode(201).body("stage", equalTo("READY"));

        assertThat(Nursery.batch(batch).getString("stage")).isEqualTo("READY");
    }

    @Test
    void aMoveTakesTheWholeBatchAlong() {
        String batch = nursery.stuck(1, Duration.ofDays(5));

        nursery.enter(batch, "move", Map.of("house", nursery.otherHouse)).statusCode(201);

        assertThat(Nursery.batch(batch).getString("house")).isEqualTo(nursery.otherHouse);
        JsonPath entries = Nursery.entries(batch);
        assertThat(entries.getList("[1].postings.account")).containsExactlyInAnyOrder("alive", "alive");
        assertThat(entries.getList("[1].postings.house")).containsExactlyInAnyOrder(nursery.house, nursery.otherHouse);
    }

    @Test
    void shippedTraysTakeTheSaleCountWithThemUnlessToldOtherwise() {
        String batch = nursery.stuck(4, Duration.ofDays(30));
        nursery.enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);

        nursery.enter(batch, "ship", Map.of("trays", 1)).statusCode(201).body("alive", equalTo(310));
        nursery.enter(batch, "ship", Map.of("trays", 2, "plants", 200))
                .statusCode(201)
                .body("alive", equalTo(110));

        JsonPath after = Nursery.batch(batch);
        assertThat(after.getMap("plants")).isEqualTo(Map.of("stuck", 400, "alive", 110, "lost", 0, "shipped", 290));
        assertThat(after.getInt("traysStuck")).isEqualTo(4);
    }

    @Test
    void aReversalPutsTheBooksBackAndKeepsBothEntries() {
        String batch = nursery.stuck(1, Duration.ofDays(5));
        String loss = nursery.enter(batch, "loss", Map.of("plants", 40, "cause", "rot"))
                .statusCode(201)
                .extract()
                .path("id");

        String reversal = nursery.enter(batch, "reversal", Map.of("entry", loss, "reason", "other batch"))
                .statusCode(201)
                .body("alive", equalTo(100))
                .extract()
                .path("id");

        JsonPath entries = Nursery.entries(batch);
        assertThat(entries.getList("kind")).containsExactly("stick", "loss", "reversal");
        assertThat(entries.getString("[1].reversedBy")).isEqualTo(reversal);
        assertThat(entries.getString("[2].reverses")).isEqualTo(loss);
        assertThat(entries.getString("[2].reason")).isEqualTo("other batch");
        assertThat(Nursery.batch(batch).getMap("plants"))
                .isEqualTo(Map.of("stuck", 100, "alive", 100, "lost", 0, "shipped", 0));
    }

    @Test
    void aBatchStuckByMistakeIsUndoneAndNoLongerThere() {
        String batch = nursery.stuck(1, Duration.ofDays(5));
        String stick = Nursery.entries(batch).getString("[0].id");

        nursery.enter(batch, "reversal", Map.of("entry", stick, "reason", "typed twice"))
                .statusCode(201)
                .body("alive", equalTo(0));

        given().get("/api/batches/" + batch).then().statusCode(404);
        given().get("/api/batches?state=all&site=" + nursery.site)
                .then()
                .statusCode(200)
                .body("batches", hasSize(0))
                .body("faulty", hasSize(0));
        assertThat(Nursery.entries(batch).getList("kind")).containsExactly("stick", "reversal");
    }

    @Test
    void whatIsHardlyLikelyIsAskedAboutOnceAndWrittenWhenConfirmed() {
        String batch = nursery.stuck(2, Duration.ofDays(5));
        Nursery.batch(batch); // whoever counts has it on the screen: profile and house are in the snapshot
        Map<String, Object> seen = Map.of("plants", 16);

        nursery.enter(batch, "count", with(seen, false))
                .statusCode(409)
                .body("type", equalTo("/problems/implausible-plants"))
                .body("asked", equalTo(16))
                .body("booked", equalTo(200))
                .body("probability", lessThan(0.01f));
        assertThat(Nursery.batch(batch).getInt("plants.alive")).isEqualTo(200);
        nursery.enter(batch, "loss", with(Map.of("plants", 120, "cause", "rot"), false))
                .statusCode(409);
        nursery.enter(batch, "stage", with(Map.of("stage", "READY"), false))
                .statusCode(409)
                .body("type", equalTo("/problems/implausible-stage"))
                .body("expected", notNullValue());

        nursery.enter(batch, "count", with(seen, true)).statusCode(201).body("alive", equalTo(16));
        assertThat(Nursery.entries(batch).getList("kind")).containsExactly("stick", "count");
    }

    private static Map<String, Object> with(Map<String, Object> entry, boolean confirmed) {
        Map<String, Object> all = new HashMap<>(entry);
        all.put("confirmed", confirmed);
        return all;
    }

    @Test
    void aLossEnteredLateForAMomentBeforeACountLeavesTheCountAsItWas() {
        // Counted 90 of 100; of the ten missing, five turn out to have been thrown out before.
        String batch = nursery.stuck(1, Duration.ofDays(10));
        Instant counted = time.instant().minus(Duration.ofDays(2));
        nursery.enter(batch, Nursery.entry("count", counted, Map.of("plants", 90)))
                .statusCode(201);

        nursery.enter(
                        batch,
                        Nursery.entry(
                                "loss", counted.minus(Duration.ofDays(1)), Map.of("plants", 5, "cause", "botrytis")))
                .statusCode(201)
                .body("alive", equalTo(90));

        assertThat(Nursery.batch(batch).getMap("lostByCause")).isEqualTo(Map.of("botrytis", 5, "count-difference", 5));
        assertThat(Nursery.entries(batch).getList("kind")).containsExactly("stick", "loss", "count");
    }

    @Test
    void thePostingsOfEveryEntrySumToZeroPlants() {
        String batch = nursery.stuck(3, Duration.ofDays(30));
        String loss = nursery.enter(batch, "loss", Map.of("plants", 9, "cause", "rot"))
                .extract()
                .path("id");
        nursery.enter(batch, "count", Map.of("plants", 280)).statusCode(201);
        nursery.enter(batch, "move", Map.of("house", nursery.otherHouse)).statusCode(201);
        nursery.enter(batch, "stage", Map.of("stage", "ROOT")).statusCode(201);
        nursery.enter(batch, "ship", Map.of("trays", 1, "plants", 95)).statusCode(201);
        nursery.enter(batch, "reversal", Map.of("entry", loss, "reason", "wrong batch"))
                .statusCode(201);

        List<Map<String, Object>> entries = Nursery.entries(batch).getList("$");
        assertThat(entries).hasSize(7);
        Map<String, Integer> balance = new HashMap<>();
        for (Map<String, Object> entry : entries) {
            int sum = 0;
            for (Map<?, ?> posting : (List<Map<?, ?>>) (List<?>) entry.get("postings")) {
                sum += (Integer) posting.get("plants");
                balance.merge((String) posting.get("account"), (Integer) posting.get("plants"), Integer::sum);
            }
            assertThat(sum).as("%s", entry).isZero();
        }
        // Stuck 300, counted 280, 95 left: 185 alive.
        assertThat(balance).isEqualTo(Map.of("supplier", -300, "alive", 185, "lost", 20, "shipped", 95));
    }

    @Test
    void batchesAreListedByWhatIsAskedFor() {
        String stuck = nursery.stuck(1, Duration.ofDays(5));
        String finished = nursery.ready(1, 90);
        nursery.enter(finished, "ship", Map.of("trays", 1)).statusCode(201);

        assertThat(listed("")).containsExactly(stuck);
        assertThat(listed("&state=finished")).containsExactly(finished);
        assertThat(listed("&state=all")).containsExactlyInAnyOrder(stuck, finished);
        assertThat(listed("&stage=STICK")).containsExactly(stuck);
        assertThat(listed("&stage=ROOT")).isEmpty();
        assertThat(listed("&text=grey MORN")).containsExactly(stuck);
        assertThat(listed("&text=marigold")).isEmpty();
        assertThat(listed("&house=" + nursery.otherHouse)).isEmpty();
        assertThat(Nursery.batch(finished).getString("stage")).isEqualTo("SHIP");
        assertThat((Object) Nursery.batch(finished).get("outlook")).isNull();
        given().get("/api/batches?state=dead").then().statusCode(400);
        given().get("/api/batches?stage=BLOOM").then().statusCode(equalTo(404));
    }

    private List<String> listed(String more) {
        return Nursery.get("/api/batches?site=" + nursery.site + more).getList("batches.id");
    }
}
