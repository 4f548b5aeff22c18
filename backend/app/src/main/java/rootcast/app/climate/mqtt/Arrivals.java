package rootcast.app.climate.mqtt;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.locks.LockSupport;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.IngestCount;
import rootcast.app.climate.RecordReadings;
import rootcast.app.climate.UnmappedTopics;
import rootcast.app.climate.store.Sensors;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.climate.Sensor;
import rootcast.facts.FactPosition;

/**
 * Messages waiting to be stored. One thread takes all that wait, stores them in one transaction and only then tells the
 * broker: a message without that word comes again, and is then found to be stored already.
 *
 * <p>While one transaction runs the next messages gather, so the busier the broker the more share a transaction.
 */
@ApplicationScoped
class Arrivals {

    private static final Logger LOG = Logger.getLogger(Arrivals.class);

    /** More than this waiting, the broker is asked to hold. */
    static final int MANY = 20_000;

    private static final int MOST_TOGETHER = 10_000;
    private static final Duration BETWEEN_ATTEMPTS = Duration.ofSeconds(1);

    @Inject
    Once once;

    @Inject
    RecordReadings recordReadings;

    @Inject
    Sensors sensors;

    @Inject
    FactHead head;

    @Inject
    IngestCount count;

    @Inject
    UnmappedTopics unknown;

    @Inject
    ObjectMapper json;

    private final BlockingQueue<Arrival> waiting = new LinkedBlockingQueue<>();
    private final Map<String, Instant> lastStamp = new HashMap<>();
    private Map<String, Sensor> byTopic = Map.of();
    private @Nullable FactPosition mapAt;
    private @Nullable Thread writer;

    void add(Arrival arrival) {
        waiting.add(arrival);
    }

    int waiting() {
        return waiting.size();
    }

    synchronized void start() {
        if (writer == null) {
            Thread thread = new Thread(this::run, "readings by MQTT");
            thread.setDaemon(true);
            thread.start();
            writer = thread;
        }
    }

    synchronized void stop() {
        if (writer != null) {
            writer.interrupt();
            writer = null;
        }
        waiting.clear(); // nobody was told that they are kept: they come again
    }

    private void run() {
        List<Arrival> together = new ArrayList<>();
        while (!Thread.currentThread().isInterrupted()) {
            try {
                together.clear();
                together.add(waiting.take());
                waiting.drainTo(together, MOST_TOGETHER - 1);
                keepAll(together);
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
        }
    }

    /** Until all are kept: a database that is away comes back. */
    private void keepAll(List<Arrival> together) {
        List<Stamped> readable = stamped(together);
        boolean kept = readable.isEmpty();
        while (!kept && !Thread.currentThread().isInterrupted()) {
            try {
                keep(readable);
                kept = true;
            } catch (RuntimeException failed) {
                LOG.warnf(failed, "%d messages could not be stored; trying again", readable.size());
                kept = keepEach(readable);
                if (!kept) {
                    LockSupport.parkNanos(BETWEEN_ATTEMPTS.toNanos());
                }
            }
        }
        if (kept) {
            together.forEach(each -> each.acknowledge().run());
        }
    }

    /** One that always fails must not hold up the others; if every one fails, the fault is not theirs. */
    private boolean keepEach(List<Stamped> readable) {
        List<Stamped> failed = new ArrayList<>();
        for (Stamped each : readable) {
            try {
                keep(List.of(each));
            } catch (RuntimeException again) {
                failed.add(each);
            }
        }
        if (failed.size() == readable.size()) {
            return false;
        }
        failed.forEach(each ->
                count.refused(IngestCount.MQTT, "failed", shown(each.arrival()), "could not be stored", each.at()));
        return true;
    }

    private record Stamped(Arrival arrival, double value, Instant at) {}

    private List<Stamped> stamped(List<Arrival> together) {
        List<Stamped> readable = new ArrayList<>(together.size());
        for (Arrival arrival : together) {
            count.received(IngestCount.MQTT, 1);
            try {
                Payload payload = Payload.read(arrival.text(), json);
                Instant at = payload.at();
                if (at == null && arrival.retained()) {
                    count.refused(
                            IngestCount.MQTT,
                            "retained-without-time",
                            shown(arrival),
                            "was kept by the broker and does not say when it was measured",
                            arrival.arrivedAt());
                } else {
                    readable.add(new Stamped(arrival, payload.value(), at == null ? ofItsOwn(arrival) : at));
                }
            } catch (Payload.Unreadable unreadable) {
                count.refused(
                        IngestCount.MQTT, "malformed", shown(arrival), unreadable.getMessage(), arrival.arrivedAt());
            }
        }
        return readable;
    }

    /** Two messages of one topic must not share a moment, however fast they come. */
    private Instant ofItsOwn(Arrival arrival) {
        Instant last = lastStamp.get(arrival.topic());
        Instant at = last == null || arrival.arrivedAt().isAfter(last) ? arrival.arrivedAt() : last.plusNanos(1_000);
        if (lastStamp.size() > MANY) {
            lastStamp.clear();
        }
        lastStamp.put(arrival.topic(), at);
        return at;
    }

    private void keep(List<Stamped> messages) {
        List<RecordReadings.Recorded> recorded = new ArrayList<>();
        List<Stamped> strangers = new ArrayList<>();
        List<Stamped> known = new ArrayList<>();
        Instant now = messages.get(messages.size() - 1).arrival().arrivedAt();
        once.write(OnceKey.none(), "readings by MQTT", "", 200, () -> {
            readMap();
            List<RecordReadings.Numbered> numbered = new ArrayList<>();
            for (Stamped each : messages) {
                Sensor sensor = byTopic.get(each.arrival().topic());
                if (sensor == null) {
                    strangers.add(each);
                } else {
                    numbered.add(new RecordReadings.Numbered(known.size(), reading(sensor, each)));
                    known.add(each);
                }
            }
            recorded.add(recordReadings.record(numbered, now));
            return null;
        });
        count.taken(
                IngestCount.MQTT,
                0,
                recorded.get(0),
                number -> shown(known.get(number).arrival()),
                now);
        strangers.forEach(this::isStranger);
    }

    private void isStranger(Stamped message) {
        Arrival arrival = message.arrival();
        unknown.heard(arrival.topic(), arrival.text(), arrival.arrivedAt());
        count.refused(
                IngestCount.MQTT, "unknown-topic", shown(arrival), "no sensor has this topic", arrival.arrivedAt());
    }

    private void readMap() {
        FactPosition setup = head.last().setup();
        if (!setup.equals(mapAt)) {
            Map<String, Sensor> map = new HashMap<>();
            for (Sensor sensor : sensors.all()) {
                String topic = sensor.topic();
                if (topic != null) {
                    map.put(topic, sensor);
                }
            }
            byTopic = map;
            unknown.known(map.keySet());
            mapAt = setup;
        }
    }

    private static HouseReading reading(Sensor sensor, Stamped message) {
        return new HouseReading(
                sensor.house(),
                sensor.quantity(),
                sensor.code(),
                message.at(),
                sensor.kept(message.value()),
                message.value(),
                sensor.unit().ucum());
    }

    private static String shown(Arrival arrival) {
        return arrival.topic() + ": " + arrival.text();
    }
}
