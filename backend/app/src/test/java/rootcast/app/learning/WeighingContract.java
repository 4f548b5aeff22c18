package rootcast.app.learning;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.restassured.path.json.JsonPath;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.app.FinishedBatches;
import rootcast.app.Nursery;

/** What adopting a version would change today, and how well it would have foretold the past. */
abstract class WeighingContract extends GrownCrop {

    private JsonPath weighed(int version) {
        return Nursery.get("/api/crops/" + nursery.crop + "/profiles/" + version + "/weighed");
    }

    /** Stuck two days ago, it is ready 26 days after sticking by the profile and 20.8 by what the twelve took. */
    @Test
    void beforeAdoptingItSaysWhatWouldMoveToday() {
        growFaster();
        String batch = nursery.stuck(2, Duration.ofDays(2));
        learned();

        JsonPath weighed = weighed(2);

        assertThat(weighed.getInt("version")).isEqualTo(2);
        assertThat(weighed.getInt("inForce")).isEqualTo(1);
        String mine = "today.batches.find { it.id == '" + batch + "' }";
        Instant before = Instant.parse(weighed.getString(mine + ".before.readyAt.p50"));
        Instant after = Instant.parse(weighed.getString(mine + ".after.readyAt.p50"));
        assertThat(Duration.between(after, before).toHours() / 24.0).isCloseTo(5.2, within(0.8));
        assertThat(Nursery.batch(batch).getString("outlook.readyAt.p50"))
                .as("nothing moved")
                .isEqualTo(before.toString());

        adopt(2, Map.of()).statusCode(200);
        assertThat(Nursery.batch(batch).getString("outlook.readyAt.p50"))
                .as("as was said")
                .isEqualTo(after.toString());
    }

    /** A version with twice the days leaves a promise without its trays; returning to the first rescues it. */
    @Test
    void itNamesThePromisesThatWouldBreakOrBeRescued() {
        nursery.stuck(4, Duration.ofDays(20));
        LocalDate shipOn = nursery.nextMonday().plusWeeks(2);
        nursery.order(shipOn, 2).statusCode(201);
        put(Nursery.cropBody(nursery.crop, 40)).statusCode(200);

        JsonPath back = weighed(1);

        assertThat(back.getList("today.promises")).hasSize(1);
        assertThat(back.getInt("today.promises[0].shortBefore")).isEqualTo(2);
        assertThat(back.getInt("today.promises[0].shortAfter")).isZero();
        assertThat(back.getString("today.promises[0].shipOn")).isEqualTo(shipOn.toString());
        adopt(1, Map.of()).statusCode(200);
        JsonPath on = weighed(2);
        assertThat(on.getInt("today.promises[0].shortBefore")).isZero();
        assertThat(on.getInt("today.promises[0].shortAfter")).isEqualTo(2);
    }

    /**
     * 14 days before it was ready, a batch of 20.8 days had 1.2 of its second stage behind it: by the profile's 9 and 10 days
     * 17.8 were left, 3.8 too many, or less as far as its quick first stage told of its pace. Each of the twelve is foretold
     * by what the others taught, give or take their 10 %.
     */
    @Test
    void pastBatchesAreForetoldWithoutTheVersionKnowingThem() {
        growFaster();
        learned();

        JsonPath past = weighed(2);

        assertThat(past.getBoolean("past.heldOut")).isTrue();
        assertThat(past.getInt("past.batches")).isEqualTo(12);
        String fortnight = "past.leads.find { it.leadDays == 14 }.";
        assertThat(past.getInt(fortnight + "n")).isEqualTo(12);
        assertThat(past.getDouble(fortnight + "inForceMaeDays")).isBetween(2.0, 3.8);
        assertThat(past.getDouble(fortnight + "versionMaeDays")).isBetween(0.01, 1.5);
        assertThat(past.getDouble(fortnight + "inForceBiasDays")).isNegative();
    }

    /** What was learned of one batch alone is nothing without it: that batch is foretold as by the profile in force. */
    @Test
    void theOnlyBatchIsForetoldAsIfNothingHadBeenLearned() {
        FinishedBatches.seen(nursery, 60, 0.6 * 7, 0.6 * 9, 0.6 * 10);
        learned();

        JsonPath past = weighed(2);

        assertThat(past.getBoolean("past.heldOut")).isTrue();
        assertThat(past.getList("past.leads")).isNotEmpty();
        assertThat(past.getList("past.leads.versionMaeDays")).isEqualTo(past.getList("past.leads.inForceMaeDays"));
    }

    /** The last stage twice as long: 14 days before, at least six days more are too many. */
    @Test
    void aVersionThatSomebodyEnteredIsTriedAsItIs() {
        growFaster();
        Map<String, Object> crop = Nursery.cropBody(nursery.crop);
        @SuppressWarnings("unchecked")
        Map<String, Object> profile = new LinkedHashMap<>((Map<String, Object>) crop.get("profile"));
        profile.put(
                "stages", List.of(Nursery.stage("STICK", 7), Nursery.stage("CALLUS", 9), Nursery.stage("ROOT", 20)));
        put(with(crop, profile)).statusCode(200);

        JsonPath first = weighed(1);

        assertThat(first.getInt("inForce")).isEqualTo(2);
        assertThat(first.getBoolean("past.heldOut")).isFalse();
        String fortnight = "past.leads.find { it.leadDays == 14 }.";
        assertThat(first.getDouble(fortnight + "inForceMaeDays") - first.getDouble(fortnight + "versionMaeDays"))
                .isGreaterThan(6);
    }

    @Test
    void withoutAFinishedBatchThereIsNothingToForetell() {
        learned();

        JsonPath weighed = weighed(2);

        assertThat(weighed.getInt("past.batches")).isZero();
        assertThat(weighed.getList("past.leads")).isEmpty();
        given().get("/api/crops/" + nursery.crop + "/profiles/9/weighed").then().statusCode(404);
        given().get("/api/crops/nobody/profiles/1/weighed").then().statusCode(404);
    }
}
