package rootcast.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The packaged application is killed while it writes, several times, and started again: every acknowledged entry,
 * reading and promise is there, and nothing is there twice.
 *
 * <p>Writes without an answer are sent again with the same key, as a device would. The packaged database is the embedded
 * one; it is chosen when the application is built, so PostgreSQL's own crash recovery is left to PostgreSQL and its
 * locking to the race tests. Seen red with H2's WRITE_DELAY at 2000 ms: an acknowledged batch was gone. Source of the shape: facts-operations G, set test under faults.
 */
class KilledAtAnyMomentIT {

    private static final long SEED = 20260302;
    private static final int KILLS = 4;
    private static final int WRITERS = 6;

    private final ObjectMapper json = new ObjectMapper();
    private final Instant began = Instant.now();
    private final Queue<String> unexpected = new ConcurrentLinkedQueue<>();

    /** A write as its sender knows it. {@code answer} is filled once it was acknowledged. */
    private static final class Write {
        private final String kind;
        private final String path;
        private final String key = UUID.randomUUID().toString();
        private final String body;
        private volatile String answer = "";

        Write(String kind, String path, String body) {
            this.kind = kind;
            this.path = path;
            this.body = body;
        }

        boolean isAcknowledged() {
            return !answer.isEmpty();
        }
    }

    @Test
    void everyAcknowledgedWriteSurvivesAndNoneIsThereTwice(@TempDir Path data) throws Exception {
        Random random = new Random(SEED);
        Queue<Write> writes = new ConcurrentLinkedQueue<>();
        String batch;
        try (RunningJar jar = RunningJar.start(data)) {
            batch = setUp(jar);
        }
        for (int round = 0; round < KILLS; round++) {
            try (RunningJar jar = RunningJar.start(data)) {
                resend(jar, writes);
                writeUntilKilled(jar, writes, batch, round, 40 + random.nextInt(160));
            }
        }
        try (RunningJar jar = RunningJar.start(data)) {
            assertThat(entryIds(jar, batch)).as("seed %d", SEED).containsAll(ids(writes, "loss"));
            assertThat(orderIds(jar)).as("seed %d", SEED).containsAll(ids(writes, "order"));
            everyReadingIsThereOnce(jar, writes);

            resend(jar, writes);

            assertThat(unexpected).isEmpty();
            everyEntryIsThereOnce(jar, writes, batch);
            everyReadingIsThereOnce(jar, writes);
            everyPromiseIsThereOnce(jar, writes);
            assertThat(acknowledged(writes, "loss"))
                    .as("a run that wrote nothing shows nothing")
                    .isNotEmpty();
            assertThat(acknowledged(writes, "order")).isNotEmpty();
            assertThat(acknowledged(writes, "reading")).isNotEmpty();
        }
    }

    @Test
    void itListensOnTheLoopbackOnly(@TempDir Path data) throws Exception {
        try (RunningJar jar = RunningJar.start(data)) {
            assertThat(jar.get("/q/health/ready").body()).contains("\"UP\"");
            assertThat(json.readTree(jar.get("/api/about").body()).get("demo").asBoolean())
                    .isFalse();
            assertThat(json.readTree(jar.get("/api/batches?state=all").body()).get("batches"))
                    .as("nothing of the demo is loaded outside it")
                    .isEmpty();
            for (InetAddress address : addressesOfThisMachine()) {
                try (Socket socket = new Socket()) {
                    assertThatThrownBy(() -> socket.connect(new InetSocketAddress(address, jar.port()), 2_000))
                            .as("%s", address)
                            .isInstanceOf(IOException.class);
                }
            }
        }
    }

