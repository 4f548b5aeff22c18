package rootcast.app.warnings;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import io.agroal.api.AgroalDataSource;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Warnings from readings to the log and to people, seen from outside. Limits are common practice (CP, no source). */
abstract class WarningsContract {

    @Inject
    HandSetClock time;

    @Inject
    TestChannel channel;

    @Inject
    SendWarnings sendWarnings;

    @Inject
    AgroalDataSource database;

    private Nursery nursery;
    private Instant hour;
    private String batch;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        hour = time.instant().truncatedTo(ChronoUnit.HOURS);
        batch = nursery.stuck(10, Duration.ofHours(48));
    }

    @AfterEach
    void nothingIsSent() {
        channel.turn(false);
        channel.refuse(false);
        channel.whileSending(() -> {});
    }

    @Test
    void aWarmMediumWarnsOfNothing() {
        medium(-40, 40, 22);

        assertThat(warnings().getList("$")).isEmpty();
    }

    /** Common practice: never below 20 °C; three cold hours raise it, counted from the first. */
    @Test
    void aColdMediumIsWarnedOfOnceWithItsNumbersAndBatches() {
        medium(-40, 36, 22);
        medium(-4, 4, 18.5);

        JsonPath first = warnings();
        assertThat(first.getList("kind")).containsExactly("medium-cold");
        assertThat(first.getString("[0].state")).isEqualTo("lasting");
        assertThat(first.getString("[0].house")).isEqualTo(nursery.house);
        assertThat(first.getString("[0].since"))
                .isEqualTo(hour.minus(Duration.ofHours(4)).toString());
        assertThat(first.getString("[0].raisedAt"))
                .isEqualTo(hour.minus(Duration.ofHours(1)).toString());
        assertThat(first.getString("[0].until")).isNull();
        assertThat(first.getDouble("[0].worst")).isEqualTo(18.5);
        assertThat(first.getDouble("[0].limit")).isEqualTo(20);
        assertThat(first.getString("[0].unit")).isEqualTo("Cel");
        assertThat(first.getList("[0].batches")).containsExactly(batch);
        assertThat(warnings().getList("id")).isEqualTo(first.getList("id"));
    }

    @Test
    void aWarningShowsTheHoursItRestsOn() {
        medium(-40, 36, 22);
        medium(-4, 4, 18.5);

        JsonPath seen = Nursery.get("/api/warnings/" + warnings().getString("[0].id") + "/evidence");

        assertThat(seen.getList("hours.value", Float.class)).startsWith(22f).endsWith(18.5f, 18.5f, 18.5f, 18.5f);
        assertThat(seen.getList("hours.limit", Float.class)).containsOnly(20f);
        assertThat(seen.getList("hours.at"))
                .hasSize(16)
                .endsWith(hour.minus(Duration.ofHours(1)).toString());
    }

    @Test
    void lateReadingsThatMoveItsStartMakeNoSecondWarning() {
        medium(-4, 4, 18.5);
        List<String> ids = warnings().getList("id");

        medium(-9, 5, 18);

        JsonPath after = warnings();
        assertThat(after.getList("id")).isEqualTo(ids);
        assertThat(after.getString("[0].since"))
                .isEqualTo(hour.minus(Duration.ofHours(9)).toString());
        assertThat(after.getDouble("[0].worst")).isEqualTo(18);
    }

    @Test
    void aFaultThatWasMendedEndsWhereTheGoodHoursBegan() {
        medium(-40, 10, 18.5);
        medium(-30, 30, 22);

        JsonPath found = warnings();

        assertThat(found.getList("kind")).containsExactly("medium-cold");
        assertThat(found.getString("[0].state")).isEqualTo("ended");
        assertThat(found.getString("[0].until"))
                .isEqualTo(hour.minus(Duration.ofHours(30)).toString());
    }

    @Test
    void twoSilentProbesAreTwoWarnings() {
        medium(-40, 35, 22);
        readings("air-temperature", -40, 34, 22);

        JsonPath found = warnings();

        assertThat(found.getList("kind")).containsExactly("no-readings", "no-readings");
        assertThat(found.getList("quantity")).containsExactlyInAnyOrder("medium-temperature", "air-temperature");
    }

    @Test
    void theHouseAndTheTimeSpanNarrowTheLog() {
        medium(-4, 4, 18.5);

        assertThat(Nursery.get("/api/warnings?site=" + nursery.site + "&house=" + nursery.otherHouse)
                        .getList("$"))
                .isEmpty();
        assertThat(Nursery.get("/api/warnings?house=" + nursery.house).getList("$"))
                .hasSize(1);
        Instant before = hour.minus(Duration.ofHours(10));
        assertThat(Nursery.get("/api/warnings?house=" + nursery.house + "&from=" + before.minusSeconds(60) + "&to="
                                + before)
                        .getList("$"))
                .isEmpty();
        given().get("/api/warnings?site=nowhere").then().statusCode(404);
        given().get("/api/warnings?from=yesterday").then().statusCode(400);
    }

    @Test
    void anAcknowledgedWarningSaysWhoAndGoesOn() {
        medium(-4, 4, 18.5);
        String id = warnings().getString("[0].id");

        nursery.post("/api/warnings/" + id + "/acknowledgement", Map.of("text", "boiler man called"))
                .statusCode(200)
                .body("state", equalTo("acknowledged"))
                .body("acknowledgement", equalTo("boiler man called"));
        nursery.post("/api/warnings/" + id + "/acknowledgement", Map.of("text", "me too"))
                .statusCode(200)
                .body("acknowledgement", equalTo("boiler man called"));

        assertThat(warnings().getString("[0].until")).isNull();
        nursery.post("/api/warnings/" + UUID.randomUUID() + "/acknowledgement", Map.of())
                .statusCode(404);
    }

    @Test
    void whatNobodyTookIsSentAgainLaterAndThenNoMore() {
        channel.turn(true);
        channel.refuse(true);
        medium(-4, 4, 18.5);
        warnings();

        sendWarnings.sendPending();
        assertThat(channel.of(nursery.house)).isEmpty();
        JsonPath pending = warnings();
        assertThat(pending.getInt("[0].deliveries[0].attempts")).isEqualTo(1);
        assertThat(pending.getString("[0].deliveries[0].lastError")).isEqualTo("not today");
        channel.refuse(false);
        sendWarnings.sendPending();
        assertThat(channel.of(nursery.house)).as("not before a pause").isEmpty();

        time.moveOn(Duration.ofMinutes(1));
        sendWarnings.sendPending();
        sendWarnings.sendPending();

        assertThat(channel.of(nursery.house)).hasSize(1);
        assertThat(warnings().getString("[0].deliveries[0].deliveredAt"))
                .isEqualTo(time.instant().toString());
    }

    /** Two nodes look at the same table: while the first is still sending, the second finds nothing to send. */
    @Test
    void whatOneNodeIsSendingNoOtherSends() {
        channel.turn(true);
        medium(-4, 4, 18.5);
        warnings();
        channel.whileSending(sendWarnings::sendPending);

        sendWarnings.sendPending();

        assertThat(channel.of(nursery.house)).hasSize(1);
        assertThat(warnings().getInt("[0].deliveries[0].attempts")).isEqualTo(1);
    }

    @Test
    void whatANodeClaimedAndNeverSentIsSentByAnotherOnceTheClaimHasRunOut() throws SQLException {
        channel.turn(true);
        medium(-4, 4, 18.5);
        String id = warnings().getString("[0].id");
        var tables = new Tables(database);
        tables.execute("update warning_delivery set claimed_by = 'a node that died',"
                + " claimed_until = current_timestamp + interval '1' hour where warning = '" + id + "'");
        sendWarnings.sendPending();
        assertThat(channel.of(nursery.house)).isEmpty();

        tables.execute("update warning_delivery set claimed_until = current_timestamp - interval '1' second"
                + " where warning = '" + id + "'");
        sendWarnings.sendPending();

        assertThat(channel.of(nursery.house)).hasSize(1);
    }

    @Test
    void whatWasOverBeforeItWasFoundIsSentToNobody() {
        channel.turn(true);
        medium(-40, 10, 18.5);
        medium(-30, 30, 22);

        assertThat(warnings().getList("[0].deliveries")).isEmpty();
    }

    private void medium(int fromHour, int hours, double celsius) {
        readings("medium-temperature", fromHour, hours, celsius);
    }

    private void readings(String quantity, int fromHour, int hours, double celsius) {
        List<Map<String, Object>> readings = new ArrayList<>();
        for (int each = 0; each < hours; each++) {
            readings.add(Map.of(
                    "house",
                    nursery.house,
                    "quantity",
                    quantity,
                    "value",
                    celsius,
                    "unit",
                    "Cel",
                    "at",
                    hour.plus(Duration.ofHours(fromHour + each))
                            .plusSeconds(600)
                            .toString()));
        }
        given().contentType(ContentType.JSON)
                .body(readings)
                .post("/api/readings")
                .then()
                .statusCode(200)
                .body("accepted", equalTo(hours));
    }

    private JsonPath warnings() {
        return Nursery.get("/api/warnings?site=" + nursery.site);
    }
}
