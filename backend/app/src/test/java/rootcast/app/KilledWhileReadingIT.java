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
import java.util.UUID;
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
    private static final Duration RUN = Duration.ofSeconds(5);
    /**
     * The broker of this test forgets what it had given to a client that was killed and not been told of: at most ten
     * messages, its window, at each of the two kills. One that keeps its window loses none (docs/measurements.md).
     */
    private static final int LOST_BY_THE_BROKER = 2 * 10;

    private static final Duration PATIENCE = Duration.ofMinutes(4);

    private final ObjectMapper json = new ObjectMapper();
    private final Instant began = Instant.now().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(2));

    @Test
    void everyAcknowledgedReadingIsStoredOnce(@TempDir Path data, @TempDir Path store) throws Exception {
        Vertx vertx = Vertx.vertx();
        int port = RunningJar.freePort();
        try (TestBroker broker = new TestBroker(Files.createDirectories(store))) {
            List<String> settings = List.of("-Drootcast.mqtt.host=127.0.0.1", "-Drootcast.mqtt.port=" + broker.port());
            RunningJar jar = RunningJar.start(data, port, settings);
            setUp(jar);
            Device device = new Device(
                    new TestPublisher(vertx, broker.port()),
                    PER_SECOND,
                    number -> Device.timed("h1/t" + number % SENSORS, began, number));
            device.start();
            Device.pause(RUN);
            jar.kill();
            Device.pause(RUN);
            jar = RunningJar.start(data, port, settings);
            Device.pause(RUN);
            broker.stop();
            broker.start();
            Device.pause(RUN);
            jar.kill();
            broker.stop();
            broker.start();
            jar = RunningJar.start(data, port, settings);
            Device.pause(RUN);
            device.end();
            try (RunningJar last = jar) {
                awaitAllBut(last, device, LOST_BY_THE_BROKER);
                everyReadingIsThereOnce(last, device, LOST_BY_THE_BROKER);

                device.sendEverythingAgain();

                awaitAllBut(last, device, 0);
                everyReadingIsThereOnce(last, device, 0);
            }
        } finally {
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

    private void awaitAllBut(RunningJar jar, Device device, int few) throws Exception {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (stored(jar).size() < device.taken().size() - few && System.nanoTime() < end) {
            Device.pause(Duration.ofSeconds(1));
        }
    }

    private void everyReadingIsThereOnce(RunningJar jar, Device device, int but) throws Exception {
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
}