    private String setUp(RunningJar jar) throws Exception {
        made(jar, "/api/sites", Map.of("code", "S1", "name", "Hillside", "timeZone", "Etc/UTC"));
        made(jar, "/api/houses", Map.of("code", "H1", "site", "S1", "name", "North house"));
        made(jar, "/api/tray-formats", Nursery.formatBody("T100"));
        made(jar, "/api/crops", Nursery.cropBody("greyleaf"));
        made(jar, "/api/varieties", Map.of("code", "V1", "crop", "greyleaf", "name", "Grey Morning"));
        Map<String, Object> stick = new HashMap<>(Map.of("site", "S1", "house", "H1", "variety", "V1"));
        stick.putAll(Map.of(
                "trayFormat",
                "T100",
                "stuckAt",
                began.minus(Duration.ofDays(30)).toString(),
                "trays",
                1_000));
        String batch = text(made(jar, "/api/batches", stick), "id");
        Instant seen = began.minus(Duration.ofDays(2));
        String entries = "/api/batches/" + batch + "/entries";
        made(jar, entries, Nursery.entry("stage", seen, Map.of("stage", "READY")));
        made(jar, entries, Nursery.entry("count", seen.plusSeconds(60), Map.of("plants", 95_000)));
        return batch;
    }

    private void writeUntilKilled(RunningJar jar, Queue<Write> writes, String batch, int round, int acknowledgements)
            throws InterruptedException {
        AtomicBoolean alive = new AtomicBoolean(true);
        CountDownLatch enough = new CountDownLatch(acknowledgements);
        List<Thread> writers = new ArrayList<>();
        for (int writer = 0; writer < WRITERS; writer++) {
            int number = writer;
            Thread thread = new Thread(() -> {
                for (int sent = 0; alive.get(); sent++) {
                    Write write = next(batch, round, number, sent);
                    writes.add(write);
                    send(jar, write);
                    enough.countDown();
                }
            });
            thread.start();
            writers.add(thread);
        }
        boolean wrote = enough.await(3, TimeUnit.MINUTES);
        jar.kill(); // in the middle of what the writers are sending now
        alive.set(false);
        for (Thread writer : writers) {
            writer.join();
        }
        assertThat(wrote).as("%d writes in round %d", acknowledgements, round).isTrue();
    }

    /** Every moment, and so every reading, is another one. */
    private Write next(String batch, int round, int writer, int sent) {
        switch ((writer + sent) % 3) {
            case 0:
                return new Write(
                        "loss",
                        "/api/batches/" + batch + "/entries",
                        toJson(Nursery.entry("loss", began, Map.of("plants", 1, "cause", "rot"))));
            case 1:
                Instant at = began.minusSeconds(86_400L * 3 + round * 20_000L + writer * 3_000L + sent);
                return new Write(
                        "reading",
                        "/api/readings",
                        toJson(Map.of(
                                "house",
                                "H1",
                                "quantity",
                                "medium-temperature",
                                "value",
                                22,
                                "unit",
                                "Cel",
                                "at",
                                at.toString())));
            default:
                String shipOn =
                        LocalDate.ofInstant(began, ZoneOffset.UTC).plusDays(7).toString();
                return new Write(
                        "order",
                        "/api/orders",
                        toJson(Nursery.orderBody(List.of(Map.of(
                                "variety", "V1", "trayFormat", "T100", "site", "S1", "shipOn", shipOn, "trays", 1)))));
        }
    }

    private void send(RunningJar jar, Write write) {
        Optional<HttpResponse<String>> answer = jar.post(write.path, write.key, write.body);
        if (answer.isPresent()) {
            if (answer.get().statusCode() == 200 || answer.get().statusCode() == 201) {
                write.answer = answer.get().body();
            } else {
                unexpected.add(answer.get().statusCode() + " " + answer.get().body());
            }
        }
    }

    /** Sends again, with its key, whatever had no answer; and one write in five that had one. */
    private void resend(RunningJar jar, Queue<Write> writes) {
        int number = 0;
        for (Write write : writes) {
            if (!write.isAcknowledged()) {
                send(jar, write);
            } else if (number++ % 5 == 0) {
                String before = write.answer;
                send(jar, write);
                assertThat(write.answer).as("the same answer to a repeat").isEqualTo(before);
            }
        }
    }

