package rootcast.app.climate.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Saying;

/** What came in and what became of it, as stored: of the business, whichever of its nodes took it. */
@ApplicationScoped
@Transactional
public class IngestTables {

    public static final int EXAMPLES = 5;

    /** The topic longest silent makes room; a broker that carries other trades' messages would fill the table. */
    static final int MOST_TOPICS = 500;

    /** Beyond these the oldest go. */
    static final int MOST_REFUSED = 10_000;

    private static final int LONGEST_TEXT = 200;
    private static final int LONGEST_REASON = 490;
    private static final int LONGEST_VALUES = 990;
    private static final TypeReference<Map<String, Object>> VALUES = new TypeReference<>() {};
    private static final int LONGEST_TOPIC = 390;
    private static final int LONGEST_PAYLOAD = 4_096;

    @Inject
    EntityManager database;

    @Inject
    ObjectMapper json;

    public record Count(String way, String kind, long total) {}

    public record Example(
            String way, String kind, String what, @Nullable Saying why, Instant at) {}

    public record Topic(String topic, long messages, String last, Instant lastSeenAt) {}

    /** A message that was set apart. */
    public record RefusedMessage(UUID id, String topic, String payload, String reason, Instant at) {}

    public void add(Count more) {
        int updated = database.createNativeQuery(
                        "update ingest_count set total = total + ?1 where way = ?2 and kind = ?3")
                .setParameter(1, more.total())
                .setParameter(2, more.way())
                .setParameter(3, more.kind())
                .executeUpdate();
        if (updated == 0) {
            database.createNativeQuery("insert into ingest_count (way, kind, total) values (?2, ?3, ?1)")
                    .setParameter(1, more.total())
                    .setParameter(2, more.way())
                    .setParameter(3, more.kind())
                    .executeUpdate();
        }
    }

    public List<Count> counts() {
        return rows("select way, kind, total from ingest_count").stream()
                .map(row -> new Count((String) row[0], (String) row[1], ((Number) row[2]).longValue()))
                .toList();
    }

    /** Keeps the newest few of each kind. */
    public void add(Example example) {
        Saying why = example.why();
        String values = why == null ? null : written(why.values());
        database.createNativeQuery("insert into ingest_example (id, way, kind, what, reason, happened_at,"
                        + " why_code, why_values) values (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)")
                .setParameter(1, UUID.randomUUID())
                .setParameter(2, example.way())
                .setParameter(3, example.kind())
                .setParameter(4, StoredText.of(example.what(), LONGEST_TEXT))
                .setParameter(5, StoredText.of(why == null ? "" : why.english(), LONGEST_REASON))
                .setParameter(6, stored(example.at()))
                .setParameter(7, values == null ? null : why.code())
                .setParameter(8, values)
                .executeUpdate();
        database.createNativeQuery("delete from ingest_example where way = ?1 and kind = ?2 and id not in"
                        + " (select id from (select id from ingest_example where way = ?1 and kind = ?2"
                        + " order by happened_at desc, id fetch first " + EXAMPLES + " rows only) newest)")
                .setParameter(1, example.way())
                .setParameter(2, example.kind())
                .executeUpdate();
    }

    /** The newest first. */
    public List<Example> examples() {
        return rows("select way, kind, what, reason, happened_at, why_code, why_values from ingest_example"
                        + " order by happened_at desc, id")
                .stream()
                .map(row -> new Example(
                        (String) row[0],
                        (String) row[1],
                        (String) row[2],
                        why((String) row[5], (String) row[6], (String) row[3]),
                        instant(row[4])))
                .toList();
    }

    /** Null if they are too long to be kept. */
    private @Nullable String written(Map<String, Object> values) {
        try {
            String text = json.writeValueAsString(values);
            return text.length() > LONGEST_VALUES || text.indexOf('\0') >= 0 ? null : text;
        } catch (JsonProcessingException noText) {
            throw new IllegalStateException(noText);
        }
    }

