package rootcast.app.live;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.common.http.TestHTTPResource;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.snapshot.Snapshots;

/** The projector stands still for half a minute: who writes does not notice, who reads is told, and all is caught up. */
abstract class ProjectorBehindContract {

    private static final int ENTRIES = 20;

    @Inject
    HandSetClock time;

    @Inject
    Snapshots snapshots;

    @TestHTTPResource
    URI base;

    @AfterEach
    void letGo() {
        HeldFeed.letGo();
    }

    @Test
    void entriesAndPromisesAreAnsweredAndScreensSayHowOldTheyAre() throws Exception {
        Nursery nursery = Nursery.opened(time);
        String batch = nursery.ready(10, 1_000);
        String view = "?weeks=4&from=" + Nursery.week(nursery.nextMonday());
        long before = Nursery.get("/api/about").getLong("position");
        Instant stopped = time.instant();
        try (LiveScreen screen = LiveScreen.open(base, view, null)) {
            screen.next(event -> event.name().equals("hello"));
            HeldFeed.hold();
            long last = 0;
            for (int entry = 0; entry < ENTRIES; entry++) {
                last = nursery.enter(batch, nursery.entry("loss", Map.of("plants", 10, "cause", "rot")))
                        .statusCode(201)
                        .extract()
                        .jsonPath()
                        .getLong("position");
            }
            time.moveOn(Duration.ofSeconds(30));
            snapshots.fallBehind(); // as the first reader whose patience is at an end does

            // 800 plants fill 8 trays of 90, though every reader still sees 11 of them: decided at the head.
            nursery.order(nursery.nextMonday(), 9).statusCode(409);
            nursery.order(nursery.nextMonday(), 8).statusCode(201);
            Response board = given().get("/api/board" + view + "&site=" + nursery.site);
            assertThat(board.statusCode()).isEqualTo(200);
            assertThat(Long.parseLong(board.header("Rootcast-Position"))).isEqualTo(before);
            assertThat(Instant.parse(board.jsonPath().getString("asOf"))).isEqualTo(stopped);
            String now = stopped.plusSeconds(30).toString();
            LiveScreen.Event beat = screen.next(event ->
                    event.name().equals("beat") && now.equals(event.json().getString("at")));
            assertThat(Instant.parse(beat.json().getString("asOf"))).isEqualTo(stopped);
            given().get("/api/board" + view + "&atLeast=" + last).then().statusCode(503);

            HeldFeed.letGo();

            JsonPath caughtUp = Nursery.get("/api/board" + view + "&site=" + nursery.site + "&atLeast=" + (last + 1));
            assertThat(caughtUp.getInt("rows[0].cells[0].promised")).isEqualTo(8);
            assertThat(caughtUp.getInt("rows[0].cells[0].open")).isZero();
            long end = last + 1;
            LiveScreen.Event row = screen.next(event -> event.name().equals("board") && event.position() >= end);
            assertThat((Object) row.json().get("rows.find { it.variety == '" + nursery.variety + "' }"))
                    .isEqualTo(caughtUp.get("rows[0]"));
        }
    }
}