    private void everyEntryIsThereOnce(RunningJar jar, Queue<Write> writes, String batch) throws Exception {
        List<String> sent = ids(writes, "loss");
        List<String> kept = entryIds(jar, batch);
        assertThat(kept).doesNotHaveDuplicates().containsAll(sent).hasSize(3 + sent.size());
        JsonNode plants = json.readTree(jar.get("/api/batches/" + batch).body()).get("plants");
        assertThat(plants.get("alive").asInt()).isEqualTo(95_000 - sent.size());
        assertThat(plants.get("lost").asInt()).isEqualTo(5_000 + sent.size());
    }

    /** A reading that is there is a duplicate when it comes again without its key. */
    private void everyReadingIsThereOnce(RunningJar jar, Queue<Write> writes) {
        List<String> bodies =
                acknowledged(writes, "reading").map(write -> write.body).toList();
        String all = "[" + String.join(",", bodies) + "]";
        String answer = jar.post("/api/readings", UUID.randomUUID().toString(), all)
                .orElseThrow()
                .body();
        assertThat(text(answer, "accepted")).isEqualTo("0");
        assertThat(text(answer, "duplicates")).isEqualTo(Integer.toString(bodies.size()));
    }

    private void everyPromiseIsThereOnce(RunningJar jar, Queue<Write> writes) throws Exception {
        List<String> sent = ids(writes, "order");
        assertThat(orderIds(jar)).containsExactlyInAnyOrderElementsOf(sent);
        String week = Nursery.week(LocalDate.ofInstant(began, ZoneOffset.UTC).plusDays(7));
        JsonNode cell =
                json.readTree(jar.get("/api/board?weeks=1&from=" + week).body()).at("/rows/0/cells/0");
        assertThat(cell.get("promised").asInt()).isEqualTo(sent.size());
    }

    private List<String> entryIds(RunningJar jar, String batch) throws Exception {
        List<String> ids = new ArrayList<>();
        json.readTree(read(jar, "/api/batches/" + batch + "/entries"))
                .forEach(entry -> ids.add(entry.get("id").asText()));
        return ids;
    }

    /** A batch that is gone says so here, by its 404, and not further down. */
    private static String read(RunningJar jar, String path) throws Exception {
        HttpResponse<String> answer = jar.get(path);
        assertThat(answer.statusCode()).as("%s: %s", path, answer.body()).isEqualTo(200);
        return answer.body();
    }

    private List<String> orderIds(RunningJar jar) throws Exception {
        List<String> ids = new ArrayList<>();
        json.readTree(read(jar, "/api/orders?state=all"))
                .forEach(order -> ids.add(order.get("id").asText()));
        return ids;
    }

    private List<String> ids(Queue<Write> writes, String kind) {
        return acknowledged(writes, kind).map(write -> text(write.answer, "id")).toList();
    }

    private static Stream<Write> acknowledged(Queue<Write> writes, String kind) {
        return writes.stream().filter(write -> write.kind.equals(kind) && write.isAcknowledged());
    }

    private String made(RunningJar jar, String path, Object body) {
        HttpResponse<String> answer =
                jar.post(path, UUID.randomUUID().toString(), toJson(body)).orElseThrow();
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
        return answer.body();
    }

    private static List<InetAddress> addressesOfThisMachine() throws IOException {
        return Collections.list(NetworkInterface.getNetworkInterfaces()).stream()
                .flatMap(card -> Collections.list(card.getInetAddresses()).stream())
                .filter(address -> !address.isLoopbackAddress() && !address.isLinkLocalAddress())
                .toList();
    }

    private String toJson(Object value) {
        try {
            return json.writeValueAsString(value);
        } catch (IOException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private String text(String answer, String field) {
        try {
            return json.readTree(answer).get(field).asText();
        } catch (IOException notJson) {
            throw new IllegalStateException(answer, notJson);
        }
    }
}
