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
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rootcast.app.climate.mqtt.TestBroker;
import rootcast.app.climate.mqtt.TestPublisher;

/**
 * Sensors send 500 readings a second through a real broker to two nodes while their PostgreSQL is restarted three times
 * and the node that listens is stopped: every reading that the device was told is taken is stored, and none twice, with a
 * time of its own or without. Longer on demand: {@code -Dreading.seconds=30} between two faults.
 */
class DatabaseRestartedWhileReadingIT {

    private static final int PER_SECOND = 500;
    private static final int SENSORS = 20;

    /** Every so many readings comes without a time, told apart by its value. */
    private static final int UNTIMED_EVERY = 5;

    private static final String UNTIMED = "h1/untimed";
    private static final Duration RUN = Duration.ofSeconds(Integer.getInteger("reading.seconds", 2));
    private static final Duration PATIENCE = Duration.ofMinutes(4);

    private final ObjectMapper json = new ObjectMapper();
    private final Instant began = Instant.now().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(2));

    @Test
    void everyAcknowledgedReadingIsStoredOnce(@TempDir Path folder, @TempDir Path store) throws Exception {
        Vertx vertx = Vertx.vertx();
        try (TestBroker broker = new TestBroker(Files.createDirectories(store));
                TwoNodes nodes = TwoNodes.start(
                        folder, "-Drootcast.mqtt.host=127.0.0.1", "-Drootcast.mqtt.port=" + broker.port())) {
            setUp(nodes.first());
            int listening = listener(nodes);
            assertThat(state(nodes.node(1 - listening))).isEqualTo("standby");
            Device device = new Device(new TestPublisher(vertx, broker.port()), PER_SECOND, this::reading);
            device.start();
            for (int restart = 0; restart < 3; restart++) {
                Device.pause(RUN);
                nodes.restartDatabase();
            }
            Device.pause(RUN);
            nodes.node(listener(nodes)).stop();
            Device.pause(RUN);
            device.end();

            Tables tables = new Tables(nodes.dataSource());
            awaitAll(tables, device);

            Map<String, Integer> stored = stored(tables);
            assertThat(device.taken())
                    .as("a run that sent nothing shows nothing")
                    .hasSizeGreaterThan(PER_SECOND * 5);
            assertThat(device.taken())
                    .filteredOn(key -> !stored.containsKey(key))
                    .isEmpty();
            assertThat(stored.values()).containsOnly(1);
            assertThat(tables.number("select count(*) from refused_message")).isZero();
        } finally {
            vertx.close();
        }
    }

    /** By value: no two of the readings without a time have the same. */
    private Device.Sent reading(int number) {
        if (number % UNTIMED_EVERY == 0) {
            String value = Double.toString(number / 100.0);
            return new Device.Sent(UNTIMED + value, UNTIMED, value);
        }
        return Device.timed("h1/t" + number % SENSORS, began, number);
    }

    private void setUp(RunningJar node) throws IOException {
        made(node, "/api/sites", Map.of("code", "S1", "name", "Site", "timeZone", "Etc/UTC"));
        made(node, "/api/houses", Map.of("code", "H1", "site", "S1", "name", "House"));
        List<Map<String, String>> sensors = new ArrayList<>();
        for (int sensor = 0; sensor < SENSORS; sensor++) {
            sensors.add(sensor("T" + sensor, "medium-temperature", "Cel", "h1/t" + sensor));
        }
        sensors.add(sensor("UNTIMED", "light", "umol/m2/s", UNTIMED));
        for (Map<String, String> each : sensors) {
            made(node, "/api/sensors", each);
        }
    }

    private static Map<String, String> sensor(String code, String quantity, String unit, String topic) {
        return Map.of("code", code, "house", "H1", "quantity", quantity, "unit", unit, "topic", topic);
    }

    /** Which node it is that listens. */
    private int listener(TwoNodes nodes) throws IOException, InterruptedException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            for (int node = 0; node < 2; node++) {
                if (state(nodes.node(node)).equals("connected")) {
                    return node;
                }
            }
            Device.pause(Duration.ofMillis(100));
        }
        throw new AssertionError(
                "nobody listens: " + nodes.first().log() + nodes.second().log());
    }

    private String state(RunningJar node) throws IOException, InterruptedException {
        JsonNode answer = json.readTree(node.get("/api/ingest").body());
        return answer.path("mqtt").path("state").asText();
    }

    private static void awaitAll(Tables tables, Device device) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (tables.number("select count(*) from reading") < device.taken().size() && System.nanoTime() < end) {
            Device.pause(Duration.ofMillis(500));
        }
    }

    /** How often each reading is there, by topic and time or value. */
    private static Map<String, Integer> stored(Tables tables) {
        Map<String, Integer> stored = new HashMap<>();
        tables.rows("select lower(replace(sensor, 'T', '')), cast(extract(epoch from measured_at) * 1000 as bigint)"
                        + " from reading where quantity = 'medium-temperature'")
                .forEach(row -> {
                    String[] columns = row.split("\\|");
                    Instant at = Instant.ofEpochMilli(Long.parseLong(columns[1]));
                    stored.merge("h1/t" + columns[0] + at, 1, Integer::sum);
                });
        tables.rows("select sent_value from reading where quantity = 'light'")
                .forEach(value -> stored.merge(UNTIMED + Double.valueOf(value), 1, Integer::sum));
        return stored;
    }

    private void made(RunningJar node, String path, Object body) throws IOException {
        var answer = node.post(path, UUID.randomUUID().toString(), json.writeValueAsString(body))
                .orElseThrow();
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    }
}
