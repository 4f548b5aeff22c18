package rootcast.app.climate.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import io.vertx.core.Vertx;
import jakarta.inject.Inject;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;
import rootcast.app.climate.FlushIngest;

/** A broker of its own, a device that sends to it and the listener that hears it. */
abstract class WithBroker {

    private static final Duration PATIENCE = Duration.ofMinutes(4);

    @Inject
    HandSetClock time;

    @Inject
    MqttIngest ingest;

    @Inject
    Arrivals arrivals;

    @Inject
    FlushIngest flush;

    @Inject
    AgroalDataSource database;

    @Inject
    Vertx vertx;

    @TempDir
    Path store;

    Nursery nursery;
    TestBroker broker;
    TestPublisher device;
    Instant hour;
    Map<String, Long> before;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        hour = time.instant().truncatedTo(ChronoUnit.HOURS).minus(Duration.ofHours(5));
        broker = new TestBroker(store);
        ingest.connect(new MqttIngest.Broker("127.0.0.1", broker.port(), nursery.house, "#"));
        await(() -> ingest.state().state().equals("connected"));
        device = new TestPublisher(vertx, broker.port());
        assertThat(device.connect()).isTrue();
        before = counts();
    }

    /** Thousands of readings would be in the way of tests that look through all tables. */
    @AfterEach
    void close() throws SQLException {
        device.close();
        ingest.disconnect();
        broker.close();
        new Tables(database).execute("delete from reading where house = '" + nursery.house + "'");
    }

    Message message(String name, String text, boolean retained, int number, boolean again, AtomicInteger acknowledged) {
        return new Message(
                nursery.house + "/" + name,
                text,
                retained,
                number,
                again,
                time.instant(),
                acknowledged::incrementAndGet);
    }

    void sensor(String name, String quantity, String unit, double offset) {
        nursery.post(
                        "/api/sensors",
                        Map.of(
                                "code",
                                nursery.house + "-" + name,
                                "house",
                                nursery.house,
                                "quantity",
                                quantity,
                                "unit",
                                unit,
                                "offset",
                                offset,
                                "topic",
                                nursery.house + "/" + name))
                .statusCode(201);
    }

    void send(String name, String payload) {
        assertThat(device.send(name + payload, nursery.house + "/" + name, payload))
                .isTrue();
    }

    long changed(String what) {
        return counts().getOrDefault(what, 0L) - before.getOrDefault(what, 0L);
    }

    static Map<String, Long> counts() {
        Map<String, Long> counts = new HashMap<>();
        JsonPath seen = Nursery.get("/api/ingest");
        Map<String, Object> mqtt = seen.getMap("ways.find { it.way == 'mqtt' }");
        if (mqtt != null) {
            for (String each : List.of("received", "stored", "duplicates")) {
                counts.put(each, ((Number) mqtt.get(each)).longValue());
            }
            for (Object fault : (List<?>) mqtt.get("faults")) {
                Map<?, ?> each = (Map<?, ?>) fault;
                counts.put((String) each.get("kind"), ((Number) each.get("count")).longValue());
            }
        }
        return counts;
    }

    static void await(BooleanSupplier done) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!done.getAsBoolean()) {
            assertThat(System.nanoTime()).as("waited for %s", PATIENCE).isLessThan(end);
            LockSupport.parkNanos(Duration.ofMillis(50).toNanos());
        }
    }
}
