package rootcast.app.live;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.common.http.TestHTTPResource;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/**
 * The live feed, heard as a browser hears it.
 *
 * <p>How soon an event arrives is measured in docs/measurements.md and seen through a browser in the end-to-end tests.
 */
abstract class LiveFeedContract {

    @Inject
    HandSetClock time;

    @TestHTTPResource
    URI base;

    private Nursery nursery;
    private String view;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        view = "?weeks=4&from=" + Nursery.week(nursery.nextMonday());
    }

    @Test
    void aScreenIsGreetedWithThePositionOfTheBoard() throws Exception {
        try (LiveScreen screen = LiveScreen.open(base, view, null)) {
            assertThat(screen.status()).isEqualTo(200);
            assertThat(screen.contentType()).startsWith("text/event-stream");
            LiveScreen.Event hello = screen.next();
            assertThat(hello.name()).isEqualTo("hello");
            assertThat(hello.position()).isEqualTo(position());
            assertThat(hello.json().getLong("position")).isEqualTo(position());
        }
    }

    @Test
    void anEntryIsHeardWithTheRowItChanged() throws Exception {
        String batch = nursery.ready(10, 950);
        try (LiveScreen screen = LiveScreen.open(base, view, null)) {
            screen.next(named("hello"));

            int position = nursery.enter(batch, nursery.entry("loss", Map.of("plants", 300, "cause", "rot")))
                    .statusCode(201)
                    .extract()
                    .path("position");

            LiveScreen.Event touched = screen.next(named("batches"));
            assertThat(touched.position()).isEqualTo(position);
            assertThat(touched.json().getList("ids")).containsExactly(batch);
            LiveScreen.Event board = screen.next(named("board"));
            assertThat(board.position()).isEqualTo(position);
            assertThat(board.json().getList("rows.variety")).containsExactly(nursery.variety);
            // 650 plants fill 7 trays of 90.
            assertThat(board.json().getInt("rows[0].cells[0].open")).isEqualTo(7);
            assertThat((Object) board.json().get("rows[0]"))
                    .isEqualTo(nursery.board(nursery.nextMonday(), 4).get("rows[0]"));
        }
    }

    @Test
    void aReadingAnOrderAndANewHouseAreHeard() throws Exception {
        nursery.ready(10, 950);
        String young = nursery.stuck(10, Duration.ofDays(5));
        try (LiveScreen screen = LiveScreen.open(base, view, null)) {
            screen.next(named("hello"));

            nursery.order(nursery.nextMonday(), 4).statusCode(201);
            screen.next(named("orders"));
            assertThat(screen.next(named("board")).json().getInt("rows[0].cells[0].promised"))
                    .isEqualTo(4);

            Instant yesterday = time.instant().minus(Duration.ofDays(1));
            nursery.post(
                            "/api/readings",
                            Map.of(
                                    "house",
                                    nursery.house,
                                    "quantity",
                                    "medium-temperature",
                                    "value",
                                    30,
                                    "unit",
                                    "Cel",
                                    "at",
                                    yesterday.toString()))
                    .statusCode(200);
            assertThat(screen.next(named("batches")).json().getList("ids")).contains(young);

            nursery.post("/api/houses", Map.of("code", nursery.house + "z", "site", nursery.site, "name", "New"))
                    .statusCode(201);
            screen.next(named("setup"));
        }
    }

    @Test
    void aRowWithNothingLeftIsTakenAway() throws Exception {
        String batch = nursery.ready(1, 90);
        try (LiveScreen screen = LiveScreen.open(base, view, null)) {
            screen.next(named("hello"));

            nursery.enter(batch, nursery.entry("ship", Map.of("trays", 1))).statusCode(201);

            assertThat(screen.next(named("removed")).json().getList("rows"))
                    .isEqualTo(List.of(Map.of(
                            "variety", nursery.variety,
                            "trayFormat", nursery.trayFormat,
                            "site", nursery.site)));
        }
    }

    @ParameterizedTest(name = "named by {0}")
    @ValueSource(strings = {"Last-Event-ID", "after"})
    void aScreenThatComesBackHearsWhatItMissedAndNothingElse(String by) throws Exception {
        Nursery.opened(time).ready(3, 270);
        String batch = nursery.ready(10, 950);
        Nursery other = Nursery.opened(time);
        String otherBatch = other.ready(10, 950);
        Nursery heard = Nursery.opened(time);
        position(); // the set-up so far is in a snapshot, and not in one step with what comes now
        // The last thing heard may be told again: it carries state, and the clock changes rows without a position.
        String heardBatch = heard.ready(10, 950);
        String heardUpTo = Long.toString(position());
        nursery.enter(batch, nursery.entry("loss", Map.of("plants", 300, "cause", "rot")))
                .statusCode(201);
        other.enter(otherBatch, other.entry("loss", Map.of("plants", 300, "cause", "rot")))
                .statusCode(201);

        try (LiveScreen screen = by.equals("after")
                ? LiveScreen.open(base, view + "&after=" + heardUpTo, null)
                : LiveScreen.open(base, view, heardUpTo)) {
            List<LiveScreen.Event> events = screen.upTo(named("board"));

            assertThat(events)
                    .extracting(LiveScreen.Event::name)
                    .contains("hello", "batches")
                    .doesNotContain("snapshot");
            assertThat(events).allSatisfy(event -> assertThat(event.position()).isEqualTo(position()));
            assertThat(events.get(events.size() - 1).json().getList("rows.variety"))
                    .contains(nursery.variety, other.variety)
                    .isSubsetOf(nursery.variety, other.variety, heard.variety);
            assertThat(events.get(1).json().getList("ids"))
                    .contains(batch, otherBatch)
                    .isSubsetOf(batch, otherBatch, heardBatch);
        }
    }

    @ParameterizedTest(name = "last heard {0}")
    @ValueSource(strings = {"0", "999999999"})
    void aScreenThatWasAwayTooLongOrHeardAnotherServerGetsTheWholeBoard(String lastHeard) throws Exception {
        nursery.ready(10, 950);

        try (LiveScreen screen = LiveScreen.open(base, view, lastHeard)) {
            LiveScreen.Event snapshot = screen.next(named("snapshot"));

            assertThat(snapshot.position()).isEqualTo(position());
            JsonPath board = Nursery.get("/api/board" + view);
            assertThat((Object) snapshot.json().get("rows")).isEqualTo(board.get("rows"));
            assertThat((Object) snapshot.json().get("weeks")).isEqualTo(board.get("weeks"));
        }
    }

    @Test
    void theFeedReplayedOverAnOldBoardEndsAtTheBoardAsItIs() throws Exception {
        String batch = nursery.ready(10, 950);
        try (LiveScreen screen = LiveScreen.open(base, view, null)) {
            screen.next(named("hello"));
            Map<String, Object> rows = new TreeMap<>(); // this site's rows by variety
            rows.put(nursery.variety, nursery.board(nursery.nextMonday(), 4).get("rows[0]"));
            for (int loss = 0; loss < 8; loss++) {
                nursery.enter(batch, nursery.entry("loss", Map.of("plants", 60, "cause", "pest")))
                        .statusCode(201);
                if (loss % 3 == 0) {
                    nursery.order(nursery.nextMonday(), 1).statusCode(201);
                }
            }
            long last = position();

            for (LiveScreen.Event event :
                    screen.upTo(event -> event.name().equals("board") && event.position() == last)) {
                if (event.name().equals("board")) {
                    List<Map<String, Object>> changed = event.json().getList("rows");
                    changed.forEach(row -> rows.put((String) row.get("variety"), row));
                }
            }

            assertThat(rows.get(nursery.variety))
                    .isEqualTo(nursery.board(nursery.nextMonday(), 4).get("rows[0]"));
        }
    }

    @Test
    void aQuietLineBeats() throws Exception {
        try (LiveScreen screen = LiveScreen.open(base, view, null)) {
            LiveScreen.Event beat = screen.next(named("beat"));
            assertThat(beat.id()).isEmpty();
            assertThat(Instant.parse(beat.json().getString("at"))).isEqualTo(time.instant());
        }
    }

    @Test
    void aPositionThatIsNoneIsRefused() {
        given().get("/api/live?after=yesterday").then().statusCode(400).contentType("application/problem+json");
        given().get("/api/live?weeks=99").then().statusCode(400).contentType("application/problem+json");
    }

    private static java.util.function.Predicate<LiveScreen.Event> named(String name) {
        return event -> event.name().equals(name);
    }

    private static long position() {
        return Nursery.get("/api/about").getLong("position");
    }
}
