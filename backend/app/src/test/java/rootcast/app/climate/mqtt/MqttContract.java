package rootcast.app.climate.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.restassured.path.json.JsonPath;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Readings from a real broker, seen from the device and from the API. */
abstract class MqttContract extends WithBroker {

    /** By hand: 69.8 °F is 21 °C, and 1.8 °F more is a degree. */
    @Test
    void aNumberOrJsonUnderTheSensorsTopicIsAReading() {
        sensor("a", "medium-temperature", "[degF]", 1.8);
        sensor("b", "relative-humidity", "%", 0);

        send("a", "{\"value\": 69.8, \"at\": \"%s\", \"battery\": 3.1}".formatted(hour));
        send("b", " 82.5 ");
        await(() -> changed("stored") == 2);

        assertThat(climate("medium-temperature", hour).getDouble("hours[0].value"))
                .isCloseTo(22, within(1e-6));
        JsonPath now = Nursery.get("/api/houses/" + nursery.house + "/now");
        assertThat(now.getDouble("quantities.find { it.quantity == 'relative-humidity' }.value"))
                .isEqualTo(82.5);
        assertThat(Instant.parse(now.getString("quantities.find { it.quantity == 'relative-humidity' }.at")))
                .isEqualTo(time.instant());
    }

    @Test
    void whatCannotBeAReadingIsCountedAndShownWithItsReason() {
        sensor("a", "medium-temperature", "Cel", 0);
        send("a", "warm");
        send("a", "{\"value\": \"21\"}");
        send("a", "{\"value\": 21, \"at\": 1772438400}");
        send("a", "NaN");
        send("nobody", "21");
        send("a", "{\"value\": -127, \"at\": \"%s\"}".formatted(hour));
        send("a", "{\"value\": 21, \"at\": \"%s\"}".formatted(time.instant().plus(Duration.ofDays(1))));
        send("a", "{\"value\": 20, \"at\": \"%s\"}".formatted(hour));
        send("a", "{\"value\": 20, \"at\": \"%s\"}".formatted(hour));
        send("a", "{\"value\": 25, \"at\": \"%s\"}".formatted(hour));

        await(() -> changed("received") == 10 && changed("stored") + changed("duplicates") + faults() == 10);

        assertThat(changed("malformed")).isEqualTo(4);
        assertThat(changed("unknown-topic")).isEqualTo(1);
        assertThat(changed("range")).isEqualTo(1);
        assertThat(changed("clock-skew")).isEqualTo(1);
        assertThat(changed("stored")).isEqualTo(1);
        assertThat(changed("duplicates")).isEqualTo(1);
        assertThat(changed("duplicate")).isEqualTo(1);
        JsonPath seen = Nursery.get("/api/ingest");
        String unknown = "ways.find { it.way == 'mqtt' }.faults.find { it.kind == 'unknown-topic' }.last[0].";
        assertThat(seen.getString(unknown + "what")).isEqualTo(nursery.house + "/nobody: 21");
        assertThat(seen.getString(unknown + "why.code")).isEqualTo("no-sensor-of-topic");
        JsonPath climate = climate("medium-temperature", hour);
        assertThat(climate.getDouble("hours[0].value")).isCloseTo(20, within(1e-9));
        assertThat(climate.getList("flags.kind")).containsExactlyInAnyOrder("range", "duplicate");
        Instant tomorrow = time.instant().plus(Duration.ofDays(1)).truncatedTo(ChronoUnit.HOURS);
        assertThat(climate("medium-temperature", tomorrow).getList("flags.kind"))
                .containsExactly("clock-skew");
    }

    @Test
    void aTopicWithoutASensorIsListedUntilOneHasIt() {
        String topic = nursery.house + "/new";
        send("new", "20");
        send("new", "21");
        await(() -> changed("unknown-topic") == 2);

        String heard = "unknownTopics.find { it.topic == '" + topic + "' }";
        JsonPath before = Nursery.get("/api/ingest");
        assertThat(before.getLong(heard + ".count")).isEqualTo(2);
        assertThat(before.getString(heard + ".last")).isEqualTo("21");

        sensor("new", "medium-temperature", "Cel", 0);
        send("new", "22");
        await(() -> changed("stored") == 1);
        assertThat(Nursery.get("/api/ingest").getString(heard)).isNull();
    }

    /** Told past the broker: the one of these tests does not mark what it kept. */
    @Test
    void aMessageThatTheBrokerKeptWithoutATimeIsNoReadingOfNow() {
        sensor("a", "medium-temperature", "Cel", 0);
        var acknowledged = new AtomicInteger();
        arrivals.add(message("a", "21", true, 1, false, acknowledged));
        arrivals.add(message("a", "{\"value\": 22, \"at\": \"%s\"}".formatted(hour), true, 2, false, acknowledged));

        await(() -> acknowledged.get() == 2);

        assertThat(changed("retained-without-time")).isEqualTo(1);
        assertThat(changed("stored")).isEqualTo(1);
    }

