package rootcast.app.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.net.URI;
import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.Clients;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/**
 * Sixteen clients write at random to the same few batches: no plant appears or vanishes, and nothing becomes visible
 * behind what was visible before.
 *
 * <p>Source of the shape: facts-operations G, bank test and rebuilding balances; style §3, the trap of sequences.
 */
abstract class BankContract {

    private static final int CLIENTS = 16;
    private static final int ENTRIES_EACH = 25;
    private static final long SEED = 19;

    @Inject
    HandSetClock time;

    @Inject
    ObjectMapper json;

    @Inject
    AgroalDataSource database;

    @TestHTTPResource
    URI base;

    private Nursery nursery;
    private Tables tables;
    private Clients clients;
    private final List<String> batches = new ArrayList<>();

    @BeforeEach
    void stick() {
        nursery = Nursery.opened(time);
        tables = new Tables(database);
        clients = new Clients(base);
        for (int batch = 0; batch < 4; batch++) {
            batches.add(nursery.stuck(10, Duration.ofDays(30)));
        }
    }

    @Test
    void noPlantAppearsOrVanishes() throws Exception {
        List<List<Integer>> statuses = Clients.together(CLIENTS, client -> () -> entries(client));

        assertThat(statuses.stream().flatMap(List::stream))
                .as("seed %d", SEED)
                .hasSize(CLIENTS * ENTRIES_EACH)
                .isSubsetOf(201, 409, 422)
                .contains(201);
        balancesRebuiltFromPostingsAreThoseShown();
    }

    @Test
    void noPositionIsFilledInBehindOneThatWasSeen() throws Exception {
        long first = position();
        AtomicBoolean writing = new AtomicBoolean(true);
        List<List<String>> looks = new ArrayList<>();
        Thread reader = new Thread(() -> {
            while (writing.get()) {
                looks.add(tables.rows("select position_no from ledger_entry where position_no > " + first));
            }
        });
        reader.start();

        try {
            Clients.together(CLIENTS, client -> () -> client % 2 == 0 ? entries(client) : entriesOfAnotherNode(client));
        } finally {
            writing.set(false);
            reader.join();
        }

        looks.add(tables.rows("select position_no from ledger_entry where position_no > " + first));
        TreeSet<Long> all = new TreeSet<>();
        looks.get(looks.size() - 1).forEach(position -> all.add(Long.parseLong(position)));
        assertThat(all).isNotEmpty();
        for (List<String> look : looks) {
            long newest = look.stream().mapToLong(Long::parseLong).max().orElse(first);
            assertThat(look)
                    .as("everything up to %d", newest)
                    .hasSize(all.headSet(newest, true).size());
        }
    }

    private List<Integer> entries(int client) throws Exception {
        Random random = new Random(SEED * 1_000 + client);
        List<Integer> statuses = new ArrayList<>();
        List<String> own = new ArrayList<>();
        for (int entry = 0; entry < ENTRIES_EACH; entry++) {
            String batch = batches.get(random.nextInt(batches.size()));
            String body = json.writeValueAsString(random(random, own));
            HttpResponse<String> answer = clients.post(
                    "/api/batches/" + batch + "/entries", UUID.randomUUID().toString(), body);
            statuses.add(answer.statusCode());
            if (answer.statusCode() == 201) {
                own.add(JsonPath.from(answer.body()).getString("id"));
            }
        }
        return statuses;
    }

    /** Past the application's queue, on the head row itself. */
    private List<Integer> entriesOfAnotherNode(int client) throws Exception {
        for (int entry = 0; entry < ENTRIES_EACH; entry++) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                connection.setAutoCommit(false);
                statement.executeQuery("select position_no from fact_head where id = 1 for update");
                statement.execute("update fact_head set position_no = position_no + 1");
                statement.execute(("insert into ledger_entry (position_no, id, batch, kind, happened_at, recorded_at,"
                                + " recorded_by, stage, looked_cells, reached_cells)"
                                + " select position_no, '%s', '%s', 'look', timestamp with time zone '%s',"
                                + " timestamp with time zone '%s', 'node', 'CALLUS', 10, 0 from fact_head")
                        .formatted(
                                UUID.randomUUID(),
                                batches.get(client % batches.size()),
                                time.instant(),
                                time.instant()));
                connection.commit();
            }
        }
        return List.of();
    }

    private Map<String, Object> random(Random random, List<String> own) {
        return switch (random.nextInt(8)) {
            case 0, 1, 2 -> nursery.entry("loss", Map.of("plants", 1 + random.nextInt(40), "cause", "rot"));
            case 3 -> nursery.entry("count", Map.of("plants", random.nextInt(1_000)));
            case 4 -> nursery.entry("move", Map.of("house", random.nextBoolean() ? nursery.house : nursery.otherHouse));
            case 5 -> nursery.entry("stage", Map.of("stage", random.nextBoolean() ? "CALLUS" : "ROOT"));
            case 6 -> nursery.entry("ship", Map.of("trays", 1));
            default ->
                nursery.entry(
                        "reversal",
                        Map.of(
                                "entry",
                                own.isEmpty() ? UUID.randomUUID() : own.get(random.nextInt(own.size())),
                                "reason",
                                "slip"));
        };
    }

    private void balancesRebuiltFromPostingsAreThoseShown() {
        assertThat(tables.number("select coalesce(sum(plants), 0) from posting"))
                .isZero();
        assertThat(tables.rows("select position_no from posting group by position_no having sum(plants) <> 0"))
                .isEmpty();
        for (String batch : batches) {
            Map<String, Long> balance = new HashMap<>();
            for (String row : tables.rows(
                    "select account, sum(plants) from posting where batch = '" + batch + "' group by account")) {
                String[] columns = row.split("\\|");
                balance.put(columns[0].toLowerCase(java.util.Locale.ROOT), Long.parseLong(columns[1]));
            }
            JsonPath shown = Nursery.batch(batch);
            assertThat(balance.get("supplier")).isEqualTo(-1_000);
            for (String account : List.of("alive", "lost", "shipped")) {
                assertThat(shown.getLong("plants." + account))
                        .as("%s of %s, seed %d", account, batch, SEED)
                        .isEqualTo(balance.getOrDefault(account, 0L));
            }
            assertThat(shown.getLong("plants.alive")).isNotNegative();
        }
    }

    private long position() {
        return tables.number("select position_no from fact_head");
    }
}
