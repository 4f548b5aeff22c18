package rootcast.app.flow;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;
import rootcast.app.board.BoardView;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.rest.BoardWire;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.outlook.BatchesSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.crop.Calibration;
import rootcast.facts.FactPosition;
import rootcast.site.ShipWeek;

/** What was carried on step by step is what the tables alone give; and one batch that breaks does not break the rest. */
abstract class RebuildContract {

    @Inject
    HandSetClock time;

    @Inject
    Snapshots snapshots;

    @Inject
    FactReader facts;

    @Inject
    Catalogue catalogue;

    @Inject
    Once once;

    @Inject
    FactHead head;

    @Inject
    ObjectMapper json;

    @Inject
    javax.sql.DataSource database;

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {20261128, 7})
    void theWholeBoardIsTheSameToTheByteAfterARebuild(long seed) throws JsonProcessingException {
        Nursery nursery = Nursery.opened(time);
        List<String> batches = new ArrayList<>();
        Random random = new Random(seed);
        for (int step = 0; step < 40; step++) {
            somethingHappens(nursery, batches, random, step);
        }
        Nursery.get("/api/board"); // the snapshot has taken all of it in

        Snapshot live = snapshots.now();
        Snapshot rebuilt = new Projection()
                .begin(hours -> facts.all(live.position(), live.asOf(), hours))
                .snapshot();

        for (double confidence : new double[] {0.5, 0.9}) {
            BoardView view = new BoardView(ShipWeek.of(nursery.today()), 12, confidence);
            assertThat(written(rebuilt, view)).isEqualTo(written(live, view));
        }
        assertThat(rebuilt.part(BatchesSnapshot.class).live().keySet())
                .containsExactlyInAnyOrderElementsOf(
                        live.part(BatchesSnapshot.class).live().keySet());
    }

    /** What the record says of ranges is a fact like others: it moves the board at once, and is there after a rebuild. */
    @Test
    void rangesAsTheRecordHasThemAreTheSameAfterARebuild() throws JsonProcessingException {
        Nursery nursery = Nursery.opened(time);
        String batch = nursery.stuck(10, Duration.ofDays(5));
        String before = Nursery.batch(batch).getString("outlook.readyAt.p90");

        var knots = List.of(new Calibration.Knot(4, -1.2, 0.1, 1.4, 20), new Calibration.Knot(16, -1.5, 0.3, 2, 25));
        once.write(OnceKey.none(), "a calibration", "", 200, () -> {
            catalogue.calibrate(nursery.crop, 1, new Calibration(knots), new FactPosition(1), time.instant());
            head.nextForSetup();
            return null;
        });

        assertThat(Nursery.batch(batch).getString("outlook.readyAt.p90")).isGreaterThan(before);
        Snapshot live = snapshots.now();
        Snapshot rebuilt = new Projection()
                .begin(hours -> facts.all(live.position(), live.asOf(), hours))
                .snapshot();
        BoardView view = new BoardView(ShipWeek.of(nursery.today()), 12, 0.9);
        assertThat(written(rebuilt, view)).isEqualTo(written(live, view));
    }

    private void somethingHappens(Nursery nursery, List<String> batches, Random random, int step) {
        int what = batches.isEmpty() ? 0 : random.nextInt(7);
        String batch = batches.isEmpty() ? "" : batches.get(random.nextInt(batches.size()));
        LocalDate shipOn = nursery.nextMonday().plusWeeks(random.nextInt(4));
        switch (what) {
            case 0 ->
                batches.add(
                        random.nextBoolean()
                                ? nursery.stuck(5 + random.nextInt(10), Duration.ofDays(3 + random.nextInt(20)))
                                : nursery.ready(10, 900));
            // Some of these are refused, which is as well: nothing happens then.
            case 1 -> nursery.enter(batch, "loss", Map.of("plants", 1 + random.nextInt(40), "cause", "ROT"));
            case 2 -> nursery.enter(batch, "move", Map.of("house", nursery.otherHouse));
            case 3 -> nursery.order(shipOn, 1 + random.nextInt(3));
            case 4 -> nursery.enter(batch, "ship", Map.of("trays", 1));
            case 5 ->
                nursery.post("/api/readings", List.of(reading(nursery, random, step)))
                        .statusCode(200);
            default -> time.moveOn(Duration.ofMinutes(40));
        }
    }

    /** Of this hour or of one of the hours before it, so that some come late. */
    private static Map<String, Object> reading(Nursery nursery, Random random, int step) {
        return Map.of(
                "house",
                random.nextBoolean() ? nursery.house : nursery.otherHouse,
                "quantity",
                "medium-temperature",
                "value",
                19 + random.nextInt(6),
                "unit",
                "Cel",
                "at",
                nursery.now().minus(Duration.ofMinutes(step * 60L + 1)).toString());
    }

    private String written(Snapshot snapshot, BoardView view) throws JsonProcessingException {
        return json.writeValueAsString(BoardWire.of(LiveBoard.boardIn(snapshot, view), row -> true));
    }

    @Test
    void aBatchThatCannotBeReadIsSetApartAndSaidSo() throws Exception {
        Nursery nursery = Nursery.opened(time);
        String sound = nursery.ready(10, 900);
        String broken = nursery.ready(10, 900);
        int openOfBoth = nursery.open(nursery.nextMonday());
        plantUnreadableEntry(broken);

        nursery.enter(
                broken,
                "loss",
                Map.of("plants", 1, "cause", "ROT")); // whatever it answers, the batch is looked at again
        nursery.enter(sound, "loss", Map.of("plants", 1, "cause", "ROT")).statusCode(201);

        var list = Nursery.get("/api/batches?site=" + nursery.site);
        assertThat(list.getList("faulty.id")).containsExactly(broken);
        assertThat(list.getString("faulty[0].fault")).contains("cannot be read");
        assertThat(list.getList("batches.id")).containsExactly(sound);
        var row = nursery.board(nursery.nextMonday(), 1);
        assertThat(row.getList("rows[0].faulty.batch")).containsExactly(broken);
        assertThat(row.getInt("rows[0].cells[0].open")).isLessThan(openOfBoth).isGreaterThanOrEqualTo(9);
        io.restassured.RestAssured.given()
                .get("/api/batches/" + broken)
                .then()
                .statusCode(500)
                .body("type", org.hamcrest.Matchers.equalTo("/problems/batch-not-computed"));
    }

    /** As no version of this program writes it, by plain SQL. */
    private void plantUnreadableEntry(String batch) throws Exception {
        Tables tables = new Tables(database);
        tables.execute("update fact_head set position_no = position_no + 1");
        tables.execute(("insert into ledger_entry (position_no, id, batch, kind, happened_at, recorded_at, recorded_by)"
                        + " select h.position_no, '%s', '%s', 'riddle', current_timestamp, current_timestamp, 'nobody'"
                        + " from fact_head h")
                .formatted(UUID.randomUUID(), batch));
    }
}
