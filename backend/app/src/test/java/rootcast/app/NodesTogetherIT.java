package rootcast.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two nodes of the packaged PostgreSQL build sell, count, die and come back over one database: what one acknowledged is on
 * the other's board, the last trays are sold once, and no committed write is answered as one that failed.
 */
class NodesTogetherIT {

    private static final int CLIENTS = 64;
    private static final int LOOKS = 100;
    private static final int TRAYS = 40;
    private static final int WRITERS = 8;

    private final ObjectMapper json = new ObjectMapper();
    private final Instant began = Instant.now().truncatedTo(ChronoUnit.HOURS);
    private final LocalDate shipOn = LocalDate.ofInstant(began, ZoneOffset.UTC).plusDays(7);

    @Test
    void theyAreOneBusinessWhateverBreaks(@TempDir Path folder, TestReporter reporter) throws Exception {
        try (TwoNodes nodes = TwoNodes.start(folder)) {
            String batch = setUp(nodes.first());
            anEntryOnOneIsOnTheOthersBoard(nodes, batch, reporter);
            theLastTraysAreSoldOnce(nodes);
            everyAcknowledgedEntryIsThereOnceWhateverBreaks(nodes, batch);
            bothShowTheSameBoard(nodes);
        }
    }

    /** A tray's worth of plants is lost a hundred times; how soon the other node knows is reported, not asserted. */
    private void anEntryOnOneIsOnTheOthersBoard(TwoNodes nodes, String batch, TestReporter reporter) throws Exception {
        long[] tookMicros = new long[LOOKS];
        for (int look = 0; look < LOOKS; look++) {
            long begin = System.nanoTime();
            JsonNode written = made(
                    nodes.node(look % 2),
                    "/api/batches/" + batch + "/entries",
                    Nursery.entry("loss", began, Map.of("plants", 1, "cause", "rot")));
            long position = written.get("position").asLong();
            JsonNode other = read(nodes.node(1 - look % 2), "/api/batches/" + batch + "?atLeast=" + position);
            tookMicros[look] = (System.nanoTime() - begin) / 1_000;
            assertThat(other.at("/plants/alive").asLong())
                    .isEqualTo(written.get("alive").asLong());
        }
        Arrays.sort(tookMicros);
        reporter.publishEntry(Map.of(
                "from an entry on one node to the other, microseconds, median",
                Long.toString(tookMicros[LOOKS / 2]),
                "p95",
                Long.toString(tookMicros[LOOKS * 95 / 100])));
    }

    private void theLastTraysAreSoldOnce(TwoNodes nodes) throws Exception {
        int open = open(nodes.first());
        assertThat(open)
                .as("trays of 90 that 40 trays with 95 plants each fill")
                .isEqualTo(42);
        List<List<Integer>> sold = Clients.together(CLIENTS, client -> () -> {
            List<Integer> statuses = new ArrayList<>();
            for (int order = 0; order < 2; order++) {
                statuses.add(nodes.node(client % 2)
                        .post("/api/orders", UUID.randomUUID().toString(), order())
                        .orElseThrow()
                        .statusCode());
            }
            return statuses;
        });
        List<Integer> statuses = sold.stream().flatMap(List::stream).toList();
        assertThat(statuses).isSubsetOf(201, 409);
        assertThat(statuses.stream().filter(status -> status == 201)).hasSize(open);
        assertThat(open(nodes.first())).isZero();
        assertThat(open(nodes.second())).isZero();
    }

    private void everyAcknowledgedEntryIsThereOnceWhateverBreaks(TwoNodes nodes, String batch) throws Exception {
        ConcurrentLinkedQueue<Sent> sent = new ConcurrentLinkedQueue<>();
        AtomicBoolean writing = new AtomicBoolean(true);
        CountDownLatch underWay = new CountDownLatch(60);
        List<Thread> writers = new ArrayList<>();
        for (int writer = 0; writer < WRITERS; writer++) {
            int node = writer % 2;
            Thread thread = new Thread(() -> {
                while (writing.get()) {
                    Sent entry = new Sent(UUID.randomUUID().toString(), loss());
                    entry.answers.add(post(nodes.node(node), batch, entry));
                    sent.add(entry);
                    underWay.countDown();
                }
            });
            thread.start();
            writers.add(thread);
        }
        underWay.await();
        nodes.restartDatabase();
        int beforeKill = sent.size();
        while (sent.size() < beforeKill + 40) {
            Thread.onSpinWait();
        }
        nodes.second().kill(); // in the middle of what its writers are sending
        writing.set(false);
        for (Thread writer : writers) {
            writer.join();
        }
        nodes.startNode(1);

        Set<String> before = entryIds(nodes.first(), batch);
        for (Sent entry : sent) {
            if (entry.isAcknowledged()) {
                assertThat(before).as("acknowledged").contains(entry.id(json));
            }
        }
        for (Sent entry : sent) { // every one again, to the other node: done once, whatever was answered
            Optional<HttpResponse<String>> again = post(nodes.node(1), batch, entry);
            assertThat(again).isPresent();
            assertThat(again.get().statusCode()).isEqualTo(201);
            if (entry.isAcknowledged()) {
                assertThat(again.get().body()).isEqualTo(entry.body());
            }
            if (entry.saysNothingWasWritten()) {
                assertThat(before)
                        .as("a committed write answered as failed")
                        .doesNotContain(
                                json.readTree(again.get().body()).get("id").asText());
            }
        }
        Set<String> ids = entryIds(nodes.first(), batch);
        assertThat(ids)
                .hasSize(before.size()
                        + (int) sent.stream()
                                .filter(entry -> !entry.isAcknowledged())
                                .filter(entry -> !before.contains(entry.idWhenRepeated(json, nodes.node(1), batch)))
                                .count());
    }

