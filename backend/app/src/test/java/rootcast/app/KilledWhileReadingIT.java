package rootcast.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.core.Vertx;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rootcast.app.climate.mqtt.TestBroker;
import rootcast.app.climate.mqtt.TestPublisher;

/**
 * Sensors send 500 readings a second through a real broker while the packaged application is killed and the broker stopped, and both are started again: every reading that the device was told is taken is stored, and none twice.
 *
 * <p>A device keeps a reading until the broker has acknowledged it, and sends it again otherwise. The application is
 * killed with SIGKILL. The broker is stopped so that it writes down what it holds: what becomes of that when a broker is
 * killed is the broker's own promise and not ours.
 */
class KilledWhileReadingIT {

    private static final int PER_SECOND = 500;
    private static final int SENSORS = 20;
    private static final Duration RUN = Duration.ofSeconds(8);
    /**
     * The broker of this test forgets what it had given to a client that was killed and not been told of: at most ten
     * messages, its window, at each of the two kills. One that keeps its window loses none (docs/measurements.md).
     */
    private static final int LOST_BY_THE_BROKER = 2 * 10;

    private static final Duration PATIENCE = Duration.ofMinutes(4);

    private final ObjectMapper json = new ObjectMapper();
    private final Instant began = Instant.now().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(2));
    private final Queue<Sent> unsaid = new ConcurrentLinkedQueue<>();
    private final Map<String, Sent> all = new ConcurrentHashMap<>();
    private final AtomicBoolean ending = new AtomicBoolean();
    private int number;

    private record Sent(String key, String topic, String payload) {}

    @Test
    void everyAcknowledgedReadingIsStoredOnce(@TempDir Path data, @TempDir Path store) throws Exception {
        Vertx vertx = Vertx.vertx();
        int port = RunningJar.freePort();
        try (TestBroker broker = new TestBroker(Files.createDirectories(store))) {
            List<String> settings = List.of("-Drootcast.mqtt.host=127.0.0.1", "-Drootcast.mqtt.port=" + broker.port());
            RunningJar jar = RunningJar.start(data, port, settings);
            setUp(jar);
            TestPublisher device = new TestPublisher(vertx, broker.port());
            Thread sending = new Thread(() -> send(device), "device");
            sending.start();
            pause(RUN);
            jar.kill();
            pause(RUN);
            jar = RunningJar.start(data, port, settings);
            pause(RUN);
            broker.stop();
            broker.start();
            pause(RUN);
            jar.kill();
            broker.stop();
            broker.start();
            jar = RunningJar.start(data, port, settings);
            pause(RUN);
            ending.set(true);
            sending.join();
            try (RunningJar last = jar) {
                awaitAllBut(last, device, LOST_BY_THE_BROKER);
                everyReadingIsThereOnce(last, device, LOST_BY_THE_BROKER);

                sendEverythingAgain(device);

                awaitAllBut(last, device, 0);
                everyReadingIsThereOnce(last, device, 0);
            }
        } finally {
            ending.set(true);
            vertx.close();
        }
    }

    private void setUp(RunningJar jar) throws IOException {
        made(jar, "/api/sites", Map.of("code", "S1", "name", "Site", "timeZone", "Etc/UTC"));
        made(jar, "/api/houses", Map.of("code", "H1", "site", "S1", "name", "House"));
        for (int sensor = 0; sensor < SENSORS; sensor++) {
            made(
                    jar,
                    "/api/sensors",
                    Map.of(
                            "code", "T" + sensor,
                            "house", "H1",
                            "quantity", "medium-temperature",
                            "unit", "Cel",
                            "topic", "h1/t" + sensor));
        }
    }

    private void send(TestPublisher device) {
        long begun = System.nanoTime();
        while (!ending.get() || !unsaid.isEmpty()) {
            if (!device.isConnected() && !device.connect()) {
                pause(Duration.ofMillis(100));
                all.values().stream()
                        .filter(each -> !device.taken().contains(each.key()))
                        .filter(each -> !unsaid.contains(each))
                        .forEach(unsaid::add);
                continue;
            }
            Sent next = unsaid.poll();
            if (next == null) {
                next = reading();
                all.put(next.key(), next);
            }
            if (!device.send(next.key(), next.topic(), next.payload())) {
                unsaid.add(next);
            }
            long due = begun + number * 1_000_000_000L / PER_SECOND;
            LockSupport.parkNanos(Math.max(0, due - System.nanoTime()));
        }
    }

    private Sent reading() {
        int reading = number++;
        Instant at = began.plusMillis(reading * 10L);
        String topic = "h1/t" + reading % SENSORS;
        String payload = "{\"value\": %s, \"at\": \"%s\"}".formatted(21 + reading % 9 / 10.0, at);
        return new Sent(topic + at, topic, payload);
    }

    /** As a device with a memory does after a fault: what is stored already must not be doubled. */
    private void sendEverythingAgain(TestPublisher device) {
        for (Sent each : all.values()) {
            assertThat(device.isConnected() || device.connect()).isTrue();
            assertThat(device.send(each.key(), each.topic(), each.payload())).isTrue();
        }
    }

    private void awaitAllBut(RunningJar jar, TestPublisher device, int few) throws Exception {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (stored(jar).size() < device.taken().size() - few && System.nanoTime() < end) {
            pause(Duration.ofSeconds(1));
        }
    }

    private void everyReadingIsThereOnce(RunningJar jar, TestPublisher device, int but) throws Exception {
        Map<String, Integer> stored = stored(jar);
        assertThat(device.taken()).as("a run that sent nothing shows nothing").hasSizeGreaterThan(PER_SECOND * 10);
        assertThat(device.taken().stream().filter(each -> !stored.containsKey(each)))
                .hasSizeLessThanOrEqualTo(but);
        assertThat(stored.values()).containsOnly(1);
        JsonNode climate =
                json.readTree(jar.get("/api/houses/H1/climate?from=" + began + "&to=" + began.plus(Duration.ofHours(1)))
                        .body());
        // all values lie between 21 and 21.8 by construction
        climate.get("hours")
                .forEach(hour -> assertThat(hour.get("value").asDouble()).isBetween(21.0, 21.8));
    }

    /** How often each reading is there, by topic and time. */
    private Map<String, Integer> stored(RunningJar jar) throws Exception {
        Map<String, Integer> stored = new HashMap<>();
        for (int sensor = 0; sensor < SENSORS; sensor++) {
            String topic = "h1/t" + sensor;
            String path =
                    "/api/sensors/T" + sensor + "/readings?from=" + began + "&to=" + began.plus(Duration.ofHours(2));
            for (JsonNode each : json.readTree(jar.get(path).body()).get("readings")) {
                stored.merge(topic + Instant.parse(each.get("at").asText()), 1, Integer::sum);
            }
        }
        return stored;
    }

    private void made(RunningJar jar, String path, Object body) throws IOException {
        var answer = jar.post(path, UUID.randomUUID().toString(), json.writeValueAsString(body))
                .orElseThrow();
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    }

    private static void pause(Duration length) {
        long end = System.nanoTime() + length.toNanos();
        while (System.nanoTime() < end) {
            LockSupport.parkNanos(end - System.nanoTime());
        }
    }
}