    /** The fault is put into the table by hand: none is known that gets through what is checked before. */
    @Test
    void aMessageThatCannotBeStoredIsKeptApartAndShownAndHoldsUpNoOther() throws SQLException {
        sensor("a", "medium-temperature", "Cel", 0);
        var tables = new Tables(database);
        tables.execute("alter table reading add constraint not_this_one check (reading_value <> 13.25)");
        try {
            for (int second = 0; second < 20; second++) {
                send(
                        "a",
                        "{\"value\": %s, \"at\": \"%s\"}"
                                .formatted(second == 7 ? "13.25" : "20", hour.plusSeconds(second)));
            }
            await(() -> changed("failed") == 1 && changed("stored") == 19);
        } finally {
            tables.execute("alter table reading drop constraint not_this_one");
        }

        assertThat(device.taken()).hasSize(20);
        String apart = "refused.last.find { it.topic == '" + nursery.house + "/a' }";
        JsonPath seen = Nursery.get("/api/ingest");
        assertThat(seen.getString(apart + ".payload")).contains("13.25");
        assertThat(seen.getString(apart + ".reason")).isNotBlank();
        assertThat(seen.getLong("refused.count")).isPositive();
        assertThat(ingest.state().waiting()).isZero();
    }

    @Test
    void countsAreTheBusinesssAndOutliveTheNodeThatCounted() {
        send("stray", "\0 is no text that every database keeps");
        send("stray", "20");
        await(() -> changed("malformed") == 1 && changed("unknown-topic") == 1);
        Map<String, Long> counted = counts();
        counted.values().removeIf(count -> count == 0);
        String topic = "unknownTopics.find { it.topic == '" + nursery.house + "/stray' }";

        flush.flush();
        Map<String, Long> written = new HashMap<>();
        for (String row : new Tables(database).rows("select kind, total from ingest_count where way = 'mqtt'")) {
            String[] columns = row.split("\\|");
            written.put(columns[0], Long.valueOf(columns[1]));
        }
        assertThat(written).containsAllEntriesOf(counted);
        assertThat(counts()).containsAllEntriesOf(counted);

        send("stray", "21");
        await(() -> changed("unknown-topic") == 2);
        flush.flush();
        JsonPath seen = Nursery.get("/api/ingest");
        assertThat(seen.getLong(topic + ".count")).isEqualTo(2);
        assertThat(seen.getString(topic + ".last")).isEqualTo("21");
        assertThat(seen.getList("ways.find { it.way == 'mqtt' }.faults.find { it.kind == 'malformed' }.last"))
                .hasSizeLessThanOrEqualTo(5);
    }

    @Test
    void tenThousandAtOnceAreAllStoredOnce() {
        sensor("a", "light", "lx", 0);
        for (int i = 0; i < 10_000; i++) {
            send("a", "{\"value\": %d, \"at\": \"%s\"}".formatted(5_400 + i % 7, hour.plusMillis(i * 100)));
        }
        await(() -> changed("received") >= 10_000 && changed("stored") == 10_000);

        JsonPath raw = Nursery.get(
                "/api/sensors/" + nursery.house + "-a/readings?from=" + hour + "&to=" + hour.plus(Duration.ofHours(1)));
        assertThat(raw.getList("readings.at")).hasSize(10_000).doesNotHaveDuplicates();
    }

    @Test
    void aBrokerThatComesBackIsFoundAgainAndNothingIsLostOrDoubled() {
        sensor("a", "ec", "mS/cm", 0);
        int sent = 0;
        for (int round = 0; round < 3; round++) {
            for (int i = 0; i < 100; i++, sent++) {
                send("a", "{\"value\": 1.%d, \"at\": \"%s\"}".formatted(sent % 10, hour.plusSeconds(sent)));
            }
            int all = sent;
            await(() -> device.taken().size() == all);
            broker.stop();
            await(() -> !device.isConnected());
            broker.start();
            await(() -> device.connect());
        }
        int sentInAll = sent;
        // This broker forgets what was on its way to a listener when it stops: at most its window of ten, each time.
        await(() -> changed("stored") >= sentInAll - 3 * 10);
        for (int i = 0; i < sentInAll; i++) {
            send("a", "{\"value\": 1.%d, \"at\": \"%s\"}".formatted(i % 10, hour.plusSeconds(i)));
        }
        await(() -> changed("stored") == sentInAll);

        JsonPath raw = Nursery.get(
                "/api/sensors/" + nursery.house + "-a/readings?from=" + hour + "&to=" + hour.plus(Duration.ofHours(1)));
        assertThat(raw.getList("readings.at")).hasSize(300).doesNotHaveDuplicates();
        assertThat(ingest.state().reconnects()).isPositive();
    }

    private long faults() {
        return changed("malformed")
                + changed("unknown-topic")
                + changed("range")
                + changed("clock-skew")
                + changed("duplicate");
    }

    private JsonPath climate(String quantity, Instant from) {
        return Nursery.get("/api/houses/%s/climate?quantity=%s&from=%s&to=%s"
                .formatted(nursery.house, quantity, from, from.plus(Duration.ofHours(1))));
    }
}