    private void bothShowTheSameBoard(TwoNodes nodes) throws Exception {
        JsonNode written = made(
                nodes.first(),
                "/api/batches/" + firstBatch(nodes.first()) + "/entries",
                Nursery.entry("loss", began, Map.of("plants", 1, "cause", "rot")));
        String query = "?weeks=8&atLeast=" + written.get("position").asLong();
        assertThat(read(nodes.second(), "/api/board" + query).get("rows"))
                .isEqualTo(read(nodes.first(), "/api/board" + query).get("rows"));
    }

    /** An entry with its key and what was answered, which may be nothing. */
    private static final class Sent {
        private final String key;
        private final String entry;
        private final List<Optional<HttpResponse<String>>> answers = new ArrayList<>();

        Sent(String key, String entry) {
            this.key = key;
            this.entry = entry;
        }

        boolean isAcknowledged() {
            return answers.get(0).filter(answer -> answer.statusCode() == 201).isPresent();
        }

        boolean saysNothingWasWritten() {
            return answers.get(0)
                    .filter(answer -> answer.body().contains("Nothing was written"))
                    .isPresent();
        }

        String body() {
            return answers.get(0).orElseThrow().body();
        }

        String id(ObjectMapper json) throws JsonProcessingException {
            return json.readTree(body()).get("id").asText();
        }

        String idWhenRepeated(ObjectMapper json, RunningJar node, String batch) {
            try {
                return json.readTree(post(node, batch, this).orElseThrow().body())
                        .get("id")
                        .asText();
            } catch (JsonProcessingException unreadable) {
                throw new IllegalStateException(unreadable);
            }
        }
    }

    private static Optional<HttpResponse<String>> post(RunningJar node, String batch, Sent entry) {
        return node.post("/api/batches/" + batch + "/entries", entry.key, entry.entry);
    }

    private String setUp(RunningJar node) throws Exception {
        made(node, "/api/sites", Map.of("code", "S1", "name", "Hillside", "timeZone", "Etc/UTC"));
        made(node, "/api/houses", Map.of("code", "H1", "site", "S1", "name", "North house"));
        made(node, "/api/tray-formats", Nursery.formatBody("T100"));
        made(node, "/api/crops", Nursery.cropBody("greyleaf"));
        made(node, "/api/varieties", Map.of("code", "V1", "crop", "greyleaf", "name", "Grey Morning"));
        String sold = stuck(node, TRAYS);
        assertThat(sold).isNotEmpty();
        return stuck(node, 1_000, "H1", "V2");
    }

    private String stuck(RunningJar node, int trays) throws Exception {
        return stuck(node, trays, "H1", "V1");
    }

    private String stuck(RunningJar node, int trays, String house, String variety) throws Exception {
        if (!variety.equals("V1")) {
            made(node, "/api/varieties", Map.of("code", variety, "crop", "greyleaf", "name", "Grey Evening"));
        }
        Map<String, Object> stick = new HashMap<>(Map.of("site", "S1", "house", house, "variety", variety));
        stick.putAll(Map.of(
                "trayFormat",
                "T100",
                "stuckAt",
                began.minus(Duration.ofDays(40)).toString(),
                "trays",
                trays));
        String batch = made(node, "/api/batches", stick).get("id").asText();
        // Long enough ago for the tenth cell in ten to be through as well, and no cell is past its 30 days.
        Instant seen = began.minus(Duration.ofDays(12));
        String entries = "/api/batches/" + batch + "/entries";
        made(node, entries, Nursery.entry("stage", seen, Map.of("stage", "READY")));
        made(node, entries, Nursery.entry("count", seen.plusSeconds(60), Map.of("plants", trays * 95)));
        return batch;
    }

    private int open(RunningJar node) throws Exception {
        JsonNode board = read(node, "/api/board?weeks=1&from=" + Nursery.week(shipOn));
        for (JsonNode row : board.get("rows")) {
            if (row.get("variety").asText().equals("V1")) {
                return row.at("/cells/0/open").asInt();
            }
        }
        return 0;
    }

    private String order() throws JsonProcessingException {
        return json.writeValueAsString(Nursery.orderBody(List.of(Map.of(
                "variety",
                "V1",
                "trayFormat",
                "T100",
                "site",
                "S1",
                "shipOn",
                mondayOf(shipOn).toString(),
                "trays",
                1))));
    }

    /** The day that the board's cell of the week stands for. */
    private static LocalDate mondayOf(LocalDate day) {
        return day.with(java.time.temporal.TemporalAdjusters.previousOrSame(java.time.DayOfWeek.MONDAY));
    }

    private String loss() {
        try {
            return json.writeValueAsString(Nursery.entry("loss", began, Map.of("plants", 1, "cause", "rot")));
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private String firstBatch(RunningJar node) throws Exception {
        return read(node, "/api/batches").at("/batches/0/id").asText();
    }

    private Set<String> entryIds(RunningJar node, String batch) throws Exception {
        Set<String> ids = new HashSet<>();
        int rows = 0;
        for (JsonNode entry : read(node, "/api/batches/" + batch + "/entries")) {
            ids.add(entry.get("id").asText());
            rows++;
        }
        assertThat(ids).hasSize(rows);
        return ids;
    }

    private JsonNode made(RunningJar node, String path, Object body) throws IOException {
        HttpResponse<String> answer = node.post(path, UUID.randomUUID().toString(), json.writeValueAsString(body))
                .orElseThrow();
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
        return json.readTree(answer.body());
    }

    private JsonNode read(RunningJar node, String path) throws Exception {
        HttpResponse<String> answer = node.get(path);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return json.readTree(answer.body());
    }
}
