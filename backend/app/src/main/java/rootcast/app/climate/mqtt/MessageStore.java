package rootcast.app.climate.mqtt;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.IngestCount;
import rootcast.app.climate.RecordReadings;
import rootcast.app.climate.SetupMaps;
import rootcast.app.climate.UnmappedTopics;
import rootcast.app.climate.store.IngestTables;
import rootcast.app.climate.store.TakenMessages;
import rootcast.app.node.NodeDuties;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.climate.ReadingRemark;
import rootcast.climate.Sensor;
import rootcast.saying.Saying;

/** Stores messages as readings of the sensors that have their topics, if this node is the one that listens. */
@ApplicationScoped
class MessageStore {

    @Inject
    Once once;

    @Inject
    RecordReadings recordReadings;

    @Inject
    SetupMaps setup;

    @Inject
    NodeDuties duties;

    @Inject
    TakenMessages takenMessages;

    @Inject
    IngestTables tables;

    @Inject
    IngestCount count;

    @Inject
    UnmappedTopics unmapped;

    private SetupMaps.@Nullable Maps known;
    private final Marks marks = new Marks();

    /** Another node may have listened meanwhile. */
    synchronized void startListening() {
        marks.clear();
        takenMessages.all().forEach(marks::add);
    }

    /** What one transaction makes of its messages. */
    private static final class Sorted {
        private final List<Stamped> mapped = new ArrayList<>();
        private final List<Stamped> withoutSensor = new ArrayList<>();
        private final Set<String> marks = new LinkedHashSet<>();
        private final List<RecordReadings.Numbered> readings = new ArrayList<>();
        private int again;
        private RecordReadings.@Nullable Recorded recorded;
    }

    /**
     * All or none, in one transaction.
     *
     * @return whether this node still has the duty to listen; if not, nothing was stored
     */
    synchronized boolean keep(List<Stamped> messages) {
        Instant now = messages.get(messages.size() - 1).message().arrivedAt();
        Sorted sorted = new Sorted();
        boolean[] listens = new boolean[1];
        once.writeBulk(OnceKey.none(), "readings by MQTT", "", 200, () -> {
            listens[0] = duties.isHeldUntilCommit(NodeDuties.LISTEN_MQTT);
            if (listens[0]) {
                Map<String, Sensor> byTopic = readMap();
                messages.forEach(each -> sort(each, byTopic, sorted));
                sorted.recorded = recordReadings.record(sorted.readings, now);
                if (!sorted.marks.isEmpty()) {
                    takenMessages.add(sorted.marks);
                }
            }
            return null;
        });
        RecordReadings.Recorded recorded = sorted.recorded;
        if (recorded != null) {
            marks.add(sorted.marks);
            count.received(IngestCount.MQTT, messages.size());
            count.duplicates(IngestCount.MQTT, sorted.again);
            count.taken(
                    IngestCount.MQTT,
                    0,
                    recorded,
                    number -> sorted.mapped.get(number).message().shown(),
                    now);
            sorted.withoutSensor.forEach(each -> hasNoSensor(each.message()));
        }
        return listens[0];
    }

    private void sort(Stamped each, Map<String, Sensor> byTopic, Sorted sorted) {
        Message message = each.message();
        Sensor sensor = byTopic.get(message.topic());
        if (sensor == null) {
            sorted.withoutSensor.add(each);
        } else if (!each.ownTime() && message.again() && isStored(message, sorted)) {
            sorted.again++;
        } else {
            sorted.readings.add(new RecordReadings.Numbered(sorted.mapped.size(), reading(sensor, each)));
            sorted.mapped.add(each);
            if (!each.ownTime() && message.number() >= 0) {
                sorted.marks.add(Marks.of(message));
            }
        }
    }

    private boolean isStored(Message message, Sorted together) {
        return marks.has(message) || together.marks.contains(Marks.of(message));
    }

    private void hasNoSensor(Message message) {
        unmapped.seen(message.topic(), message.text(), message.arrivedAt());
        count.refused(
                IngestCount.MQTT,
                "unknown-topic",
                message.shown(),
                Saying.of(ReadingRemark.NO_SENSOR_OF_TOPIC),
                message.arrivedAt());
    }

    /** Keeps a message that cannot be stored as a reading. */
    void setApart(Stamped one, String reason) {
        Message message = one.message();
        tables.add(new IngestTables.RefusedMessage(
                UUID.randomUUID(), message.topic(), message.text(), reason, message.arrivedAt()));
        count.received(IngestCount.MQTT, 1);
        count.refused(
                IngestCount.MQTT, "failed", message.shown(), Saying.of(ReadingRemark.NOT_STORED), message.arrivedAt());
    }

    private Map<String, Sensor> readMap() {
        SetupMaps.Maps maps = setup.now();
        if (maps != known) {
            unmapped.mapped(maps.byTopic().keySet());
            known = maps;
        }
        return maps.byTopic();
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
}