    private @Nullable Saying why(@Nullable String code, @Nullable String values, String english) {
        if (code == null || values == null) {
            return null;
        }
        try {
            return new Saying(code, json.readValue(values, VALUES), english);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException(broken);
        }
    }

    public void add(Topic more) {
        String topic = StoredText.of(more.topic(), LONGEST_TOPIC);
        String last = StoredText.of(more.last(), LONGEST_TEXT);
        int updated = database.createNativeQuery("update unmapped_topic set messages = messages + ?1, last_text = ?2,"
                        + " last_seen_at = ?3 where topic = ?4")
                .setParameter(1, more.messages())
                .setParameter(2, last)
                .setParameter(3, stored(more.lastSeenAt()))
                .setParameter(4, topic)
                .executeUpdate();
        if (updated == 0) {
            database.createNativeQuery("insert into unmapped_topic (messages, last_text, last_seen_at, topic)"
                            + " values (?1, ?2, ?3, ?4)")
                    .setParameter(1, more.messages())
                    .setParameter(2, last)
                    .setParameter(3, stored(more.lastSeenAt()))
                    .setParameter(4, topic)
                    .executeUpdate();
        }
    }

    /** Lets go of topics that have a sensor now, and of those beyond the limit. */
    public void tidyTopics() {
        database.createNativeQuery("delete from unmapped_topic where topic in"
                        + " (select topic from sensor where topic is not null)")
                .executeUpdate();
        database.createNativeQuery("delete from unmapped_topic where topic not in (select topic from"
                        + " (select topic from unmapped_topic order by last_seen_at desc, topic fetch first "
                        + MOST_TOPICS + " rows only) newest)")
                .executeUpdate();
    }

    /** Topics that no sensor has, the one seen last first. */
    public List<Topic> topics() {
        return rows("select u.topic, u.messages, u.last_text, u.last_seen_at from unmapped_topic u where not exists"
                        + " (select 1 from sensor s where s.topic = u.topic) order by u.last_seen_at desc, u.topic")
                .stream()
                .map(row -> new Topic((String) row[0], ((Number) row[1]).longValue(), (String) row[2], instant(row[3])))
                .toList();
    }

    public void add(RefusedMessage message) {
        database.createNativeQuery("insert into refused_message (id, topic, payload, reason, arrived_at)"
                        + " values (?1, ?2, ?3, ?4, ?5)")
                .setParameter(1, message.id())
                .setParameter(2, StoredText.of(message.topic(), LONGEST_TOPIC))
                .setParameter(3, StoredText.of(message.payload(), LONGEST_PAYLOAD))
                .setParameter(4, StoredText.of(message.reason(), LONGEST_REASON))
                .setParameter(5, stored(message.at()))
                .executeUpdate();
        database.createNativeQuery("delete from refused_message where arrived_at < (select min(arrived_at) from"
                        + " (select arrived_at from refused_message order by arrived_at desc fetch first "
                        + MOST_REFUSED + " rows only) newest)")
                .executeUpdate();
    }

    public long refusedMessages() {
        return ((Number) database.createNativeQuery("select count(*) from refused_message")
                        .getSingleResult())
                .longValue();
    }

    /** The newest first. */
    public List<RefusedMessage> lastRefused(int most) {
        return rows("select cast(id as varchar), topic, payload, reason, arrived_at from refused_message"
                        + " order by arrived_at desc, id fetch first " + most + " rows only")
                .stream()
                .map(row -> new RefusedMessage(
                        UUID.fromString((String) row[0]),
                        (String) row[1],
                        (String) row[2],
                        (String) row[3],
                        instant(row[4])))
                .toList();
    }

    @SuppressWarnings("unchecked") // a native query of several columns gives arrays
    private List<Object[]> rows(String query) {
        return new ArrayList<>(database.createNativeQuery(query).getResultList());
    }

    private static OffsetDateTime stored(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    private static Instant instant(Object column) {
        return column instanceof Instant instant ? instant : ((OffsetDateTime) column).toInstant();
    }
}
